import { RESPONSES_OVERLAP } from '../../reference/phosphorus-response.ts';
import { nitrogenFixedKgPerHa } from '../../science/nitrogen.ts';
import { delayFactor, lifeValue } from '../../science/reach.ts';
import type { Crop } from '../../vocabulary/index.ts';
import { DRAW, lossRate, sharedSpread, UNCERTAINTY } from './draw-parameters.ts';
import { handOverDay } from './hand-over-day.ts';
import { ON_SEED_LOG10 } from './live-inoculant.ts';
import { phosphorusT } from './phosphorus-gain.ts';
import type { PlayCrops, PreparedPlay } from './prepare-play.ts';

export { type DrivenLoads, type PlayParts, type PreparedPlay, preparePlay } from './prepare-play.ts';

/** What a play adds up over the plan: hectares, people, kg, t, money. */
export const PLAY_TOTALS = [
  'reachedHa',
  /** Inoculated hectares, each by the yield kept when late times the worth of its live rhizobia. */
  'valueHa',
  'farmersReached',
  /** Nitrogen fixed on all land sown, by Herridge et al. 2022. */
  'nitrogenKg',
  /** Of it, what would not be fixed had the programme brought nothing. */
  'programmeNitrogenKg',
  /** Of it, what the same land sown on the same days would not fix without its inoculant. */
  'inoculationNitrogenKg',
  /** The same where no field reached held rhizobia of its own: all that is fixed on the hectares reached. */
  'inoculationAtMostKg',
  /** Fixed, less what leaves the fields with the grain; below nought where the soil is drawn on. */
  'netNitrogenKg',
  /** In residues of the crops with coefficients (IPCC): another quantity than nitrogen fixed. */
  'residueNitrogenKg',
  /** Fixed by the method of 2008, for comparison. */
  'earlierNitrogenKg',
  'grainT',
  'programmeGrainT',
  'inoculationGrainT',
  /** Grain owed to the programme and to inoculation, at the prices given; NaN where a price it needs is missing. */
  'programmeGrainWorth',
  'inoculationGrainWorth',
  /** Nitrogen and grain that the same land would not give without its fertiliser. */
  'phosphorusNitrogenKg',
  'phosphorusGrainT',
] as const;
export type PlayTotal = (typeof PLAY_TOTALS)[number];
export type PlayTotals = Record<PlayTotal, number>;

/** What one play gives. Overwritten by every play. */
export interface PlayResult extends PlayTotals {
  /** Inoculated hectares that are not reached, by what kept them from it (see PastSeasons). */
  readonly lostHa: LostHectares;
  /** Per field. */
  readonly fieldReachedHa: Float64Array;
  readonly fieldNitrogenKg: Float64Array;
  readonly fieldGrainT: Float64Array;
  /** Per zone, the last for outside all zones. */
  readonly zoneReachedHa: Float64Array;
  readonly zoneNitrogenKg: Float64Array;
  /** Per parcel: log10 rhizobia per seed at sowing and log10 lost in either store; NaN where none, or not sown. */
  readonly parcelLog10PerSeed: Float64Array;
  readonly parcelStoreLog10: Float64Array;
  readonly parcelCommunityLog10: Float64Array;
  /** Per parcel, index into SEASON_LOSSES, or -1 where nothing inoculated is lost. */
  readonly parcelLoss: Int8Array;
  /** The draw's numbers in the units of the play. */
  readonly factors: DrawnFactors;
}

/** What keeps inoculated land from being reached, in the order of a season. */
export const SEASON_LOSSES = ['noOnset', 'late', 'hot', 'waiting', 'weak'] as const;
type SeasonLoss = (typeof SEASON_LOSSES)[number];
export type LostHectares = Record<SeasonLoss, number>;
const [NO_ONSET, LATE, HOT, WAITING, WEAK] = [0, 1, 2, 3, 4];

interface DrawnFactors {
  yield: number;
  packLoss: number;
  seedLoss: number;
  roadLoss: number;
  delayDays: number;
  /** Per crop: nitrogen fixed over the estimate. */
  readonly nitrogen: Float64Array;
}

