import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation, Commodity, SmallestChange } from '../../vocabulary/stage-results/allocation.ts';
import type { Product } from '../../vocabulary/supply.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import { allocateChanged, type StockCase } from './allocate-changed.ts';
import { NOISE_KG } from './ask.ts';
import { depotsThatReach, nearestDepot } from './depot-reach.ts';
import { STOCK_REASONS } from './list-shortfalls.ts';
import { seedKgPerPack } from './stock-groups.ts';

/**
 * The smallest change that lifts a row's whole shortfall of a commodity, by solving again: so many packs more of the product
 * that comes in time for least money, at the depot nearest to the row. With one pack less some of it would stay. Found by halving
 * the step between a number of packs that does not do and one that does.
 *
 * A decision that holds the row back is taken back instead. Where neither stock nor a decision binds, no change of stock helps.
 *
 * @param before the allocation without any change
 */
export function findSmallestChange(
  stock: StockCase,
  before: Allocation,
  shareRow: number,
  commodity: Commodity,
): SmallestChange {
  const lacks = before.shortfalls.filter((short) => short.shareRow === shareRow && short.commodity === commodity);
  const main = lacks.find(({ reason }) => reason !== 'no-seed-to-inoculate') ?? lacks[0];
  if (!main) return { kind: 'none-needed' };
  if (main.reason === 'no-seed-to-inoculate') return { kind: 'seed-first' };
  if (main.reason === 'decision') return releaseDecision(stock, before, shareRow, commodity);
  if (!STOCK_REASONS.includes(main.reason)) return { kind: 'not-by-stock', reason: main.reason };
  return buyPacks(stock, before, shareRow, commodity);
}

/** What the row lacks of stock, kg of seed; what it could not coat because there is no seed does not count. */
export function shortKgOf({ shortfalls }: Allocation, shareRow: number, commodity: Commodity): number {
  return shortfalls.reduce(
    (sum, short) =>
      short.shareRow === shareRow && short.commodity === commodity && short.reason !== 'no-seed-to-inoculate'
        ? sum + short.shortKg
        : sum,
    0,
  );
}

function releaseDecision(stock: StockCase, before: Allocation, shareRow: number, commodity: Commodity): SmallestChange {
  const { scenario, decisions } = stock;
  const community = scenario.communities[before.shares.community[shareRow] as number]?.id;
  const crop = scenario.crops[before.shares.crop[shareRow] as number];
  const index = decisions.decisions.findLastIndex(
    (decision) =>
      'commodity' in decision &&
      'crop' in decision &&
      decision.communityId === community &&
      decision.crop === crop &&
      decision.commodity === commodity,
  );
  if (index < 0) return { kind: 'not-by-stock', reason: 'decision' };
  const after = allocateChanged(stock, { kind: 'release', index });
  const liftsKg = shortKgOf(before, shareRow, commodity) - shortKgOf(after, shareRow, commodity);
  return { kind: 'release-decision', index, liftsKg };
}

interface Offer {
  readonly product: Product;
  readonly kg: number;
  readonly arrives: number;
}

function buyPacks(stock: StockCase, before: Allocation, shareRow: number, commodity: Commodity): SmallestChange {
  const { scenario } = stock;
  const crop = before.shares.crop[shareRow] as number;
  const place = stock.places.communityPlace[before.shares.community[shareRow] as number] as number;
  const depot = nearestDepot(scenario, depotsThatReach(scenario, stock.places), place, commodity === 'inoculant');
  if (depot < 0) return { kind: 'not-by-stock', reason: 'not-reachable' };
  const offers = offersOf(scenario, crop, commodity);
  if (offers.length === 0) return { kind: 'no-product' };
  const shortKg = shortKgOf(before, shareRow, commodity);
  for (const { product, kg, arrives } of offers) {
    const after = (packs: number) => {
      const change = {
        kind: 'more-packs',
        productId: product.id,
        depotId: scenario.depots[depot]?.id ?? '',
        packs,
        arrives: dayNumber(arrives),
      } as const;
      return shortKgOf(allocateChanged(stock, change), shareRow, commodity);
    };
    const isLifted = (packs: number) => after(packs) <= NOISE_KG;
    // All that is short, and a pack for each row that is rounded up; twice over where others are served from here instead.
    const most = Math.ceil(wholeShortKg(before, commodity) / kg) + before.shares.community.length;
    const enough = [most, 2 * most, 4 * most].find((packs) => arrives <= scenario.planning.to && isLifted(packs));
    if (enough === undefined) continue;
    const packs = leastThatDoes(isLifted, enough);
    return {
      kind: 'more-packs',
      product: scenario.products.indexOf(product),
      depot,
      packs,
      arrives,
      liftsKg: shortKg,
      cost: product.pricePerPack === null ? null : packs * product.pricePerPack,
    };
  }
  return { kind: 'too-late', arrives: offers.reduce((first, offer) => Math.min(first, offer.arrives), Infinity) };
}

/** @param most a number that does */
function leastThatDoes(does: (packs: number) => boolean, most: number): number {
  let [fails, lifts] = [0, most];
  while (lifts - fails > 1) {
    const middle = (fails + lifts) >> 1;
    if (does(middle)) lifts = middle;
    else fails = middle;
  }
  return lifts;
}

const wholeShortKg = ({ shortfalls }: Allocation, commodity: Commodity) =>
  shortfalls.reduce((sum, short) => sum + (short.commodity === commodity ? short.shortKg : 0), 0);

/** Products for a crop that may be given, least money for a kilogram of seed first, unpriced ones last. */
function offersOf(scenario: Scenario, crop: number, commodity: Commodity): Offer[] {
  return scenario.products
    .filter(
      (product) =>
        product.kind === commodity &&
        product.crops.some((one) => one === scenario.crops[crop]) &&
        (!product.treatedSeed || product.inoculantAllowed === true) &&
        seedKgPerPack(product) > 0,
    )
    .map((product) => ({
      product,
      kg: seedKgPerPack(product),
      arrives: scenario.asOf + (product.leadDays ?? 0),
    }))
    .sort((a, b) => pricePerKg(a) - pricePerKg(b) || a.kg - b.kg);
}

const pricePerKg = ({ product, kg }: Offer) => (product.pricePerPack === null ? 1e300 : product.pricePerPack / kg);
