import { log, log10, tenTo } from '../numerics/elementary.ts';
import { BOX_LITRES_PER_KG, COOL_STORE_CELSIUS, COOL_STORE_DRIFT_HOURS } from '../reference/boxes.ts';
import { CROP_FACTS, cropFact, GOAL_CELLS_PER_SEED } from '../reference/crops.ts';
import { GRAIN_DRY_FRACTION, GRAIN_N_PERCENT, KERNEL_FRACTION, RESIDUES } from '../reference/harvest-nitrogen.ts';
import { INOCULATION_PRACTICE } from '../reference/inoculation-practice.ts';
import { REPEATED_INOCULATION } from '../reference/inoculation-response.ts';
import {
  EARLIER_NITROGEN_COEFFICIENTS,
  HARVEST_INDEX_LIMITS,
  NITROGEN_COEFFICIENTS,
} from '../reference/nitrogen-coefficients.ts';
import { COATED_SEED_WAIT, ON_SEED, STORE_AIR, type SurvivalSet } from '../reference/survival-sets.ts';
import type { Crop } from '../vocabulary/crops.ts';
import { thousandSeedG } from './check-needs.ts';
import { at, type CheckedCase, lotAndProduct, planningDayOf } from './checked-case.ts';
import { lossOver } from './own-box.ts';
import { type OwnAir, ownSurvival } from './own-heat.ts';
import { sowingDays } from './own-season.ts';
import { DAYS_BEYOND, type OwnVisit } from './own-visits.ts';
import { TOLERANCE } from './tolerances.ts';

/** Packs of one lot handed over for one community and crop on one planning day. */
export interface Handed {
  readonly lot: number;
  readonly kind: string;
  /** Row of the stops. */
  readonly stop: number;
  readonly day: number;
  readonly packs: number;
  readonly kg: number;
  /** Seed that they are or coat. */
  readonly seedKg: number;
  readonly roadLog10: number;
}

/** What the stops of the plan hand over, by `community * crops + crop`. */
export function handedGoods(c: CheckedCase): ReadonlyMap<number, readonly Handed[]> {
  const { stops, trips, loads } = c.plan.delivery;
  const { grants } = c.plan.allocation;
  const goods = new Map<number, Handed[]>();
  stops.loads.forEach((rows, stop) => {
    const day = planningDayOf(c, at(trips.date, at(stops.trip, stop)));
    for (const load of rows)
      at(loads.grants, load).forEach((grant, i) => {
        const product = lotAndProduct(c, at(grants.lot, grant))?.product;
        if (!product) return;
        const packs = at(at(loads.packs, load), i);
        const part = packs / Math.max(1, at(grants.packs, grant));
        const key = at(grants.community, grant) * c.scenario.crops.length + at(grants.crop, grant);
        const list = goods.get(key) ?? [];
        list.push({
          lot: at(grants.lot, grant),
          kind: product.kind,
          stop,
          day,
          packs,
          kg: (packs * product.packG) / 1000,
          seedKg: at(grants.servesSeedKg, grant) * part,
          roadLog10: product.kind === 'inoculant' ? (stops.log10Loss[stop] ?? 0) : 0,
        });
        goods.set(key, list);
      });
  });
  return goods;
}

interface Portion {
  readonly hectares: number;
  /** Stop that brings its last goods; -1 for own seed alone. */
  readonly stop: number;
  readonly inoculant: Handed | null;
}

/** Land of a community and crop as it is sown: hectares with the same goods on the same day. */
export interface OwnLand {
  /** Sown from own seed whatever is brought. */
  readonly ownHa: number;
  readonly seedHa: number;
  readonly inoculatedHa: number;
  /** Seed by the day it is there. */
  readonly seed: readonly Portion[];
  readonly portions: readonly Portion[];
}

