import { RESPONSE_SHARED_BY_DISTRICT } from '../../reference/inoculation-response.ts';
import { PHOSPHORUS_RELATIVE_SD, RESPONSES_OVERLAP } from '../../reference/phosphorus-response.ts';
import { fixNitrogen } from '../../science/nitrogen.ts';
import { delayFactor, lifeValue } from '../../science/reach.ts';
import { addUpPlay } from './add-up-play.ts';
import { DRAW, firstPhosphorus, firstVehicle, lossRate, UNCERTAINTY } from './draw-parameters.ts';
import { ON_SEED_LOG10 } from './live-inoculant.ts';
import type { DrawnFactors, PlayResult } from './play-result.ts';
import type { PlayCrops, PreparedPlay } from './prepare-play.ts';
import { lostBefore } from './store-losses.ts';

/** Places in SEASON_LOSSES. */
const [NO_ONSET, LATE, HOT, WAITING, WEAK] = [0, 1, 2, 3, 4];
const DISTRICT_PART = Math.sqrt(RESPONSE_SHARED_BY_DISTRICT.value);
const COMMUNITY_PART = Math.sqrt(1 - RESPONSE_SHARED_BY_DISTRICT.value);

/**
 * Plays a fixed plan in one season and one draw of the parameters: each parcel is sown on the first good day after its
 * goods were handed over, in that season's weather; sown late it yields less; inoculated it gains the crop's response by what
 * the rhizobia left on the seed are worth, with fertiliser in hand its response to phosphorus; nitrogen follows from the grain
 * (Herridge et al. 2022). In a season without onset nothing is sown. No search, no allocation: each step fills columns that are there already.
 *
 * @param member index of the season's member
 * @param draw `prepared.drawWidth` numbers, laid out as DRAW; noughts are the central case
 */
export function playSeason(prepared: PreparedPlay, member: number, draw: Float64Array, into: PlayResult): void {
  const { crops, parcels, fields } = prepared;
  const { columns, factors } = into;
  readFactors(crops, draw, factors);
  handOver(prepared, member, draw, into);
  followRhizobia(prepared, member, into);
  growGrain(prepared, member, draw, into);
  fixNitrogen(crops.coefficients, parcels.crop, columns.grainT, factors.nitrogen, columns.grainNKg);
  fixNitrogen(crops.coefficients, parcels.crop, columns.plainT, factors.nitrogen, columns.plainNKg);
  fixNitrogen(crops.coefficients, parcels.crop, columns.withoutBagsT, factors.nitrogen, columns.withoutBagsNKg);
  fixNitrogen(crops.coefficients, fields.crop, columns.ownT, factors.nitrogen, columns.ownNKg);
  addUpPlay(prepared, into);
}

/** Day on which the goods of each visit come: in that season's roads, and later where the draw says so. */
function handOver(
  { visits, visitDay, visitVehicle, shape, planningDays }: PreparedPlay,
  member: number,
  draw: Float64Array,
  { factors, columns }: PlayResult,
): void {
  const vehicles = firstVehicle(shape);
  for (let visit = 0; visit < visits.length; visit++) {
    const day = visitDay[member * visits.length + visit] as number;
    const broken = draw[vehicles + (visitVehicle[visit] as number)] as number;
    const isBroken = broken > 0 && day >= broken * planningDays;
    columns.handedDay[visit] = day + factors.delayDays + (isBroken ? UNCERTAINTY.breakdownDays.value : 0);
  }
}

/** Follows the rhizobia of each parcel to its seed, and says what keeps it from being in time and alive. */
function followRhizobia(prepared: PreparedPlay, member: number, into: PlayResult): void {
  const { fields, parcels, losses, visits, visitOnHold, floorLog10, firstDay, lastDay } = prepared;
  const { packLoss, roadLoss, seedLoss } = into.factors;
  const { handedDay, sownDay } = into.columns;
  const onSeed = seedLoss * ON_SEED_LOG10;
  for (let parcel = 0; parcel < parcels.field.length; parcel++) {
    const window = member * prepared.windows + (fields.window[parcels.field[parcel] as number] as number);
    const first = firstDay[window] as number;
    const last = lastDay[window] as number;
    const isInoculated = parcels.inoculated[parcel] === 1;
    const visit = parcels.visit[parcel] as number;
    const day = visit < 0 ? Number.NEGATIVE_INFINITY : (handedDay[visit] as number);
    into.parcelLog10PerSeed[parcel] = Number.NaN;
    into.parcelStoreLog10[parcel] = Number.NaN;
    into.parcelCommunityLog10[parcel] = Number.NaN;
    into.parcelLoss[parcel] = -1;
    sownDay[parcel] = Number.NaN;
    const hasOnset = !(Number.isNaN(first) || Number.isNaN(last));
    // Goods that never come are not sown.
    if (!hasOnset || Number.isNaN(day)) {
      if (isInoculated) into.parcelLoss[parcel] = hasOnset ? LATE : NO_ONSET;
      continue;
    }
    const sown = Math.max(first, day + 1);
    sownDay[parcel] = sown;
    if (!isInoculated) continue;
    const community = parcels.communityRow[parcel] as number;
    const store = packLoss * lostBefore(losses, parcels.depotRow[parcel] as number, member, day);
    const waiting =
      packLoss * (lostBefore(losses, community, member, sown) - lostBefore(losses, community, member, day));
    const fresh = (parcels.log10PerSeed[parcel] as number) - roadLoss * (parcels.roadLog10[parcel] as number);
    const left = fresh - store - waiting - onSeed;
    into.parcelLog10PerSeed[parcel] = left;
    into.parcelStoreLog10[parcel] = store;
    into.parcelCommunityLog10[parcel] = waiting;
    if (visitOnHold[member * visits.length + visit] === 1) into.parcelLoss[parcel] = HOT;
    else if (sown > last) into.parcelLoss[parcel] = LATE;
    else if (!(left >= floorLog10)) into.parcelLoss[parcel] = left + waiting >= floorLog10 ? WAITING : WEAK;
  }
}

