import { NITROGEN_RELATIVE_SD } from '../../reference/nitrogen-coefficients.ts';
import { nitrogenFixedKgPerHa } from '../../science/nitrogen.ts';
import { delayFactor, lifeValue } from '../../science/reach.ts';
import type { Crop } from '../../vocabulary/index.ts';
import { DRAW, lossRate, UNCERTAINTY } from './draw-parameters.ts';
import { ON_SEED_LOG10 } from './live-inoculant.ts';
import type { PlayCrops, PreparedPlay } from './prepare-play.ts';

export { type PlayParts, type PreparedPlay, preparePlay } from './prepare-play.ts';

/** What one play gives. Overwritten by every play; hectares, kg and t. */
export interface PlayResult {
  reachedHa: number;
  nitrogenKg: number;
  /** Of it, what would not be fixed had the programme brought nothing. */
  programmeNitrogenKg: number;
  /** Of it, what the same land sown on the same days would not fix without its inoculant. */
  inoculationNitrogenKg: number;
  grainT: number;
  farmersReached: number;
  /** Inoculated hectares that are not reached, by what kept them from it (see PastSeasons). */
  readonly lostHa: LostHectares;
  /** Per field. */
  readonly fieldReachedHa: Float64Array;
  readonly fieldNitrogenKg: Float64Array;
  readonly fieldGrainT: Float64Array;
  /** Per zone, the last for outside all zones. */
  readonly zoneReachedHa: Float64Array;
  readonly zoneNitrogenKg: Float64Array;
  /** Per parcel: log10 rhizobia per seed at sowing and log10 lost in the community's store; NaN where none, or not sown. */
  readonly parcelLog10PerSeed: Float64Array;
  readonly parcelCommunityLog10: Float64Array;
  /** The draw's numbers in the units of the play. */
  readonly factors: DrawnFactors;
}

export interface LostHectares {
  noOnset: number;
  late: number;
  waiting: number;
  weak: number;
}

interface DrawnFactors {
  nitrogen: number;
  yield: number;
  packLoss: number;
  seedLoss: number;
}

export function makePlayResult({ fields, parcels, zones }: PreparedPlay): PlayResult {
  const perField = () => new Float64Array(fields.zone.length);
  const perParcel = () => new Float64Array(parcels.field.length);
  return {
    reachedHa: 0,
    nitrogenKg: 0,
    programmeNitrogenKg: 0,
    inoculationNitrogenKg: 0,
    grainT: 0,
    farmersReached: 0,
    lostHa: { noOnset: 0, late: 0, waiting: 0, weak: 0 },
    fieldReachedHa: perField(),
    fieldNitrogenKg: perField(),
    fieldGrainT: perField(),
    zoneReachedHa: new Float64Array(zones + 1),
    zoneNitrogenKg: new Float64Array(zones + 1),
    parcelLog10PerSeed: perParcel(),
    parcelCommunityLog10: perParcel(),
    factors: { nitrogen: 1, yield: 1, packLoss: 1, seedLoss: 1 },
  };
}

const DISTRICT_PART = Math.sqrt(UNCERTAINTY.responseSharedByDistrict.value);
const COMMUNITY_PART = Math.sqrt(1 - UNCERTAINTY.responseSharedByDistrict.value);

/**
 * Plays a fixed plan in one season and one draw of the parameters: each parcel is sown on the first good day after its
 * goods were handed over; sown late it yields less; inoculated it gains the crop's response by what the rhizobia left on
 * the seed are worth; nitrogen follows from the grain (Herridge et al. 2022). In a season without onset nothing is sown.
 * No search, no allocation.
 *
 * @param member index of the season's member
 * @param draw `prepared.drawWidth` standard normal numbers, laid out as DRAW; noughts are the central case
 */
export function playSeason(prepared: PreparedPlay, member: number, draw: Float64Array, into: PlayResult): void {
  const { fields, parcels } = prepared;
  readFactors(draw, into.factors);
  clear(into);
  for (let parcel = 0; parcel < parcels.field.length; parcel++) playParcel(prepared, member, draw, parcel, into);
  let withoutKg = 0;
  for (let field = 0; field < fields.zone.length; field++) {
    const zone = fields.zone[field] as number;
    into.zoneNitrogenKg[zone] = (into.zoneNitrogenKg[zone] as number) + (into.fieldNitrogenKg[field] as number);
    const reachedHa = into.fieldReachedHa[field] as number;
    into.zoneReachedHa[zone] = (into.zoneReachedHa[zone] as number) + reachedHa;
    into.reachedHa += reachedHa;
    into.farmersReached += reachedHa * (fields.farmersPerHa[field] as number);
    into.nitrogenKg += into.fieldNitrogenKg[field] as number;
    into.grainT += into.fieldGrainT[field] as number;
    withoutKg += nitrogenWithoutKg(prepared, member, field, into.factors);
  }
  into.programmeNitrogenKg = into.nitrogenKg - withoutKg;
}

