import { describe, expect, it } from 'vitest';
import { districtBounds } from '../../../src/presentation/views/map-view.ts';
import { stockPicture } from '../../../src/presentation/views/stock-picture.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario, stock } = stockCase('demo-district');
const picture = stockPicture(plan, scenario, english);

describe('the map of the stock view', () => {
  it('prints the share that the table has for the zone', () => {
    const printed = new Map(picture.labels.map(({ text, figure }) => [text, figure]));
    for (const { name, share } of stock.grid.zones) {
      expect(printed.get(name)).toBe(`${Math.floor(share * 100 + 1e-7)}\u00a0%`);
    }
  });

  it('leaves the paper bare only where nothing is planned', () => {
    const planned = new Set(plan.allocation.shares.community);
    scenario.communities.forEach((_, community) => {
      expect(picture.fills[community] === null, `${community}`).toBe(!planned.has(community));
      expect(picture.hatches[community]).toBeNull();
    });
  });

  it('cross-hatches a community that is handed nothing, and gives it no tone', () => {
    const { stops } = plan.delivery;
    const [cut] = plan.allocation.shares.community;
    const rows = plan.allocation.shares.community.map((community) => community === cut);
    const nought = (column: readonly number[]) => column.map((value, row) => (rows[row] ? 0 : value));
    const loadsOf = (load: number) =>
      plan.allocation.consignments.community[plan.delivery.loads.consignment[load] ?? -1];
    const without = {
      ...plan,
      delivery: {
        ...plan.delivery,
        stops: { ...stops, loads: stops.loads.map((loads) => loads.filter((load) => loadsOf(load) !== cut)) },
      },
      outcomes: {
        ...plan.outcomes,
        crops: { ...plan.outcomes.crops, inoculatedHa: nought(plan.outcomes.crops.inoculatedHa) },
      },
    };
    const { fills, hatches } = stockPicture(without, scenario, english);
    expect([fills[cut ?? -1], hatches[cut ?? -1]]).toEqual([null, 'nothing']);
    expect(hatches.filter((hatch) => hatch !== null)).toHaveLength(1);
  });

  it('draws depots by what they may give, and no label on one', () => {
    const offered = scenario.depots.map(({ id }) =>
      scenario.lots.reduce(
        (sum, { depotId }, l) => (depotId === id ? sum + (plan.allocation.lots.packsOffered[l] ?? 0) : sum),
        0,
      ),
    );
    const sizes = picture.symbols.map(({ size }) => size);
    expect(sizes.indexOf(Math.max(...sizes))).toBe(offered.indexOf(Math.max(...offered)));
    const [west, south, east, north] = districtBounds(scenario) ?? [0, 0, 1, 1];
    for (const { position } of picture.labels) {
      for (const depot of picture.symbols) {
        const isBeside = Math.abs(position[0] - depot.position[0]) > 0.08 * (east - west);
        const isAbove = Math.abs(position[1] - depot.position[1]) > 0.08 * (north - south);
        expect(isBeside || isAbove).toBe(true);
      }
    }
  });
});
