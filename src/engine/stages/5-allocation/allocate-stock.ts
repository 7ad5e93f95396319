import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type {
  Allocation,
  Delivery,
  Needs,
  Places,
  SeasonOutlook,
  Shares,
  StageResult,
} from '../../vocabulary/stage-results.ts';
import type { Product } from '../../vocabulary/supply.ts';
import { allocateCommodity, type CommodityResult } from './allocate-commodity.ts';
import { type Ask, boundAsk } from './ask.ts';
import { buildConsignments } from './build-consignments.ts';
import { type DemandRows, gatherDemand } from './demand-rows.ts';
import { type DepotReach, depotsThatReach } from './depot-reach.ts';
import { describeAllocation } from './describe-allocation.ts';
import { findRemedies } from './find-remedies.ts';
import { judgeLots } from './judge-lots.ts';
import { keepServed, type Settled, settleNothing } from './keep-served.ts';
import { type GrantLine, keptSeedKg, listGrants, productsOfLots, serveNeeds } from './list-grants.ts';
import { listShortfalls } from './list-shortfalls.ts';
import { noteStock } from './note-stock.ts';
import { prepareReachCurves, type ReachCurves } from './reach-curves.ts';
import { type Holds, readHolds } from './read-holds.ts';
import { sharePacks } from './share-packs.ts';
import { groupStock, type StockGroup } from './stock-groups.ts';

/**
 * Who gets what, from which lot, when there is not enough.
 *
 * @param earlier the first round, whose served packs are promises; null in the first round
 * @returns whole packs, shares, proofs, shortfalls with reasons, remedies, the sharing plan and consignments
 */
export function allocateStock(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  solver: LinearSolver,
  earlier: { readonly allocation: Allocation; readonly delivery: Delivery } | null,
): StageResult<Allocation> {
  const demand = gatherDemand(needs);
  const products = productsOfLots(scenario);
  const { verdicts, problems: lotProblems } = judgeLots(scenario, decisions, season, needs);
  const { holds, problems: holdProblems } = readHolds(scenario, decisions, demand);
  const curves = prepareReachCurves(scenario, places, season, needs, products);
  const lastUsefulDay = lastUsefulDays(scenario, demand, curves);
  const outOfSeason = Uint8Array.from(lastUsefulDay, (day) => (day < scenario.planning.from ? 1 : 0));
  const settled = earlier ? keepServed(scenario, demand, earlier) : settleNothing(scenario);
  const reach = depotsThatReach(scenario, places);
  const desk: Desk = { scenario, places, demand, products, verdicts, holds, settled, reach, solver };

  const seedNeedKg = demand.programmeSeedKg.map((kg, r) => (outOfSeason[r] === 1 ? 0 : kg));
  const seed = giveOut(desk, 'seed', seedNeedKg, () => true);
  const toCoatKg = demand.seedNeedKg.map((need, r) =>
    Math.min(need, (seed.givenKg[r] as number) + (demand.ownSeedKg[r] as number)),
  );
  const inoculant = giveOut(desk, 'inoculant', withoutRows(toCoatKg, outOfSeason), () => true);
  // Stickers ride with seed that goes there anyway: by themselves they would not be worth a trip.
  const sendsSeed = new Set(
    seed.lines.map(({ row, lot }) => `${demand.community[row]} ${scenario.lots[lot]?.depotId}`),
  );
  const sticker = giveOut(desk, 'sticker', inoculant.givenKg, (row, { depot }) =>
    sendsSeed.has(`${demand.community[row]} ${scenario.depots[depot]?.id}`),
  );

  const lines = [...seed.lines, ...inoculant.lines, ...sticker.lines].sort((a, b) => a.row - b.row || a.lot - b.lot);
  const shortfalls = [
    ...listShortfalls(scenario, demand, verdicts, { ...seed, needKg: demand.programmeSeedKg }, outOfSeason, null),
    ...listShortfalls(
      scenario,
      demand,
      verdicts,
      { ...inoculant, needKg: toCoatKg },
      outOfSeason,
      demand.seedNeedKg.map((need, r) => need - (toCoatKg[r] as number)),
    ),
  ].sort((a, b) => a.shareRow - b.shareRow || (a.commodity === b.commodity ? 0 : a.commodity === 'seed' ? -1 : 1));
  return {
    result: {
      round: earlier ? 2 : 1,
      lots: verdicts,
      grants: listGrants(demand, lines),
      shares: listShares(demand, seed.givenKg, toCoatKg, inoculant.givenKg),
      proofs: [...seed.result.proofs, ...inoculant.result.proofs],
      shortfalls,
      remedies: findRemedies(scenario, demand, verdicts, shortfalls, lastUsefulDay),
      packShares: sharePacks(scenario, demand, lines),
      consignments: buildConsignments(scenario, places, demand, lines, curves),
    },
    problems: [
      ...lotProblems,
      ...holdProblems,
      ...noteStock(scenario, verdicts, lines),
      ...seed.result.problems,
      ...inoculant.result.problems,
      ...sticker.result.problems,
    ],
    provenance: describeAllocation(scenario),
  };
}