/** Had the programme brought nothing: the growers' own seed, uncoated, sown as soon as the season allows. */
function nitrogenWithoutKg(prepared: PreparedPlay, member: number, field: number, factors: DrawnFactors): number {
  const { fields, crops } = prepared;
  const first = prepared.firstDay[member * prepared.windows + (fields.window[field] as number)] as number;
  if (Number.isNaN(first)) return 0;
  const crop = fields.crop[field] as number;
  const grainTPerHa = factors.yield * (crops.yieldTPerHa[crop] as number);
  return (fields.ownHa[field] as number) * factors.nitrogen * nitrogenKgPerHa(crops, crop, grainTPerHa);
}

function playParcel(
  prepared: PreparedPlay,
  member: number,
  draw: Float64Array,
  parcel: number,
  into: PlayResult,
): void {
  const { fields, parcels, crops, losses } = prepared;
  const { factors } = into;
  const field = parcels.field[parcel] as number;
  const window = member * prepared.windows + (fields.window[field] as number);
  const first = prepared.firstDay[window] as number;
  const last = prepared.lastDay[window] as number;
  into.parcelLog10PerSeed[parcel] = Number.NaN;
  into.parcelCommunityLog10[parcel] = Number.NaN;
  const inoculated = parcels.inoculated[parcel] === 1;
  const hectares = parcels.hectares[parcel] as number;
  if (Number.isNaN(first) || Number.isNaN(last)) {
    if (inoculated) into.lostHa.noOnset += hectares;
    return;
  }

  const crop = fields.crop[field] as number;
  const day = parcels.day[parcel] as number;
  const sown = Math.max(first, day + 1);
  const kept = delayFactor(sown - last, crops.delayLossPerDay[crop] as number, crops.delayFreeDays[crop] as number);
  let gainT = 0;
  if (inoculated) {
    const row = parcels.communityRow[parcel] as number;
    const waiting = losses.before(row, sown) - losses.before(row, day);
    const inPack = (parcels.storeLog10[parcel] as number) + (parcels.roadLog10[parcel] as number) + waiting;
    const left =
      (parcels.log10PerSeed[parcel] as number) - factors.packLoss * inPack - factors.seedLoss * ON_SEED_LOG10;
    into.parcelLog10PerSeed[parcel] = left;
    into.parcelCommunityLog10[parcel] = factors.packLoss * waiting;
    gainT = responseT(prepared, draw, crop, fields.community[field] as number) * lifeValue(left, prepared.floorLog10);
    if (sown > last) into.lostHa.late += hectares;
    else if (left >= prepared.floorLog10)
      into.fieldReachedHa[field] = (into.fieldReachedHa[field] as number) + hectares;
    else if (left + factors.packLoss * waiting >= prepared.floorLog10) into.lostHa.waiting += hectares;
    else into.lostHa.weak += hectares;
  }
  const plainT = factors.yield * (crops.yieldTPerHa[crop] as number);
  const grainTPerHa = Math.max(0, plainT + gainT) * kept;
  const nitrogenKg = hectares * factors.nitrogen * nitrogenKgPerHa(crops, crop, grainTPerHa);
  into.fieldGrainT[field] = (into.fieldGrainT[field] as number) + hectares * grainTPerHa;
  into.fieldNitrogenKg[field] = (into.fieldNitrogenKg[field] as number) + nitrogenKg;
  if (gainT !== 0) {
    const plainKg = hectares * factors.nitrogen * nitrogenKgPerHa(crops, crop, plainT * kept);
    into.inoculationNitrogenKg += nitrogenKg - plainKg;
  }
}

function nitrogenKgPerHa({ names }: PlayCrops, crop: number, grainTPerHa: number): number {
  return grainTPerHa > 0 ? nitrogenFixedKgPerHa(names[crop] as Crop, grainTPerHa) : 0;
}

/** Gain of a community's inoculated land in t per ha: the crop's mean, and the draw's district and community. */
function responseT({ crops }: PreparedPlay, draw: Float64Array, crop: number, community: number): number {
  const district = draw[DRAW.crops + crop] as number;
  const own = draw[DRAW.crops + crops.names.length + community] as number;
  const spread = DISTRICT_PART * district + COMMUNITY_PART * own;
  return (crops.responseT[crop] as number) + (crops.responseSdT[crop] as number) * spread;
}

function readFactors(draw: Float64Array, factors: DrawnFactors): void {
  factors.nitrogen = Math.max(0, 1 + NITROGEN_RELATIVE_SD.value * (draw[DRAW.nitrogen] as number));
  factors.yield = Math.max(0, 1 + UNCERTAINTY.yieldRelativeSd.value * (draw[DRAW.yield] as number));
  factors.packLoss = lossRate(draw[DRAW.packLoss] as number);
  factors.seedLoss = lossRate(draw[DRAW.seedLoss] as number);
}

function clear(into: PlayResult): void {
  into.reachedHa = 0;
  into.nitrogenKg = 0;
  into.programmeNitrogenKg = 0;
  into.inoculationNitrogenKg = 0;
  into.grainT = 0;
  into.farmersReached = 0;
  into.lostHa.noOnset = 0;
  into.lostHa.late = 0;
  into.lostHa.waiting = 0;
  into.lostHa.weak = 0;
  into.fieldReachedHa.fill(0);
  into.fieldNitrogenKg.fill(0);
  into.fieldGrainT.fill(0);
  into.zoneReachedHa.fill(0);
  into.zoneNitrogenKg.fill(0);
}
