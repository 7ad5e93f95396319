import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Allocation, Shares } from '../../vocabulary/stage-results/allocation.ts';
import type { Delivery } from '../../vocabulary/stage-results/delivery.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import type { StageResult } from '../../vocabulary/stage-results/stage-result.ts';
import type { ToldPlan } from '../../vocabulary/told-plan.ts';
import { buildConsignments, lastDayOfUse } from './build-consignments.ts';
import { countByLand, toldInSeed } from './count-by-land.ts';
import { type DemandRows, gatherDemand } from './demand-rows.ts';
import { depotsThatReach } from './depot-reach.ts';
import { describeAllocation } from './describe-allocation.ts';
import { findRemedies } from './find-remedies.ts';
import { type Desk, giveOut } from './give-out.ts';
import { countHandedBefore } from './handed-before.ts';
import { judgeLots } from './judge-lots.ts';
import { keepServed, type Settled, settleNothing } from './keep-served.ts';
import { keepTold } from './keep-told.ts';
import { type GrantLine, listGrants, productsOfLots } from './list-grants.ts';
import { listOrders } from './list-orders.ts';
import { listShortfalls } from './list-shortfalls.ts';
import { noteFertiliser } from './note-fertiliser.ts';
import { noteStock } from './note-stock.ts';
import { prepareReachCurves, type ReachCurves } from './reach-curves.ts';
import { readHolds } from './read-holds.ts';
import { sharePacks } from './share-packs.ts';
import { packKgOfLots } from './stock-groups.ts';

/** What is promised already: packs that a first round served, or packs that people were told of. */
export type Promised =
  | { readonly as: 'held'; readonly allocation: Allocation; readonly delivery: Delivery }
  | { readonly as: 'told'; readonly told: ToldPlan };

/**
 * Who gets what, from which lot, when there is not enough.
 *
 * @param earlier what is promised already; null where nothing is
 * @returns whole packs, shares, proofs, shortfalls with reasons, remedies, the sharing plan and consignments
 */
