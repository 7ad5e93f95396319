import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation, TransferIdea } from '../../vocabulary/stage-results/allocation.ts';
import type { Places, TravelTable } from '../../vocabulary/stage-results/places.ts';
import type { Product } from '../../vocabulary/supply.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import { allocateChanged, type StockCase } from './allocate-changed.ts';
import { STOCK_REASONS } from './list-shortfalls.ts';
import { worthOfLand } from './worth-of-land.ts';

/** Gains below this are rounding of packs, ha. */
const LEAST_HA = 0.05;

/**
 * Packs that nobody can be given from where they lie while others lack them: what carrying them to another depot would serve, by sharing
 * out again. Most land first. The cost is one round trip of the cheapest vehicle of the depot they leave; the worth of the land is told
 * where every planned crop has a grain price, so that a transfer can be seen to pay for itself.
 *
 * @param before the allocation without any transfer
 */
export function proposeTransfers(stock: StockCase, before: Allocation): TransferIdea[] {
  const { scenario } = stock;
  const idle = idlePacks(before);
  const ideas = scenario.lots.flatMap((lot, l) => {
    const product = scenario.products.find(({ id }) => id === lot.productId);
    if (!product || (idle[l] as number) <= 0 || !isWanted(scenario, before, product)) return [];
    return scenario.depots.flatMap(({ id }, depot) =>
      id === lot.depotId ? [] : weighTransfer(stock, before, l, product, depot, idle[l] as number),
    );
  });
  return ideas.sort((a, b) => b.hectares - a.hectares || a.lot - b.lot || a.depot - b.depot);
}

function idlePacks({ lots, grants }: Allocation): Int32Array {
  const idle = Int32Array.from(lots, ({ packsOffered }) => packsOffered);
  grants.lot.forEach((lot, grant) => {
    idle[lot] = (idle[lot] as number) - (grants.packs[grant] as number);
  });
  return idle;
}

function isWanted({ crops }: Scenario, { shortfalls, shares }: Allocation, product: Product): boolean {
  return shortfalls.some(
    ({ commodity, reason, shareRow }) =>
      commodity === product.kind &&
      STOCK_REASONS.includes(reason) &&
      product.crops.some((crop) => crop === crops[shares.crop[shareRow] as number]),
  );
}

function weighTransfer(
  stock: StockCase,
  before: Allocation,
  lot: number,
  product: Product,
  depot: number,
  packs: number,
): TransferIdea[] {
  const { scenario, places } = stock;
  const after = allocateChanged(stock, {
    kind: 'packs-moved',
    lotId: scenario.lots[lot]?.id ?? '',
    depotId: scenario.depots[depot]?.id ?? '',
    packs,
    arrives: dayNumber(scenario.planning.from),
  });
  const moved = scenario.lots.length;
  const taken = after.grants.lot.reduce(
    (sum, of, grant) => (of === moved ? sum + (after.grants.packs[grant] as number) : sum),
    0,
  );
  const [was, is] = [landOf(scenario, before), landOf(scenario, after)];
  const hectares = is.hectares - was.hectares;
  if (taken === 0 || hectares < LEAST_HA) return [];
  const from = scenario.depots.findIndex(({ id }) => id === scenario.lots[lot]?.depotId);
  const isPriced = scenario.crops.every((crop) => scenario.prices.grainPerT[crop] !== undefined);
  return [
    {
      lot,
      product: scenario.products.indexOf(product),
      depot,
      packs: taken,
      hectares,
      cost: roundTripCost(scenario, places, from, depot),
      worth: isPriced ? is.worth - was.worth : null,
    },
  ];
}

/** Hectares with seed and hectares inoculated together, and what they are expected to bring. */
function landOf(scenario: Scenario, { shares }: Allocation) {
  const worthPerHa = worthOfLand({ ...scenario, policy: { ...scenario.policy, hectareValue: 'gain' } });
  let [hectares, worth] = [0, 0];
  shares.community.forEach((_, row) => {
    const ha = shares.plannedHa[row] as number;
    const crop = shares.crop[row] as number;
    const [seedHa, coatedHa] = [ha * (shares.seedShare[row] as number), ha * (shares.inoculantShare[row] as number)];
    hectares += seedHa + coatedHa;
    worth += seedHa * (worthPerHa.seed[crop] as number) + coatedHa * (worthPerHa.inoculant[crop] as number);
  });
  return { hectares, worth };
}

/** Least money for there and back by a vehicle of the first depot; null where no road is known. Depots are the first sites. */
function roundTripCost({ vehicles, depots }: Scenario, { travel }: Places, from: number, to: number): number | null {
  const costs = vehicles.flatMap(({ depotId, costPerKm, costPerDay }, v) => {
    const table = travel.tables[travel.vehicleClass[v] as number]?.[0]?.[0];
    const km = depotId === depots[from]?.id && table ? legKm(table, from, to) + legKm(table, to, from) : Infinity;
    return Number.isFinite(km) ? [costPerDay + costPerKm * km] : [];
  });
  return costs.length > 0 ? Math.min(...costs) : null;
}

function legKm({ offsets, destinations, kilometres }: TravelTable, from: number, to: number): number {
  for (let k = offsets[from] as number; k < (offsets[from + 1] as number); k++)
    if (destinations[k] === to) return kilometres[k] as number;
  return Number.POSITIVE_INFINITY;
}
