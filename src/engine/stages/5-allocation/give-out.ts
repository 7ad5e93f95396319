import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict, Places } from '../../vocabulary/stage-results.ts';
import type { Product } from '../../vocabulary/supply.ts';
import { allocateCommodity, type CommodityResult } from './allocate-commodity.ts';
import { type Ask, boundAsk } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import type { DepotReach } from './depot-reach.ts';
import type { MinutesTo } from './form-pools.ts';
import { type Settled, wayOf } from './keep-served.ts';
import { type GrantLine, keptSeedKg, serveNeeds } from './list-grants.ts';
import type { Holds } from './read-holds.ts';
import { groupStock, type StockGroup } from './stock-groups.ts';

/** All that the three commodities are shared out with. */
export interface Desk {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly demand: DemandRows;
  readonly products: readonly Product[];
  readonly verdicts: readonly LotVerdict[];
  readonly holds: Holds;
  readonly settled: Settled;
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

/** Shares one commodity out and serves the need with what was kept and what is new. */
export function giveOut(
  desk: Desk,
  commodity: Ask['commodity'],
  needKg: Float64Array,
  mayGo: (row: number, group: StockGroup) => boolean,
): GivenOut {
  const { scenario, demand, products, verdicts, holds, settled, solver } = desk;
  const kept = settled.kept.filter(({ lot }) => products[lot]?.kind === commodity);
  const keptKg = keptSeedKg(demand, products, kept, commodity);
  const groups = groupStock(scenario, verdicts, commodity, settled.packsOfLot, holds.namedLots);
  const closedWays = settled.closedWays.get(commodity) ?? new Set<string>();
  const minutes = minutesFinder(desk);
  const minutesTo: MinutesTo = (row, group) =>
    mayGo(row, group) && !closedWays.has(wayOf(row, group.depot)) ? minutes(row, group) : Number.POSITIVE_INFINITY;
  const leftBehind = new Uint8Array(demand.count);
  for (const way of closedWays) leftBehind[Number(way.split(' ')[0])] = 1;
  const ask = boundAsk(demand, commodity, needKg, scenario.policy.contingencyPercent, holds, keptKg, leftBehind);
  const result = allocateCommodity({ scenario, demand, ask, groups, minutesTo, kept, products, solver });
  const served = serveNeeds(products, [...kept, ...result.picks], needKg);
  return { ask, result, reached: result.reached, ...served };
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