/** Seed covers planned land in the order it is there, own seed first; inoculant covers seeded land in the order it comes. */
export function coverLand(plannedHa: number, needKg: number, ownKg: number, goods: readonly Handed[]): OwnLand {
  const byDay = [...goods].sort((a, b) => a.day - b.day);
  const hectares = (kg: number) => (needKg > 0 ? (kg / needKg) * plannedHa : 0);
  const take = (limitHa: number, from: readonly Portion[]): readonly Portion[] => {
    let left = limitHa;
    return from.map((portion) => {
      const taken = Math.min(left, portion.hectares);
      left -= taken;
      return { ...portion, hectares: taken };
    });
  };
  const total = (portions: readonly Portion[]) => portions.reduce((sum, portion) => sum + portion.hectares, 0);
  const own: Portion = { hectares: hectares(ownKg), stop: -1, inoculant: null };
  const brought = byDay.filter(({ kind }) => kind === 'seed');
  const seed = take(plannedHa, [
    own,
    ...brought.map(({ seedKg, stop }) => ({ hectares: hectares(seedKg), stop, inoculant: null })),
  ]);
  const seedHa = total(seed);
  const packs = byDay.filter(({ kind }) => kind === 'inoculant');
  const coated = take(
    seedHa,
    packs.map((inoculant) => ({ hectares: hectares(inoculant.seedKg), stop: inoculant.stop, inoculant })),
  );
  const inoculatedHa = total(coated);
  const bare = seedHa > 0 ? 1 - inoculatedHa / seedHa : 0;
  return {
    ownHa: Math.min(plannedHa, hectares(ownKg)),
    seedHa,
    inoculatedHa,
    seed,
    portions: [...seed.map((portion) => ({ ...portion, hectares: portion.hectares * bare })), ...coated],
  };
}

/** Sums over the members, to be divided by their number. Worth is NaN where a price it needs is missing. */
export interface OwnTotals {
  valueHa: number;
  nitrogenKg: number;
  programmeNitrogenKg: number;
  inoculationNitrogenKg: number;
  netNitrogenKg: number;
  residueNitrogenKg: number;
  earlierNitrogenKg: number;
  grainT: number;
  programmeGrainT: number;
  inoculationGrainT: number;
  programmeGrainWorth: number;
  inoculationGrainWorth: number;
}

export const noTotals = (): OwnTotals => ({
  valueHa: 0,
  nitrogenKg: 0,
  programmeNitrogenKg: 0,
  inoculationNitrogenKg: 0,
  netNitrogenKg: 0,
  residueNitrogenKg: 0,
  earlierNitrogenKg: 0,
  grainT: 0,
  programmeGrainT: 0,
  inoculationGrainT: 0,
  programmeGrainWorth: 0,
  inoculationGrainWorth: 0,
});

/** What one community and crop gives, expected over the members; per member the nitrogen and the hectares reached. */
export interface OwnYield {
  readonly seedInTimeHa: number;
  /** Least and most by the tolerance on rhizobia per seed. */
  readonly reachedHa: readonly [number, number];
  /** Nitrogen fixed on them. */
  readonly atMostKg: readonly [number, number];
  readonly log10PerSeed: number;
  readonly totals: OwnTotals;
  readonly nitrogenOfMember: readonly number[];
  readonly reachedOfMember: readonly number[];
}

export type VisitIn = (stop: number, member: number) => OwnVisit;

const BEFORE: OwnVisit = { day: Number.NEGATIVE_INFINITY, isHeld: false };

/**
 * Plays the land of a community and crop through every member at the central figures: sown on the first good day after
 * the last goods came in that member's weather, less yield when late, more with live inoculant, nitrogen from the grain.
 */
