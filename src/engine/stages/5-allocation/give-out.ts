import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict } from '../../vocabulary/stage-results/allocation.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { Product, ProductKind } from '../../vocabulary/supply.ts';
import { allocateCommodity, type CommodityResult, type Pick } from './allocate-commodity.ts';
import { type Ask, boundAsk } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import type { DepotReach } from './depot-reach.ts';
import type { MinutesTo } from './form-pools.ts';
import type { HandedBefore } from './handed-before.ts';
import { type Settled, wayOf } from './keep-served.ts';
import { type GrantLine, keptSeedKg, serveNeeds } from './list-grants.ts';
import type { Holds } from './read-holds.ts';
import { groupStock } from './stock-groups.ts';

/** All that each commodity is shared out with. */
export interface Desk {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly demand: DemandRows;
  readonly products: readonly Product[];
  /** Seed that a pack of each lot is or coats, kg at reference germination; hectares that a bag of fertiliser serves. */
  readonly packKg: Float64Array;
  readonly verdicts: readonly LotVerdict[];
  readonly holds: Holds;
  readonly handed: HandedBefore;
  readonly reach: DepotReach;
  readonly solver: LinearSolver;
}

export interface GivenOut {
  readonly ask: Ask;
  readonly result: CommodityResult;
  readonly reached: Uint8Array;
  readonly lines: readonly GrantLine[];
  readonly givenKg: Float64Array;
}

/**
 * Shares one commodity out and serves the need with what was kept and what is new. Ways that failed in the first round are
 * closed while anyone else can use the stock; what nobody takes is sent that way once more.
 */
export function giveOut(
  desk: Desk,
  commodity: Ask['commodity'],
  needKg: Float64Array,
  settled: Settled,
  mayGo: (row: number, depot: number) => boolean,
): GivenOut {
  const { demand, products, packKg } = desk;
  const kept = settled.kept.filter(({ lot }) => products[lot]?.kind === commodity);
  const closedWays = settled.closedWays.get(commodity) ?? new Set<string>();
  const leftBehind = new Uint8Array(demand.count);
  for (const way of closedWays) leftBehind[Number(way.split(' ')[0])] = 1;
  const minutes = minutesFinder(desk);
  const along =
    (closed: boolean): MinutesTo =>
    (row, group) =>
      closedWays.has(wayOf(row, group.depot)) === closed && mayGo(row, group.depot)
        ? minutes(row, group)
        : Number.POSITIVE_INFINITY;
  const open = shareAlong(desk, commodity, needKg, leftBehind, kept, along(false));
  if (closedWays.size === 0)
    return { ...open, ...serveNeeds(products, packKg, [...kept, ...open.result.picks], needKg) };
  const given = [...kept, ...open.result.picks];
  const again = shareAlong(desk, commodity, needKg, leftBehind, given, along(true));
  const served = serveNeeds(products, packKg, [...given, ...again.result.picks], needKg);
  return { ...open, reached: open.reached.map((reached, row) => reached | (again.reached[row] as number)), ...served };
}

/** Shares out what `kept` leaves of the stock, along the ways that `minutesTo` knows. */
function shareAlong(
  { scenario, demand, products, packKg, verdicts, holds, handed, solver }: Desk,
  commodity: Ask['commodity'],
  needKg: Float64Array,
  leftBehind: Uint8Array,
  kept: readonly Pick[],
  minutesTo: MinutesTo,
) {
  const before: Readonly<Record<ProductKind, Float64Array | null>> = {
    seed: handed.seedKg,
    inoculant: handed.inoculantKg,
    sticker: null,
    fertiliser: handed.fertiliserHa,
  };
  const keptKg = keptSeedKg(demand, products, packKg, kept, commodity).map(
    (kg, row) => kg + (before[commodity]?.[row] ?? 0),
  );
  const groups = groupStock(scenario, verdicts, commodity, packsByLot(scenario, kept), holds.namedLots, packKg);
  // The rate is put on the land itself: nothing of it is spilt in coating or sown anew.
  const contingency = commodity === 'fertiliser' ? 0 : scenario.policy.contingencyPercent;
  const ask = boundAsk(demand, commodity, needKg, contingency, holds, keptKg, leftBehind);
  const result = allocateCommodity({ scenario, demand, ask, groups, minutesTo, kept, products, solver });
  return { ask, result, reached: result.reached };
}

function packsByLot({ lots }: Scenario, picks: readonly Pick[]): Int32Array {
  const packs = new Int32Array(lots.length);
  for (const pick of picks) packs[pick.lot] = (packs[pick.lot] as number) + pick.packs;
  return packs;
}

function minutesFinder({ places, demand, holds, reach }: Desk): MinutesTo {
  return (row, { depot, namedLot }) => {
    if (namedLot >= 0 && holds.forbiddenLots.has(`${row} ${namedLot}`)) return Number.POSITIVE_INFINITY;
    const place = places.communityPlace[demand.community[row] as number] as number;
    for (let k = reach.offsets[place] as number; k < (reach.offsets[place + 1] as number); k++) {
      if (reach.depots[k] === depot) return reach.minutes[k] as number;
    }
    return Number.POSITIVE_INFINITY;
  };
}
