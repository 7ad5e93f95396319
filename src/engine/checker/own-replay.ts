import { log, log10, tenTo } from '../numerics/elementary.ts';
import { BOX_LITRES_PER_KG, COOL_STORE_CELSIUS, COOL_STORE_DRIFT_HOURS } from '../reference/boxes.ts';
import { CROP_FACTS, cropFact, GOAL_CELLS_PER_SEED } from '../reference/crops.ts';
import { INOCULATION_PRACTICE } from '../reference/inoculation-practice.ts';
import { HARVEST_INDEX_LIMITS, NITROGEN_COEFFICIENTS } from '../reference/nitrogen-coefficients.ts';
import { COATED_SEED_WAIT, ON_SEED, STORE_AIR, type SurvivalSet } from '../reference/survival-sets.ts';
import type { Crop } from '../vocabulary/crops.ts';
import { thousandSeedG } from './check-needs.ts';
import { at, type CheckedCase, lotAndProduct, planningDayOf } from './checked-case.ts';
import { lossOver } from './own-box.ts';
import { type OwnAir, ownSurvival } from './own-heat.ts';
import { sowingDays } from './own-season.ts';
import { TOLERANCE } from './tolerances.ts';

/** Packs of one lot handed over for one community and crop on one planning day. */
export interface Handed {
  readonly lot: number;
  readonly kind: string;
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
  readonly day: number;
  readonly inoculant: Handed | null;
}

/** Land of a community and crop as it is sown: hectares with the same goods on the same day. */
export interface OwnLand {
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
  const own: Portion = { hectares: hectares(ownKg), day: Number.NEGATIVE_INFINITY, inoculant: null };
  const brought = byDay.filter(({ kind }) => kind === 'seed');
  const seed = take(plannedHa, [
    own,
    ...brought.map(({ seedKg, day }) => ({ hectares: hectares(seedKg), day, inoculant: null })),
  ]);
  const seedHa = total(seed);
  const packs = byDay.filter(({ kind }) => kind === 'inoculant');
  const coated = take(
    seedHa,
    packs.map((inoculant) => ({ hectares: hectares(inoculant.seedKg), day: inoculant.day, inoculant })),
  );
  const inoculatedHa = total(coated);
  const bare = seedHa > 0 ? 1 - inoculatedHa / seedHa : 0;
  return {
    seedHa,
    inoculatedHa,
    seed,
    portions: [...seed.map((portion) => ({ ...portion, hectares: portion.hectares * bare })), ...coated],
  };
}

/** What one community and crop gives, expected over the members; per member the nitrogen and the hectares reached. */
export interface OwnYield {
  readonly seedInTimeHa: number;
  /** Least and most by the tolerance on rhizobia per seed. */
  readonly reachedHa: readonly [number, number];
  readonly log10PerSeed: number;
  readonly nitrogenKg: number;
  readonly grainT: number;
  readonly nitrogenOfMember: readonly number[];
  readonly reachedOfMember: readonly number[];
}

/**
 * Plays the land of a community and crop through every member at the central figures: sown on the first good day after
 * the last goods came, less yield when late, more with live inoculant, nitrogen from the grain.
 */
export function playLand(
  c: CheckedCase,
  air: OwnAir,
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
  let [grainT, inTime, least, most, logSum, logHa] = [0, 0, 0, 0, 0, 0];
  for (const { zone, part } of zones) {
    const days = sowingDays(c, zone < 0 ? c.scenario.zones.length : zone, crop);
    if (!days) return null;
    for (let member = 0; member < members; member++) {
      const first = at(days.first, member) - c.scenario.planning.from;
      const last = at(days.last, member) - c.scenario.planning.from;
      if (Number.isNaN(first) || Number.isNaN(last)) continue;
      for (const { hectares, day } of land.seed) if (Math.max(first, day + 1) <= last) inTime += hectares * part;
      for (const portion of land.portions) {
        const ha = portion.hectares * part;
        if (ha === 0) continue;
        const sown = Math.max(first, portion.day + 1);
        const left = portion.inoculant ? rhizobiaLeft(c, air, community, crop, portion.inoculant, sown) : Number.NaN;
        const grain = grainPerHa(c, name, sown - last, portion.inoculant ? lifeWorth(left, floor) : 0);
        grainT += ha * grain;
        nitrogenOfMember[member] = at(nitrogenOfMember, member) + ha * nitrogenPerHa(name, grain);
        if (!portion.inoculant) continue;
        [logSum, logHa] = [logSum + ha * left, logHa + ha];
        if (sown > last) continue;
        if (left >= floor + TOLERANCE.log10PerSeed) least += ha;
        if (left >= floor - TOLERANCE.log10PerSeed) most += ha;
        if (left >= floor) reachedOfMember[member] = at(reachedOfMember, member) + ha;
      }
    }
  }
  const mean = (sum: number) => (members > 0 ? sum / members : 0);
  return {
    seedInTimeHa: mean(inTime),
    reachedHa: [mean(least), mean(most)],
    log10PerSeed: logHa > 0 ? logSum / logHa : Number.NaN,
    nitrogenKg: mean(nitrogenOfMember.reduce((sum, kg) => sum + kg, 0)),
    grainT: mean(grainT),
    nitrogenOfMember,
    reachedOfMember,
  };
}

/** Grain, t per ha: the yield and what live inoculant adds to it, less so much a day when sown late. */
function grainPerHa(c: CheckedCase, crop: Crop, lateDays: number, worth: number): number {
  const { yieldsTPerHa, assumptions } = c.scenario;
  const { responseTPerHa, responseFraction, delayFreeDays } = CROP_FACTS[crop];
  const base = yieldsTPerHa[crop] ?? cropFact(crop, 'yieldTPerHa', assumptions).value;
  const response = responseTPerHa ? responseTPerHa.mean.value : (responseFraction?.mean.value ?? 0) * base;
  const lossPerDay = cropFact(crop, 'delayLossPerDay', assumptions).value;
  const kept = Math.max(0, 1 - lossPerDay * Math.max(0, lateDays - delayFreeDays));
  return Math.max(0, base + response * worth) * kept;
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
  community: number,
  crop: number,
  goods: Handed,
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
  const inDepot = storeLoss(c, air, at(air.stationOfDepot, depot), 0, goods.day, set, (mean) =>
    depotC(c, goods.lot, mean),
  );
  const { store } = at(c.scenario.communities, community);
  const rule = STORE_AIR[store].value;
  const inHouse = storeLoss(c, air, at(air.stationOfPlace, place), goods.day, sown, set, (mean) =>
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

/** Days after planning that have weather of their own; later days lose as the last of them. */
const DAYS_BEYOND = 75;

function storeLoss(
  c: CheckedCase,
  air: OwnAir,
  station: number,
  from: number,
  until: number,
  set: SurvivalSet,
  celsiusOf: (meanC: number) => number,
): number {
  const lossOn = (day: number) => {
    const { tminC, tmaxC } = air.extremesOf(station, day);
    return lossOver(celsiusOf((tminC + tmaxC) / 2), 1440, set);
  };
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