/** Grain of each parcel as it is sown, as it would be without its inoculant or its fertiliser; and of each field's own seed alone. */
function growGrain(prepared: PreparedPlay, member: number, draw: Float64Array, into: PlayResult): void {
  const { fields, parcels, crops, firstDay, lastDay, floorLog10 } = prepared;
  const { handedDay, sownDay, kept, worth, grainT, plainT, withoutBagsT, ownT } = into.columns;
  const bare = into.factors.yield;
  for (let parcel = 0; parcel < parcels.field.length; parcel++) {
    grainT[parcel] = Number.NaN;
    plainT[parcel] = Number.NaN;
    withoutBagsT[parcel] = Number.NaN;
    const sown = sownDay[parcel] as number;
    if (Number.isNaN(sown)) continue;
    const field = parcels.field[parcel] as number;
    const crop = parcels.crop[parcel] as number;
    const late = sown - (lastDay[member * prepared.windows + (fields.window[field] as number)] as number);
    const isAlive = parcels.inoculated[parcel] === 1 && into.parcelLoss[parcel] !== HOT;
    kept[parcel] = delayFactor(late, crops.delayLossPerDay[crop] as number, crops.delayFreeDays[crop] as number);
    worth[parcel] = isAlive ? lifeValue(into.parcelLog10PerSeed[parcel] as number, floorLog10) : 0;
    const gain = worth[parcel] === 0 ? 0 : (worth[parcel] as number) * responseT(prepared, draw, crop, field);
    const bareT = bare * (crops.yieldTPerHa[crop] as number);
    const bagsVisit = parcels.bagsVisit[parcel] as number;
    // Fertiliser that comes after sowing adds nothing.
    const bagsInHand = bagsVisit >= 0 && (handedDay[bagsVisit] as number) < sown;
    const bagsT = bagsInHand ? phosphorusT(prepared, draw, parcel, crop, field) : 0;
    const overlapT = RESPONSES_OVERLAP.value * Math.max(0, Math.min(gain, bagsT));
    grainT[parcel] = Math.max(0, bareT + bagsT + gain - overlapT) * (kept[parcel] as number);
    if (gain !== 0) plainT[parcel] = (bareT + bagsT) * (kept[parcel] as number);
    if (bagsT !== 0) withoutBagsT[parcel] = Math.max(0, bareT + gain) * (kept[parcel] as number);
  }
  // Had the programme brought nothing: the growers' own seed, uncoated, sown as soon as the season allows.
  for (let field = 0; field < fields.zone.length; field++) {
    const first = firstDay[member * prepared.windows + (fields.window[field] as number)] as number;
    ownT[field] = Number.isNaN(first) ? 0 : bare * (crops.yieldTPerHa[fields.crop[field] as number] as number);
  }
}

/** Gain of a field's inoculated land in t per ha: the crop's mean, and the draw's district and community. */
function responseT({ crops, fields }: PreparedPlay, draw: Float64Array, crop: number, field: number): number {
  const district = draw[DRAW.crops + crop] as number;
  const own = draw[DRAW.crops + 2 * crops.names.length + (fields.community[field] as number)] as number;
  const spread = DISTRICT_PART * district + COMMUNITY_PART * own;
  const whole = (crops.responseT[crop] as number) + (crops.responseSdT[crop] as number) * spread;
  return (fields.repeat[field] as number) * whole;
}

/** Gain of a parcel's land by its fertiliser in t per ha: the mean, and the draw's district and community; never below nought. */
function phosphorusT(
  { parcels, fields, shape }: PreparedPlay,
  draw: Float64Array,
  parcel: number,
  crop: number,
  field: number,
): number {
  const meanT = parcels.phosphorusT[parcel] as number;
  if (meanT === 0) return 0;
  const first = firstPhosphorus(shape);
  const own = draw[first + shape.crops + (fields.community[field] as number)] as number;
  const spread = DISTRICT_PART * (draw[first + crop] as number) + COMMUNITY_PART * own;
  return meanT * Math.max(0, 1 + PHOSPHORUS_RELATIVE_SD.value * spread);
}

function readFactors(crops: PlayCrops, draw: Float64Array, factors: DrawnFactors): void {
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
