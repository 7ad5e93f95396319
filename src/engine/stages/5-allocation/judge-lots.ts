import { lotsOutside } from '../../science/depot-store.ts';
import { countAtStart } from '../../science/stored-count.ts';
import { isoDate } from '../../vocabulary/calendar.ts';
import { type Decisions, type StandingHold, standingHold } from '../../vocabulary/decisions.ts';
import { type Problem, type ProblemCode, problem } from '../../vocabulary/problems.ts';
import type { LotReason } from '../../vocabulary/reasons.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict } from '../../vocabulary/stage-results/allocation.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';
import { EARLIER_DAYS, type SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import type { Lot, Product } from '../../vocabulary/supply.ts';
import { wasHot } from './handed-before.ts';

/** A lot is given only where the chance of sowing before it expires is at least this (a rule of the design, assumed). */
export const LEAST_CHANCE_BEFORE_EXPIRY = 0.9;

const CODE: Readonly<Record<LotReason, ProblemCode>> = {
  expired: 'E5001',
  'expires-before-sowing': 'E5002',
  'on-hold': 'E5003',
  awaiting: 'E5004',
  'count-below-minimum': 'E5005',
  'germination-below-minimum': 'E5006',
  'treated-seed-not-for-inoculant': 'E5007',
  'available-too-late': 'E5008',
  'no-crop-planned': 'E5009',
  'unknown-depot': 'E5010',
};

/**
 * Which lots may be given, how much of each is reserved, and why the others are kept back. Every lot kept back, and every
 * lot that arrives while planning runs, is noted.
 *
 * @param gonePacks packs of each lot that were handed over before
 */
export function judgeLots(
  scenario: Scenario,
  decisions: Decisions,
  season: SeasonOutlook,
  needs: Needs,
  gonePacks: Int32Array,
): { readonly verdicts: readonly LotVerdict[]; readonly problems: readonly Problem[] } {
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  const counts = countsAtStart(scenario, season, products);
  const plannedHa = plannedHaByWindow(scenario, needs);
  const problems: Problem[] = [];
  const verdicts = scenario.lots.map((lot, l): LotVerdict => {
    const product = products.get(lot.productId);
    if (!product) throw new RangeError(`lot ${l} is of a product that intake did not let through`);
    const chance = chanceSownBefore(scenario, season, plannedHa, product, lot.expires);
    const count = counts[l] as number;
    const hold = standingHold(decisions.decisions, lot.id);
    const isOnHold = hold.isWhole || (lot.status === 'on_hold' && !hold.isCleared);
    const reasons = reasonsToKeepBack(scenario, product, lot, { chance, count }, plannedHa, isOnHold);
    const there = lot.packs - (gonePacks[l] as number);
    const onHold = Math.min(there, hold.packs + hotReturns(scenario, product, lot, hold));
    const sound = there - onHold;
    // Of the lot as it came: a buffer that shrank with the stock would hand out a few packs more every day.
    const buffer = Math.floor((lot.packs * scenario.policy.reservePercent) / 100);
    const reserved = reasons.length > 0 ? 0 : Math.min(sound, buffer);
    problems.push(...reasons.map((reason) => noteReason(reason, product, lot, { chance, count })));
    if (reasons.length === 0 && lot.availableFrom !== null && lot.availableFrom > scenario.planning.from) {
      problems.push(noteLot('E5012', lot, 'available_from', isoDate(lot.availableFrom)));
    }
    const isGiven = reasons.length === 0;
    if (isGiven && onHold > 0) problems.push(noteLot('E5025', lot, null, String(onHold)));
    return {
      lot: l,
      reasons,
      packsReserved: reserved,
      packsOffered: isGiven ? sound - reserved : 0,
      packsHeld: isOnHold ? there : isGiven ? onHold : 0,
      chanceSownBeforeExpiry: chance,
      countPerG: count,
    };
  });
  return { verdicts, problems };
}

/** Rhizobia per gram of each inoculant lot on the first planning day; NaN for other goods. */
function countsAtStart(
  scenario: Scenario,
  { earlierMeanC, firstDay }: SeasonOutlook,
  products: ReadonlyMap<string, Product>,
): Float64Array {
  const outside = lotsOutside(scenario);
  return Float64Array.from(scenario.lots, (lot, l) => {
    const product = products.get(lot.productId);
    if (product?.kind !== 'inoculant') return Number.NaN;
    const d = scenario.depots.findIndex(({ id }) => id === lot.depotId);
    return countAtStart({
      lot,
      product,
      depot: scenario.depots[d] ?? null,
      isOutside: outside.has(l),
      earlierMeanC: earlierMeanC.subarray(d * EARLIER_DAYS, (d + 1) * EARLIER_DAYS),
      firstDay,
    });
  });
}

interface LotFigures {
  /** Of the first sowing day before the lot expires. */
  readonly chance: number;
  /** Rhizobia per gram on the first planning day. */
  readonly count: number;
}

function reasonsToKeepBack(
  { planning, depots }: Scenario,
  product: Product,
  lot: Lot,
  { chance, count }: LotFigures,
  plannedHa: PlannedHa,
  isOnHold: boolean,
): LotReason[] {
  const rules: readonly (readonly [LotReason, boolean])[] = [
    ['unknown-depot', !depots.some(({ id }) => id === lot.depotId)],
    ['no-crop-planned', !product.crops.some((crop) => plannedHa.crops.has(crop))],
    ['expired', lot.expires < planning.from],
    ['expires-before-sowing', lot.expires >= planning.from && chance < LEAST_CHANCE_BEFORE_EXPIRY],
    ['on-hold', isOnHold],
    ['awaiting', lot.status === 'awaiting'],
    ['count-below-minimum', product.kind === 'inoculant' && !(count >= product.minCountPerG)],
    [
      'germination-below-minimum',
      product.kind === 'seed' &&
        lot.germinationPercent !== null &&
        lot.germinationPercent < product.minGerminationPercent,
    ],
    // The label must allow it in words: silence is no leave to put living rhizobia beside a chemical.
    ['treated-seed-not-for-inoculant', product.treatedSeed && product.inoculantAllowed !== true],
    ['available-too-late', lot.availableFrom !== null && lot.availableFrom > planning.to],
  ];
  return rules.flatMap(([reason, holds]) => (holds ? [reason] : []));
}

/** Packs of inoculant that came back from a box at 40 °C or above since the last clearing. */
function hotReturns({ handovers }: Scenario, product: Product, lot: Lot, { clearedOn }: StandingHold): number {
  if (product.kind !== 'inoculant') return 0;
  return handovers
    .filter(({ lotId, date }) => lotId === lot.id && (clearedOn === null || isoDate(date) > clearedOn))
    .filter(wasHot)
    .reduce((sum, { returnedPacks }) => sum + returnedPacks, 0);
}

interface PlannedHa {
  readonly crops: ReadonlySet<string>;
  /** Hectares by window of the season, [zone * crops + crop], the last zone outside all zones. */
  readonly byWindow: Float64Array;
}

function plannedHaByWindow(scenario: Scenario, needs: Needs): PlannedHa {
  const crops = scenario.crops.length;
  const byWindow = new Float64Array((scenario.zones.length + 1) * crops);
  needs.plannedHa.forEach((ha, n) => {
    const zone = needs.zone[n] as number;
    const window = (zone < 0 ? scenario.zones.length : zone) * crops + (needs.crop[n] as number);
    byWindow[window] = (byWindow[window] as number) + ha;
  });
  const planned = new Set<string>();
  scenario.crops.forEach((crop, c) => {
    if (byWindow.some((ha, window) => window % crops === c && ha > 0)) planned.add(crop);
  });
  return { crops: planned, byWindow };
}

/**
 * Share of seasons in which the first sowing day comes before the lot expires, over zones and the product's crops by
 * planned hectares. Seasons without an onset say nothing about expiry and are left out. NaN where nothing is known.
 */
function chanceSownBefore(
  scenario: Scenario,
  season: SeasonOutlook,
  { byWindow }: PlannedHa,
  product: Product,
  expires: number,
): number {
  let weight = 0;
  let before = 0;
  byWindow.forEach((ha, w) => {
    const window = season.windows[w];
    if (ha === 0 || !window || !product.crops.includes(scenario.crops[w % scenario.crops.length] ?? window.crop))
      return;
    const known = window.firstDay.filter((day) => !Number.isNaN(day));
    if (known.length === 0) return;
    weight += ha;
    before += (ha * known.filter((day) => day < expires).length) / known.length;
  });
  return weight > 0 ? before / weight : Number.NaN;
}

function noteReason(reason: LotReason, product: Product, lot: Lot, { chance, count }: LotFigures): Problem {
  if (reason === 'count-below-minimum' && Number.isNaN(count)) return noteLot('E5011', lot, 'tested_count_per_g', '');
  const met: Readonly<Record<LotReason, readonly [string, string, number]>> = {
    expired: ['expires', isoDate(lot.expires), 0],
    'expires-before-sowing': ['expires', isoDate(lot.expires), Math.round(chance * 100)],
    'on-hold': ['status', lot.status, 0],
    awaiting: ['status', lot.status, 0],
    'count-below-minimum': ['tested_count_per_g', String(Number(count.toPrecision(3))), product.minCountPerG],
    'germination-below-minimum': ['germination_percent', String(lot.germinationPercent), product.minGerminationPercent],
    'treated-seed-not-for-inoculant': ['product_id', lot.productId, 0],
    'available-too-late': ['available_from', lot.availableFrom === null ? '' : isoDate(lot.availableFrom), 0],
    'no-crop-planned': ['product_id', lot.productId, 0],
    'unknown-depot': ['depot_id', lot.depotId, 0],
  };
  const [column, value, limit] = met[reason];
  return noteLot(CODE[reason], lot, column, value, { limit });
}

function noteLot(
  code: ProblemCode,
  lot: Lot,
  column: string | null,
  value: string,
  facts: Readonly<Record<string, number>> = {},
): Problem {
  return problem(code, {
    about: { part: 'lots', id: lot.id },
    column,
    value,
    facts: { lot: lot.id, packs: lot.packs, ...facts },
  });
}