/** All that the three commodities are shared out with. */
interface Desk {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly demand: DemandRows;
  readonly products: readonly Product[];
  readonly verdicts: Allocation['lots'];
  readonly holds: Holds;
  readonly settled: Settled;
  readonly reach: DepotReach;
  readonly solver: LinearSolver;
}

interface GivenOut {
  readonly ask: Ask;
  readonly result: CommodityResult;
  readonly reached: Uint8Array;
  readonly closed: Uint8Array;
  readonly lines: readonly GrantLine[];
  readonly givenKg: Float64Array;
}

/** Shares one commodity out and serves the need with what was kept and what is new. */
function giveOut(
  desk: Desk,
  commodity: Ask['commodity'],
  needKg: Float64Array,
  mayGo: (row: number, group: StockGroup) => boolean,
): GivenOut {
  const { scenario, demand, products, verdicts, holds, settled, solver } = desk;
  const closed = settled.closed.get(commodity) ?? new Uint8Array(demand.count);
  const kept = settled.kept.filter(({ lot }) => products[lot]?.kind === commodity);
  const keptKg = keptSeedKg(demand, products, kept, commodity);
  const ask = boundAsk(demand, commodity, needKg, scenario.policy.contingencyPercent, holds, keptKg, closed);
  const apart = new Set([...holds.namedLots, ...lateLots(desk)]);
  const minutesTo = minutesFinder(desk);
  const result = allocateCommodity({
    scenario,
    demand,
    ask,
    groups: groupStock(scenario, verdicts, commodity, settled.packsOfLot, apart),
    minutesTo: (row, group) => (mayGo(row, group) ? minutesTo(row, group) : Number.POSITIVE_INFINITY),
    kept,
    products,
    solver,
  });
  const served = serveNeeds(products, [...kept, ...result.picks], needKg);
  return { ask, result, reached: result.reached, closed, ...served };
}

/**
 * Lots that arrive while planning runs. In the second round they stand apart, and do not join goods of a community that
 * were served before: one consignment would have to wait for them and break the promise.
 */
function lateLots({ scenario, settled }: Desk): number[] {
  if (settled.kept.length === 0) return [];
  return scenario.lots.flatMap((lot, l) => ((lot.availableFrom ?? 0) > scenario.planning.from ? [l] : []));
}

function minutesFinder(desk: Desk): (row: number, group: StockGroup) => number {
  const { places, demand, holds, reach, settled, scenario } = desk;
  const late = new Set(lateLots(desk));
  const promised = new Set(
    settled.kept.map(({ row, lot }) => `${demand.community[row]} ${scenario.lots[lot]?.depotId}`),
  );
  return (row, { depot, namedLot }) => {
    if (namedLot >= 0) {
      if (holds.forbiddenLots.has(`${row} ${namedLot}`)) return Number.POSITIVE_INFINITY;
      const key = `${demand.community[row]} ${scenario.depots[depot]?.id}`;
      if (late.has(namedLot) && promised.has(key)) return Number.POSITIVE_INFINITY;
    }
    const place = places.communityPlace[demand.community[row] as number] as number;
    for (let k = reach.offsets[place] as number; k < (reach.offsets[place + 1] as number); k++) {
      if (reach.depots[k] === depot) return reach.minutes[k] as number;
    }
    return Number.POSITIVE_INFINITY;
  };
}

function withoutRows(column: Float64Array, left: Uint8Array): Float64Array {
  return column.map((value, r) => (left[r] === 1 ? 0 : value));
}

/** Last planning day, as a day number, on which goods for a row are of use in some zone; the day before planning where none is. */
function lastUsefulDays(scenario: Scenario, demand: DemandRows, curves: ReachCurves): Float64Array {
  return Float64Array.from({ length: demand.count }, (_, row) => {
    let last = -1;
    for (let k = demand.partOffsets[row] as number; k < (demand.partOffsets[row + 1] as number); k++) {
      const { value, inTime, lossBreaks } = curves.dry(demand.partZone[k] as number, demand.crop[row] as number);
      let day = inTime.length - 1;
      while (day > last && !((value[day * lossBreaks.length] as number) > 0)) day--;
      last = Math.max(last, day);
    }
    return scenario.planning.from + last;
  });
}

function listShares(
  demand: DemandRows,
  seedGivenKg: Float64Array,
  inoculantNeedSeedKg: Float64Array,
  inoculantGivenSeedKg: Float64Array,
): Shares {
  const shareOfNeed = (kg: (r: number) => number) =>
    demand.seedNeedKg.map((need, r) => (need > 0 ? Math.min(1, kg(r) / need) : 1));
  return {
    community: demand.community,
    crop: demand.crop,
    plannedHa: demand.plannedHa,
    seedNeedKg: demand.seedNeedKg,
    ownSeedKg: demand.ownSeedKg,
    seedGivenKg,
    inoculantNeedSeedKg,
    inoculantGivenSeedKg,
    seedShare: shareOfNeed((r) => (seedGivenKg[r] as number) + (demand.ownSeedKg[r] as number)),
    inoculantShare: shareOfNeed((r) => inoculantGivenSeedKg[r] as number),
  };
}