export function makePlayResult({ fields, parcels, zones, crops }: PreparedPlay): PlayResult {
  const perField = () => new Float64Array(fields.zone.length);
  const perParcel = () => new Float64Array(parcels.field.length);
  // NaN until it is played: a number that is no whole one from the start is kept in place and never boxed anew.
  const unplayed = Number.NaN;
  return {
    ...(Object.fromEntries(PLAY_TOTALS.map((name) => [name, unplayed])) as PlayTotals),
    lostHa: { noOnset: unplayed, late: unplayed, hot: unplayed, waiting: unplayed, weak: unplayed },
    fieldReachedHa: perField(),
    fieldNitrogenKg: perField(),
    fieldGrainT: perField(),
    zoneReachedHa: new Float64Array(zones + 1),
    zoneNitrogenKg: new Float64Array(zones + 1),
    parcelLog10PerSeed: perParcel(),
    parcelStoreLog10: perParcel(),
    parcelCommunityLog10: perParcel(),
    parcelLoss: new Int8Array(parcels.field.length),
    factors: {
      yield: unplayed,
      packLoss: unplayed,
      seedLoss: unplayed,
      roadLoss: unplayed,
      delayDays: unplayed,
      nitrogen: new Float64Array(crops.names.length).fill(1),
    },
  };
}

/**
 * Plays a fixed plan in one season and one draw of the parameters: each parcel is sown on the first good day after its
 * goods were handed over, in that season's weather; sown late it yields less; inoculated it gains the crop's response by what
 * the rhizobia left on the seed are worth, with fertiliser in hand its response to phosphorus; nitrogen follows from the grain (Herridge et al. 2022). In a season without onset
 * nothing is sown. No search, no allocation.
 *
 * @param member index of the season's member
 * @param draw `prepared.drawWidth` numbers, laid out as DRAW; noughts are the central case
 */
export function playSeason(prepared: PreparedPlay, member: number, draw: Float64Array, into: PlayResult): void {
  const { fields, parcels, crops } = prepared;
  readFactors(prepared, draw, into.factors);
  clear(into);
  for (let parcel = 0; parcel < parcels.field.length; parcel++) playParcel(prepared, member, draw, parcel, into);
  let [withoutKg, withoutT] = [0, 0];
  for (let field = 0; field < fields.zone.length; field++) {
    const zone = fields.zone[field] as number;
    const crop = fields.crop[field] as number;
    const grainT = into.fieldGrainT[field] as number;
    into.zoneNitrogenKg[zone] = (into.zoneNitrogenKg[zone] as number) + (into.fieldNitrogenKg[field] as number);
    const reachedHa = into.fieldReachedHa[field] as number;
    into.zoneReachedHa[zone] = (into.zoneReachedHa[zone] as number) + reachedHa;
    into.reachedHa += reachedHa;
    into.farmersReached += reachedHa * (fields.farmersPerHa[field] as number);
    into.nitrogenKg += into.fieldNitrogenKg[field] as number;
    into.grainT += grainT;
    into.netNitrogenKg -= grainT * (crops.grainNKgPerT[crop] as number);
    into.earlierNitrogenKg += grainT * (crops.earlierKgPerT[crop] as number);
    const ownHa = fields.ownHa[field] as number;
    const ownTPerHa = grainWithoutTPerHa(prepared, member, field, into.factors);
    withoutKg += ownHa * nitrogenKgPerHa(crops, crop, ownTPerHa, into.factors);
    withoutT += ownHa * ownTPerHa;
    const moreT = grainT - ownHa * ownTPerHa;
    if (moreT !== 0) into.programmeGrainWorth += moreT * (crops.pricePerT[crop] as number);
  }
  into.netNitrogenKg += into.nitrogenKg;
  into.programmeNitrogenKg = into.nitrogenKg - withoutKg;
  into.programmeGrainT = into.grainT - withoutT;
}

/** Had the programme brought nothing: the growers' own seed, uncoated, sown as soon as the season allows, t per ha. */
function grainWithoutTPerHa(prepared: PreparedPlay, member: number, field: number, factors: DrawnFactors): number {
  const { fields, crops } = prepared;
  const first = prepared.firstDay[member * prepared.windows + (fields.window[field] as number)] as number;
  return Number.isNaN(first) ? 0 : factors.yield * (crops.yieldTPerHa[fields.crop[field] as number] as number);
}

