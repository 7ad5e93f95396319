import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation } from '../../vocabulary/stage-results/allocation.ts';
import type { Delivery } from '../../vocabulary/stage-results/delivery.ts';
import type { ProductKind } from '../../vocabulary/supply.ts';
import type { Pick } from './allocate-commodity.ts';
import type { DemandRows } from './demand-rows.ts';

/** What the first round settled: packs that were served, and ways on which more could not be brought. */
export interface Settled {
  readonly kept: readonly Pick[];
  /** Depots that could not bring a row all they were to bring, by kind of product: `row depot`. */
  readonly closedWays: ReadonlyMap<ProductKind, ReadonlySet<string>>;
  /** Kept packs by lot. */
  readonly packsOfLot: Int32Array;
}

export const wayOf = (row: number, depot: number): string => `${row} ${depot}`;

/** Nothing settled yet: the first round. */
export function settleNothing(scenario: Scenario): Settled {
  return { kept: [], closedWays: new Map(), packsOfLot: new Int32Array(scenario.lots.length) };
}

/**
 * Packs on loads that the first round served are promises and stay. A row whose packs were left behind gets no more from that
 * depot, because more could not be brought either; the freed packs go to the others, and other depots may still serve it.
 */
export function keepServed(
  scenario: Scenario,
  demand: DemandRows,
  { allocation, delivery }: { readonly allocation: Allocation; readonly delivery: Delivery },
): Settled {
  const { grants } = allocation;
  const left = grants.packs.slice();
  const unserved = new Set(delivery.unserved.map(({ load }) => load));
  delivery.loads.forEach((load, index) => {
    if (unserved.has(index)) return;
    load.grants.forEach((grant, i) => {
      left[grant] = (left[grant] as number) - (load.packs[i] as number);
    });
  });
  const rowOf = new Map(Array.from(demand.community, (community, r) => [`${community} ${demand.crop[r]}`, r]));
  const kindOf = new Map(scenario.products.map(({ id, kind }) => [id, kind]));
  const depotOf = new Map(scenario.depots.map(({ id }, depot) => [id, depot]));
  const kept: Pick[] = [];
  const closedWays = new Map<ProductKind, Set<string>>();
  const packsOfLot = new Int32Array(scenario.lots.length);
  left.forEach((unservedPacks, grant) => {
    const row = rowOf.get(`${grants.community[grant]} ${grants.crop[grant]}`);
    const lot = grants.lot[grant] as number;
    const kind = kindOf.get(scenario.lots[lot]?.productId ?? '');
    if (row === undefined || kind === undefined) return;
    const packs = (grants.packs[grant] as number) - unservedPacks;
    if (packs > 0) kept.push({ row, lot, packs });
    packsOfLot[lot] = (packsOfLot[lot] as number) + packs;
    if (unservedPacks === 0) return;
    const ways = closedWays.get(kind) ?? new Set<string>();
    ways.add(wayOf(row, depotOf.get(scenario.lots[lot]?.depotId ?? '') ?? -1));
    closedWays.set(kind, ways);
  });
  return { kept, closedWays, packsOfLot };
}