export function playLand(
  c: CheckedCase,
  air: OwnAir,
  visitIn: VisitIn,
  community: number,
  crop: number,
  zones: readonly { readonly zone: number; readonly part: number }[],
  land: OwnLand,
): OwnYield | null {
  const members = c.plan.season.memberYears.length;
  const name = at(c.scenario.crops, crop);
  const floor = log10(c.scenario.policy.cellsPerSeedFloor);
  const nitrogenOfMember = new Array<number>(members).fill(0);
  const reachedOfMember = new Array<number>(members).fill(0);
  const totals = noTotals();
  const response = responseOf(c, community, name);
  const base = yieldOf(c, name);
  const price = c.scenario.prices.grainPerT[name] ?? Number.NaN;
  let [inTime, least, most, leastKg, mostKg, logSum, logHa] = [0, 0, 0, 0, 0, 0, 0];
  for (const { zone, part } of zones) {
    const days = sowingDays(c, zone < 0 ? c.scenario.zones.length : zone, crop);
    if (!days) return null;
    for (let member = 0; member < members; member++) {
      const first = at(days.first, member) - c.scenario.planning.from;
      const last = at(days.last, member) - c.scenario.planning.from;
      if (Number.isNaN(first) || Number.isNaN(last)) continue;
      const come = (stop: number) => (stop < 0 ? BEFORE : visitIn(stop, member));
      for (const { hectares, stop } of land.seed)
        if (Math.max(first, come(stop).day + 1) <= last) inTime += hectares * part;
      const without = { ha: land.ownHa * part, kg: land.ownHa * part * nitrogenPerHa(name, base) };
      let [kg, grain] = [0, 0];
      for (const portion of land.portions) {
        const ha = portion.hectares * part;
        const { day, isHeld } = come(portion.stop);
        if (ha === 0 || Number.isNaN(day)) continue;
        const sown = Math.max(first, day + 1);
        const left = portion.inoculant
          ? rhizobiaLeft(c, air, member, community, crop, portion.inoculant, day, sown)
          : Number.NaN;
        const kept = keptWhenLate(c, name, sown - last);
        const worth = portion.inoculant && !isHeld ? lifeWorth(left, floor) : 0;
        const perHa = Math.max(0, base + response * worth) * kept;
        const fixed = ha * nitrogenPerHa(name, perHa);
        kg += fixed;
        grain += ha * perHa;
        totals.residueNitrogenKg += ha * residuePerHa(name, perHa);
        if (!portion.inoculant) continue;
        totals.valueHa += ha * kept * worth;
        const more = ha * (perHa - base * kept);
        totals.inoculationGrainT += more;
        if (response * worth !== 0) totals.inoculationGrainWorth += more * price;
        totals.inoculationNitrogenKg += fixed - ha * nitrogenPerHa(name, base * kept);
        [logSum, logHa] = [logSum + ha * left, logHa + ha];
        if (sown > last || isHeld) continue;
        if (left >= floor + TOLERANCE.log10PerSeed) [least, leastKg] = [least + ha, leastKg + fixed];
        if (left >= floor - TOLERANCE.log10PerSeed) [most, mostKg] = [most + ha, mostKg + fixed];
        if (left >= floor) reachedOfMember[member] = at(reachedOfMember, member) + ha;
      }
      nitrogenOfMember[member] = at(nitrogenOfMember, member) + kg;
      const moreGrain = grain - without.ha * base;
      totals.nitrogenKg += kg;
      totals.programmeNitrogenKg += kg - without.kg;
      totals.grainT += grain;
      totals.programmeGrainT += moreGrain;
      if (moreGrain !== 0) totals.programmeGrainWorth += moreGrain * price;
      totals.netNitrogenKg += kg - grain * grainNitrogenPerT(name);
      totals.earlierNitrogenKg += grain * earlierPerT(name);
    }
  }
  const mean = (sum: number) => (members > 0 ? sum / members : 0);
  return {
    seedInTimeHa: mean(inTime),
    reachedHa: [mean(least), mean(most)],
    atMostKg: [mean(leastKg), mean(mostKg)],
    log10PerSeed: logHa > 0 ? logSum / logHa : Number.NaN,
    totals,
    nitrogenOfMember,
    reachedOfMember,
  };
}

