import type { StockOrder } from '../../vocabulary/stage-results/allocation.ts';
import { countByLand } from './count-by-land.ts';
import { nearestDepot } from './depot-reach.ts';
import type { Desk, GivenOut } from './give-out.ts';
import { type OrderDesk, offersFor, orderStock } from './order-stock.ts';
import type { ReachCurves } from './reach-curves.ts';

interface Given {
  readonly seed: GivenOut;
  readonly inoculant: GivenOut;
  readonly sticker: GivenOut;
  /** Counted by land, ha. */
  readonly fertiliser: GivenOut;
}

/**
 * What to order so that all planned land is served: seed beside what is given and saved, inoculant and sticker for all seed that
 * will then be there, and fertiliser for its land. Seed that would come too late asks for nothing to coat it. Whom no vehicle reaches, no order helps.
 */
export function listOrders(desk: Desk, given: Given, curves: ReachCurves, lastUsefulDay: Float64Array): StockOrder[] {
  const { scenario, demand, solver } = desk;
  const orders: OrderDesk = { scenario, demand, curves, lastUsefulDay, solver, depotOf: depotFinder(desk) };
  const contingency = 1 + scenario.policy.contingencyPercent / 100;
  const { handed } = desk;
  const seedKg = stillWanted(given.seed, given.seed.ask.askedKg, handed.seedKg);
  const first = scenario.crops.map((_, crop) =>
    offersFor(scenario, 'seed', crop).reduce((day, { arrives }) => Math.min(day, arrives), Number.POSITIVE_INFINITY),
  );
  const seedThenKg = demand.seedNeedKg.map((need, row) => {
    const isSown = (lastUsefulDay[row] as number) >= scenario.planning.from;
    const comes = (first[demand.crop[row] as number] as number) <= (lastUsefulDay[row] as number);
    const there =
      (given.seed.givenKg[row] as number) + (demand.ownSeedKg[row] as number) + (handed.seedKg[row] as number);
    return isSown ? Math.min(need, there + (comes ? (seedKg[row] as number) : 0)) : 0;
  });
  const toCoatKg = seedThenKg.map((kg) => kg * contingency);
  const inoculantKg = stillWanted(given.inoculant, toCoatKg, handed.inoculantKg);
  return orderStock(orders, [
    { kind: 'seed', kg: seedKg, kgPerHa: demand.kgPerHa },
    { kind: 'inoculant', kg: inoculantKg, kgPerHa: demand.kgPerHa },
    { kind: 'sticker', kg: stillWanted(given.sticker, toCoatKg, handed.inoculantKg), kgPerHa: demand.kgPerHa },
    {
      kind: 'fertiliser',
      kg: stillWanted(
        given.fertiliser,
        seedThenKg.map((kg, row) => kg / (demand.kgPerHa[row] as number)),
        handed.fertiliserHa,
      ),
      kgPerHa: countByLand(demand).kgPerHa,
    },
  ]);
}

/** Asked and not given, kg of seed (of fertiliser: ha), within what a decision allows. */
function stillWanted({ ask, lines }: GivenOut, askedKg: Float64Array, handedKg: Float64Array): Float64Array {
  const givenKg = handedKg.slice();
  for (const { row, packs, packKg } of lines) givenKg[row] = (givenKg[row] as number) + packs * packKg;
  return askedKg.map((asked, row) => {
    const isHeld = (ask.highKg[row] as number) < (ask.askedKg[row] as number);
    const most = isHeld ? Math.min(asked, ask.highKg[row] as number) : asked;
    return Math.max(0, most - (givenKg[row] as number));
  });
}

function depotFinder({ scenario, places, demand, reach }: Desk): OrderDesk['depotOf'] {
  return (row, mustBeCool) => {
    const place = places.communityPlace[demand.community[row] as number] as number;
    return nearestDepot(scenario, reach, place, mustBeCool);
  };
}
