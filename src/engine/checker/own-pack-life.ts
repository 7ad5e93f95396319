import { log10, tenTo } from '../numerics/elementary.ts';
import { BOX_LITRES_PER_KG, COOL_STORE_CELSIUS, COOL_STORE_DRIFT_HOURS } from '../reference/boxes.ts';
import { GOAL_CELLS_PER_SEED } from '../reference/crops.ts';
import { INOCULATION_PRACTICE } from '../reference/inoculation-practice.ts';
import { COATED_SEED_WAIT, ON_SEED, STORE_AIR, type SurvivalSet } from '../reference/survival-sets.ts';
import { thousandSeedG } from './check-needs.ts';
import { at, type CheckedCase, lotAndProduct } from './checked-case.ts';
import { lossOver } from './own-box.ts';
import { type OwnAir, ownSurvival } from './own-heat.ts';
import type { Handed } from './own-land.ts';
import { DAYS_BEYOND } from './own-visits.ts';

/** Worth of rhizobia per seed: all at the goal, 0.8 at the floor, none one log10 below it; straight between (design, assumed). */
export function lifeWorth(left: number, floor: number): number {
  const goal = Math.max(log10(GOAL_CELLS_PER_SEED.value), floor);
  if (!(left > floor - 1)) return 0;
  if (left >= goal) return 1;
  return left < floor ? 0.8 * (left - floor + 1) : 0.8 + (0.2 * (left - floor)) / (goal - floor);
}

/** log10 rhizobia per seed at sowing: count, dose and seeds, less store, road, community and seed. */
export function rhizobiaLeft(
  c: CheckedCase,
  air: OwnAir,
  member: number,
  community: number,
  crop: number,
  goods: Handed,
  day: number,
  sown: number,
): number {
  const pair = lotAndProduct(c, goods.lot);
  if (!pair) return Number.NaN;
  const { product } = pair;
  const name = at(c.scenario.crops, crop);
  const set = ownSurvival(product, name);
  const count = countOnFirstDay(c, air, goods.lot);
  const perSeed =
    ((count * (product.doseGPerKg ?? Number.NaN) * thousandSeedG(c, name)) / 1e6) * INOCULATION_PRACTICE.adhesion.value;
  const place = at(c.plan.places.communityPlace, community);
  const depot = at(c.depotOfLot, goods.lot);
  const inDepot = storeLoss(c, air, member, at(air.stationOfDepot, depot), 0, day, set, (mean) =>
    depotC(c, goods.lot, mean),
  );
  const { store } = at(c.scenario.communities, community);
  const rule = STORE_AIR[store].value;
  const inHouse = storeLoss(c, air, member, at(air.stationOfPlace, place), day, sown, set, (mean) =>
    'celsius' in rule ? rule.celsius : mean + rule.kelvin,
  );
  return log10(perSeed) - inDepot - goods.roadLog10 - inHouse - seedLoss();
}

/** Rhizobia per gram as planning begins: a dated test less every day's loss in the depot since; a label's count holds as it is. */
export function countOnFirstDay(c: CheckedCase, air: OwnAir, lotIndex: number): number {
  const pair = lotAndProduct(c, lotIndex);
  if (pair?.product.kind !== 'inoculant') return Number.NaN;
  const { lot, product } = pair;
  const told = lot.testedCountPerG ?? product.countPerG ?? Number.NaN;
  const depot = at(c.depotOfLot, lotIndex);
  if (lot.testedCountPerG === null || lot.testedOn === null || depot < 0) return told;
  const station = at(air.stationOfDepot, depot);
  let left = told;
  for (let day = lot.testedOn - c.scenario.planning.from; day < 0; day++) {
    const { tminC, tmaxC } = air.extremesOf(station, Math.max(day, -MOST_DAYS_BACK));
    const celsius = depotC(c, lotIndex, (tminC + tmaxC) / 2);
    left *= tenTo(-Math.max(...product.crops.map((crop) => lossOver(celsius, 1440, ownSurvival(product, crop)))));
  }
  return left;
}

/** Air is told for so many days before planning; earlier days are as the first of them. */
const MOST_DAYS_BACK = 365;

/** Packs for which a full cool store has no room stand in a room; the lots that expire last are the first to. */
function depotC(c: CheckedCase, lot: number, meanC: number): number {
  const depot = at(c.depotOfLot, lot);
  const { coolStoreC, coolStoreLitres, outageHours } = at(c.scenario.depots, depot);
  const room = STORE_AIR.room.value;
  if (coolStoreLitres > 0 && litresKeptBefore(c, lot) > coolStoreLitres)
    return 'celsius' in room ? room.celsius : meanC + room.kelvin;
  const held = coolStoreC ?? (coolStoreLitres > 0 ? COOL_STORE_CELSIUS.value : meanC);
  // The drift from hour to hour as a sum of small steps; the outage counts as warm as it ends.
  const minutes = 60 * Math.min(24, outageHours);
  let drifted = held;
  for (let minute = 0; minute < minutes; minute++) drifted += (meanC - drifted) / (60 * COOL_STORE_DRIFT_HOURS.value);
  return held + (Math.max(0, drifted - held) * minutes) / 1440;
}

/** Litres of inoculant in the lot's depot on the first planning day, of this lot and those with a stronger claim to the store. */
function litresKeptBefore(c: CheckedCase, lot: number): number {
  const { lots, planning } = c.scenario;
  const own = at(lots, lot);
  if (own.availableFrom !== null && own.availableFrom > planning.from) return 0;
  return lots.reduce((sum, other, index) => {
    const product = lotAndProduct(c, index)?.product;
    const isThere = other.availableFrom === null || other.availableFrom <= planning.from;
    if (other.depotId !== own.depotId || product?.kind !== 'inoculant' || !isThere) return sum;
    if (other.expires > own.expires || (other.expires === own.expires && index < lot)) return sum;
    return sum + other.packs * (product.litresPerPack ?? (product.packG / 1000) * BOX_LITRES_PER_KG.value);
  }, 0);
}

/** Days beyond the outlook lose as the last of it. */
function storeLoss(
  c: CheckedCase,
  air: OwnAir,
  member: number,
  station: number,
  from: number,
  until: number,
  set: SurvivalSet,
  celsiusOf: (meanC: number) => number,
): number {
  const lossOn = (day: number) => lossOver(celsiusOf(air.memberExtremes(station, member, day).meanC), 1440, set);
  const end = c.planningDays + DAYS_BEYOND;
  let loss = Math.max(0, until - Math.max(from, end)) * lossOn(end - 1);
  for (let day = Math.max(0, from); day < Math.min(until, end); day++) loss += lossOn(day);
  return loss;
}

/** On the coated seed until noon: a fast first loss, then a steady one, a little faster when warm. */
function seedLoss(): number {
  const { hours, celsius } = COATED_SEED_WAIT.value;
  const k = ON_SEED.value;
  const at25 = k.firstLog10 * Math.min(1, hours / k.firstHours) + (k.log10PerDay * hours) / 24;
  return at25 * tenTo((celsius - k.referenceCelsius) / k.zCelsius);
}