function playParcel(
  prepared: PreparedPlay,
  member: number,
  draw: Float64Array,
  parcel: number,
  into: PlayResult,
): void {
  const { fields, parcels, crops } = prepared;
  const { factors } = into;
  const field = parcels.field[parcel] as number;
  const window = member * prepared.windows + (fields.window[field] as number);
  const first = prepared.firstDay[window] as number;
  const last = prepared.lastDay[window] as number;
  const inoculated = parcels.inoculated[parcel] === 1;
  const hectares = parcels.hectares[parcel] as number;
  const day = handOverDay(prepared, member, draw, parcels.visit[parcel] as number, factors.delayDays);
  into.parcelLog10PerSeed[parcel] = Number.NaN;
  into.parcelStoreLog10[parcel] = Number.NaN;
  into.parcelCommunityLog10[parcel] = Number.NaN;
  into.parcelLoss[parcel] = -1;
  if (Number.isNaN(first) || Number.isNaN(last)) {
    if (inoculated) lose(into, parcel, NO_ONSET, hectares);
    return;
  }
  // Goods that never come are not sown.
  if (Number.isNaN(day)) {
    if (inoculated) lose(into, parcel, LATE, hectares);
    return;
  }

  const crop = fields.crop[field] as number;
  const sown = Math.max(first, day + 1);
  const kept = delayFactor(sown - last, crops.delayLossPerDay[crop] as number, crops.delayFreeDays[crop] as number);
  const isReached = inoculated && judgeInoculant(prepared, member, parcel, day, sown, last, into);
  const isAlive = inoculated && into.parcelLoss[parcel] !== HOT;
  const worth = isAlive ? lifeValue(into.parcelLog10PerSeed[parcel] as number, prepared.floorLog10) : 0;
  const gainT = worth === 0 ? 0 : worth * responseT(prepared, draw, crop, field);
  into.valueHa += hectares * kept * worth;
  const bareT = factors.yield * (crops.yieldTPerHa[crop] as number);
  const bagsT =
    (parcels.bagsVisit[parcel] as number) < 0
      ? 0
      : phosphorusT(prepared, member, draw, parcel, crop, sown, factors.delayDays);
  const plainT = bareT + bagsT;
  const overlapT = bagsT === 0 ? 0 : RESPONSES_OVERLAP.value * Math.max(0, Math.min(gainT, bagsT));
  const grainTPerHa = Math.max(0, plainT + gainT - overlapT) * kept;
  const nitrogenKg = hectares * nitrogenKgPerHa(crops, crop, grainTPerHa, factors);
  into.fieldGrainT[field] = (into.fieldGrainT[field] as number) + hectares * grainTPerHa;
  into.fieldNitrogenKg[field] = (into.fieldNitrogenKg[field] as number) + nitrogenKg;
  const residue = (crops.residueKgPerHa[crop] as number) + grainTPerHa * (crops.residueKgPerT[crop] as number);
  if (!Number.isNaN(residue)) into.residueNitrogenKg += hectares * residue;
  if (isReached) {
    into.fieldReachedHa[field] = (into.fieldReachedHa[field] as number) + hectares;
    into.inoculationAtMostKg += nitrogenKg;
  }
  if (gainT !== 0) {
    into.inoculationNitrogenKg += nitrogenKg - hectares * nitrogenKgPerHa(crops, crop, plainT * kept, factors);
    const moreT = hectares * (grainTPerHa - plainT * kept);
    into.inoculationGrainT += moreT;
    into.inoculationGrainWorth += moreT * (crops.pricePerT[crop] as number);
  }
  if (bagsT !== 0) {
    const withoutT = Math.max(0, bareT + gainT) * kept;
    into.phosphorusNitrogenKg += nitrogenKg - hectares * nitrogenKgPerHa(crops, crop, withoutT, factors);
    into.phosphorusGrainT += hectares * (grainTPerHa - withoutT);
  }
}