function yieldOf({ scenario }: CheckedCase, crop: Crop): number {
  return scenario.yieldsTPerHa[crop] ?? cropFact(crop, 'yieldTPerHa', scenario.assumptions).value;
}

/** Gain by inoculation, t per ha; less where the land was inoculated lately. */
function responseOf(c: CheckedCase, community: number, crop: Crop): number {
  const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
  const whole = responseTPerHa ? responseTPerHa.mean.value : (responseFraction?.mean.value ?? 0) * yieldOf(c, crop);
  const year = at(c.scenario.communities, community).lastInoculatedYear;
  if (year === null) return whole;
  const { partNextYear, fullAfterYears } = REPEATED_INOCULATION.value;
  const years = Math.min(fullAfterYears, Math.max(1, c.scenario.seasonYear - year));
  return whole * (partNextYear + ((1 - partNextYear) * (years - 1)) / (fullAfterYears - 1));
}

/** Part of the yield kept when sown so many days after the window. */
function keptWhenLate(c: CheckedCase, crop: Crop, lateDays: number): number {
  const lossPerDay = cropFact(crop, 'delayLossPerDay', c.scenario.assumptions).value;
  return Math.max(0, 1 - lossPerDay * Math.max(0, lateDays - CROP_FACTS[crop].delayFreeDays));
}

/** Nitrogen taken off the field with a t of grain, kg; groundnut as kernels. */
function grainNitrogenPerT(crop: Crop): number {
  const dry = GRAIN_DRY_FRACTION.value * (crop === 'groundnut' ? KERNEL_FRACTION.value : 1);
  return 10 * dry * GRAIN_N_PERCENT[crop].value;
}

/** Nitrogen in residues, kg per ha, by the inventory method; none told where no coefficients are given. */
function residuePerHa(crop: Crop, grainT: number): number {
  const k = RESIDUES[crop]?.value;
  if (!k) return 0;
  const harvest = grainT * GRAIN_DRY_FRACTION.value;
  const above = k.interceptT + k.slope * harvest;
  return 1000 * (k.nAbove * above + k.nBelow * k.rootShoot * (harvest + above));
}

/** Nitrogen fixed for each t of grain by the method of 2008, kg. */
function earlierPerT(crop: Crop): number {
  const k = EARLIER_NITROGEN_COEFFICIENTS[crop].value;
  return (k.shootNPercent * k.belowGroundFactor * k.ndfaPercent) / (10 * k.harvestIndex);
}

/** Nitrogen fixed, kg per ha (Herridge et al. 2022): grain to shoots by the harvest index, shoots to crop, crop to the air's part. */
export function nitrogenPerHa(crop: Crop, grainT: number): number {
  if (grainT <= 0) return 0;
  const k = NITROGEN_COEFFICIENTS[crop].value;
  const { least, most } = HARVEST_INDEX_LIMITS.value;
  const shootsT = grainT / Math.min(most, Math.max(least, k.harvestIntercept + k.harvestSlope * log(grainT)));
  const shootPercent = k.shootNPercent - k.shootNDropPerT * shootsT;
  return shootsT * 10 * shootPercent * k.belowGroundFactor * (k.ndfaPercent / 100);
}

/** Worth of rhizobia per seed: all at the goal, 0.8 at the floor, none one log10 below it; straight between (design, assumed). */
function lifeWorth(left: number, floor: number): number {
  const goal = Math.max(log10(GOAL_CELLS_PER_SEED.value), floor);
  if (!(left > floor - 1)) return 0;
  if (left >= goal) return 1;
  return left < floor ? 0.8 * (left - floor + 1) : 0.8 + (0.2 * (left - floor)) / (goal - floor);
}

/** log10 rhizobia per seed at sowing: count, dose and seeds, less store, road, community and seed. */
function rhizobiaLeft(
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
  const { lot, product } = pair;
  const name = at(c.scenario.crops, crop);
  const set = ownSurvival(product, name);
  const count = lot.testedCountPerG ?? product.countPerG ?? Number.NaN;
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