export function allocateStock(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  needs: Needs,
  solver: LinearSolver,
  earlier: Promised | null,
): StageResult<Allocation> {
  const demand = gatherDemand(needs);
  const products = productsOfLots(scenario);
  const packKg = packKgOfLots(scenario, products);
  const handed = countHandedBefore(scenario, demand, products, packKg);
  const { verdicts, problems: lotProblems } = judgeLots(scenario, decisions, season, needs, handed.packsOfLot);
  const { holds, problems: holdProblems } = readHolds(scenario, decisions, demand);
  const curves = prepareReachCurves(scenario, places, season, needs, products, verdicts);
  const lastUsefulDay = lastUsefulDays(scenario, demand, curves);
  const outOfSeason = Uint8Array.from(lastUsefulDay, (day) => (day < scenario.planning.from ? 1 : 0));
  const reach = depotsThatReach(scenario, places);
  const desk: Desk = { scenario, places, demand, products, packKg, verdicts, holds, handed, reach, solver };
  const first = earlier?.as === 'held' ? keepServed(scenario, demand, earlier) : settleNothing(scenario);
  const settle = (kind: 'seed' | 'inoculant', needKg: Float64Array): Settled =>
    earlier?.as === 'told' ? keepTold(desk, earlier.told, kind, needKg) : first;

  const mayBeReached = Uint8Array.from(demand.community, (community) => {
    const place = places.communityPlace[community] as number;
    return (reach.offsets[place + 1] as number) > (reach.offsets[place] as number) ? 1 : 0;
  });

  const seedNeedKg = demand.programmeSeedKg.map((kg, r) => (outOfSeason[r] === 1 ? 0 : kg));
  const settledSeed = settle('seed', seedNeedKg);
  const seed = giveOut(desk, 'seed', seedNeedKg, settledSeed, () => true);
  const toCoatKg = demand.seedNeedKg.map((need, r) =>
    Math.min(need, (seed.givenKg[r] as number) + (demand.ownSeedKg[r] as number) + (handed.seedKg[r] as number)),
  );
  const toBringKg = withoutRows(toCoatKg, outOfSeason);
  const settledInoculant = settle('inoculant', toBringKg);
  const inoculant = giveOut(desk, 'inoculant', toBringKg, settledInoculant, () => true);
  // Stickers ride with seed that goes there anyway: by themselves they would not be worth a trip.
  const sticker = giveOut(desk, 'sticker', inoculant.givenKg, first, goesThere(desk, seed.lines));
  // So does fertiliser, with any goods, for the land where seed will be; it is shared out by land, and promised to nobody: it follows the seed, anew in each round.
  const sownHa = toCoatKg.map((kg, r) => (outOfSeason[r] === 1 ? 0 : kg / (demand.kgPerHa[r] as number)));
  const fertiliser = giveOut(
    { ...desk, demand: countByLand(demand) },
    'fertiliser',
    sownHa,
    settleNothing(scenario),
    goesThere(desk, [...seed.lines, ...inoculant.lines]),
  );

  const kept = earlier?.as === 'told' ? [...settledSeed.kept, ...settledInoculant.kept] : first.kept;
  const lines = [...seed.lines, ...inoculant.lines, ...sticker.lines, ...toldInSeed(demand, fertiliser.lines)].sort(
    (a, b) => a.row - b.row || a.lot - b.lot,
  );
  const shortfalls = [
    ...listShortfalls(
      scenario,
      demand,
      verdicts,
      packKg,
      { ...seed, needKg: demand.programmeSeedKg, handedKg: handed.seedKg, mayBeReached },
      outOfSeason,
      null,
    ),
    ...listShortfalls(
      scenario,
      demand,
      verdicts,
      packKg,
      { ...inoculant, needKg: toCoatKg, handedKg: handed.inoculantKg, mayBeReached },
      outOfSeason,
      demand.seedNeedKg.map((need, r) => need - (toCoatKg[r] as number)),
    ),
  ].sort((a, b) => a.shareRow - b.shareRow || (a.commodity === b.commodity ? 0 : a.commodity === 'seed' ? -1 : 1));
  return {
    result: {
      round: earlier ? 2 : 1,
      lots: verdicts,
      grants: listGrants(demand, lines),
      shares: listShares(demand, handed.seedKg, seed.givenKg, toCoatKg, inoculant.givenKg),
      proofs: [...seed.result.proofs, ...inoculant.result.proofs],
      shortfalls,
      remedies: findRemedies(scenario, demand, verdicts, shortfalls, lastUsefulDay),
      orders: listOrders(desk, { seed, inoculant, sticker, fertiliser }, curves, lastUsefulDay),
      packShares: sharePacks(scenario, demand, lines),
      consignments: buildConsignments(scenario, places, demand, lines, curves, kept),
    },
    problems: [
      ...lotProblems,
      ...holdProblems,
      ...noteStock(scenario, verdicts, lines),
      ...seed.result.problems,
      ...inoculant.result.problems,
      ...sticker.result.problems,
      ...fertiliser.result.problems,
      ...noteFertiliser(scenario, demand.crop, fertiliser, handed.fertiliserHa),
    ],
    provenance: describeAllocation(scenario),
  };
}

/** Whether goods of these lines go to a row's community from a depot. */
function goesThere({ scenario, demand }: Desk, lines: readonly GrantLine[]): (row: number, depot: number) => boolean {
  const ways = new Set(lines.map(({ row, lot }) => `${demand.community[row]} ${scenario.lots[lot]?.depotId}`));
  return (row, depot) => ways.has(`${demand.community[row]} ${scenario.depots[depot]?.id}`);
}

function withoutRows(column: Float64Array, left: Uint8Array): Float64Array {
  return column.map((value, r) => (left[r] === 1 ? 0 : value));
}

/** Last planning day, as a day number, on which goods for a row are of use in some zone; the day before planning where none is. */
function lastUsefulDays(scenario: Scenario, demand: DemandRows, curves: ReachCurves): Float64Array {
  return Float64Array.from({ length: demand.count }, (_, row) => {
    let last = -1;
    for (let k = demand.partOffsets[row] as number; k < (demand.partOffsets[row + 1] as number); k++) {
      const curve = curves.dry(demand.partZone[k] as number, demand.crop[row] as number);
      last = Math.max(last, lastDayOfUse(curve));
    }
    return scenario.planning.from + last;
  });
}

function listShares(
  demand: DemandRows,
  seedThereKg: Float64Array,
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
    seedThereKg,
    seedGivenKg,
    inoculantNeedSeedKg,
    inoculantGivenSeedKg,
    seedShare: shareOfNeed((r) => (seedGivenKg[r] as number) + (demand.ownSeedKg[r] as number)),
    inoculantShare: shareOfNeed((r) => inoculantGivenSeedKg[r] as number),
  };
}