/** Follows the rhizobia to the seed; books the parcel's losses. @returns whether it is sown in time and alive */
function judgeInoculant(
  { parcels, losses, visits, visitOnHold, floorLog10 }: PreparedPlay,
  member: number,
  parcel: number,
  day: number,
  sown: number,
  last: number,
  into: PlayResult,
): boolean {
  const { packLoss, roadLoss, seedLoss } = into.factors;
  const community = parcels.communityRow[parcel] as number;
  const store = packLoss * losses.before(parcels.depotRow[parcel] as number, member, day);
  const waiting = packLoss * (losses.before(community, member, sown) - losses.before(community, member, day));
  const fresh = (parcels.log10PerSeed[parcel] as number) - roadLoss * (parcels.roadLog10[parcel] as number);
  const left = fresh - store - waiting - seedLoss * ON_SEED_LOG10;
  into.parcelLog10PerSeed[parcel] = left;
  into.parcelStoreLog10[parcel] = store;
  into.parcelCommunityLog10[parcel] = waiting;
  const isHeld = visitOnHold[member * visits.length + (parcels.visit[parcel] as number)] === 1;
  const hectares = parcels.hectares[parcel] as number;
  if (isHeld) lose(into, parcel, HOT, hectares);
  else if (sown > last) lose(into, parcel, LATE, hectares);
  else if (left >= floorLog10) return true;
  else lose(into, parcel, left + waiting >= floorLog10 ? WAITING : WEAK, hectares);
  return false;
}

function lose(into: PlayResult, parcel: number, loss: number, hectares: number): void {
  into.parcelLoss[parcel] = loss;
  into.lostHa[SEASON_LOSSES[loss] as SeasonLoss] += hectares;
}

function nitrogenKgPerHa({ names }: PlayCrops, crop: number, grainTPerHa: number, { nitrogen }: DrawnFactors): number {
  if (!(grainTPerHa > 0)) return 0;
  return (nitrogen[crop] as number) * nitrogenFixedKgPerHa(names[crop] as Crop, grainTPerHa);
}

/** Gain of a field's inoculated land in t per ha: the crop's mean, and the draw's district and community. */
function responseT({ crops, fields }: PreparedPlay, draw: Float64Array, crop: number, field: number): number {
  const district = draw[DRAW.crops + crop] as number;
  const own = draw[DRAW.crops + 2 * crops.names.length + (fields.community[field] as number)] as number;
  const spread = sharedSpread(district, own);
  const whole = (crops.responseT[crop] as number) + (crops.responseSdT[crop] as number) * spread;
  return (fields.repeat[field] as number) * whole;
}

function readFactors({ crops }: PreparedPlay, draw: Float64Array, factors: DrawnFactors): void {
  factors.yield = Math.max(0, 1 + UNCERTAINTY.yieldRelativeSd.value * (draw[DRAW.yield] as number));
  factors.packLoss = lossRate(draw[DRAW.packLoss] as number);
  factors.seedLoss = lossRate(draw[DRAW.seedLoss] as number);
  factors.roadLoss = lossRate(draw[DRAW.roadLoss] as number);
  factors.delayDays = Math.max(0, Math.round(UNCERTAINTY.delaySdDays.value * (draw[DRAW.delay] as number)));
  const method = draw[DRAW.nitrogen] as number;
  for (let crop = 0; crop < crops.names.length; crop++) {
    const air = draw[DRAW.crops + crops.names.length + crop] as number;
    const share = Math.min(crops.airMost[crop] as number, Math.max(0, 1 + (crops.airSd[crop] as number) * air));
    factors.nitrogen[crop] = share * Math.max(0, 1 + (crops.methodSd[crop] as number) * method);
  }
}

function clear(into: PlayResult): void {
  for (const name of PLAY_TOTALS) into[name] = 0;
  for (const name of SEASON_LOSSES) into.lostHa[name] = 0;
  into.fieldReachedHa.fill(0);
  into.fieldNitrogenKg.fill(0);
  into.fieldGrainT.fill(0);
  into.zoneReachedHa.fill(0);
  into.zoneNitrogenKg.fill(0);
}
