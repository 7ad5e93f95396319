import { describe, expect, it } from 'vitest';
import type { Decision, Plan } from '../../../src/engine/index.ts';
import { deliveriesCsv } from '../../../src/presentation/exports/deliveries-csv.ts';
import { type DayStop, vehiclesOfDay } from '../../../src/presentation/views/days-fleet.ts';
import { closeWay, isAway, isHeld, stopGoods } from '../../../src/presentation/views/days-stops.ts';
import { notServed, servedNothing } from '../../../src/presentation/views/days-unserved.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const dates = [...new Set(plan.delivery.trips.date)].sort();

describe('what is handed over at a stop', () => {
  it('adds up to the packs of the deliveries table', () => {
    const kinds = new Map(
      scenario.lots.map((lot) => [lot.id, scenario.products.find(({ id }) => id === lot.productId)?.kind]),
    );
    const rows = deliveriesCsv(plan).trim().split('\n').slice(1);
    const packs = rows
      .map((line) => line.split(','))
      .reduce((sum, cells) => (kinds.get(cells[6] ?? '') === 'inoculant' ? sum + Number(cells[7]) : sum), 0);
    const told = dates.flatMap((date) =>
      vehiclesOfDay(plan, scenario, date).flatMap(({ id, trips }) =>
        trips.flatMap((trip) => trip.stops.map((stop) => stopGoods(plan, scenario, stop, id, date))),
      ),
    );
    expect(told.reduce((sum, { inoculantPacks }) => sum + inoculantPacks, 0)).toBe(packs);
    expect(packs).toBeGreaterThan(1000);
    for (const { communities, locks } of told) {
      expect(communities.length).toBeGreaterThan(0);
      expect(locks.length).toBeGreaterThan(0);
    }
  });
});

describe('decisions on a day', () => {
  const lock = (date: string): Decision => ({
    kind: 'lock',
    communityId: 'C1',
    commodity: 'seed',
    vehicleId: 'V',
    date,
  });

  it('hold a stop only where each of its goods is held, on that vehicle and day', () => {
    expect(isHeld([lock('2026-11-20')], [lock('2026-11-20')])).toBe(true);
    expect(isHeld([lock('2026-11-20')], [lock('2026-11-21')])).toBe(false);
    expect(
      isHeld([lock('2026-11-20')], [lock('2026-11-20'), { ...lock('2026-11-20'), commodity: 'inoculant' } as Decision]),
    ).toBe(false);
    expect(isHeld([], [])).toBe(false);
  });

  it('keep a vehicle away from its first to its last day', () => {
    const away: Decision = { kind: 'vehicle-away', vehicleId: 'V', from: '2026-11-20', to: '2026-11-22' };
    const days = ['2026-11-19', '2026-11-20', '2026-11-22', '2026-11-23'];
    expect(days.map((day) => isAway([away], 'V', day))).toEqual([false, true, true, false]);
    expect(isAway([away], 'W', '2026-11-20')).toBe(false);
  });
});

describe('who is not served', () => {
  const { consignments } = plan.allocation;
  const loadOf = (community: number, group: string) =>
    plan.delivery.loads.consignment.findIndex(
      (c) => consignments.community[c] === community && consignments.group[c] === group,
    );
  const community =
    consignments.community.find((one) => loadOf(one, 'dry') >= 0 && loadOf(one, 'inoculant') >= 0) ?? -1;
  const withLeft = (load: readonly number[], hectares: readonly number[]): Plan => ({
    ...plan,
    delivery: { ...plan.delivery, unserved: { load, reason: load.map(() => 'too-hot' as const), hectares } },
  });

  it('is nobody where no load is left', () => {
    expect(notServed(withLeft([], []), scenario)).toEqual([]);
  });

  it('counts land once where seed and inoculant for it are both left', () => {
    const left = notServed(withLeft([loadOf(community, 'dry'), loadOf(community, 'inoculant')], [7, 9.5]), scenario);
    expect(left).toHaveLength(1);
    expect(left[0]).toMatchObject({ reason: 'too-hot', hectares: 9.5, communities: [community] });
    expect(left[0]?.names).toEqual([scenario.communities[community]?.name]);
    expect(left[0]?.growers).toBe(scenario.communities[community]?.farmers);
  });

  it('names communities that no vehicle reaches, with all their planned land', () => {
    const { shares, shortfalls } = plan.allocation;
    const rows = shares.community.flatMap((one, row) => (one === community ? [row] : []));
    const cut: Plan = {
      ...withLeft([], []),
      allocation: {
        ...plan.allocation,
        shortfalls: {
          ...shortfalls,
          shareRow: [...rows, ...rows],
          commodity: [...rows.map(() => 'seed' as const), ...rows.map(() => 'inoculant' as const)],
          reason: [...rows, ...rows].map(() => 'not-reachable' as const),
        },
      },
    };
    const planned = rows.reduce((sum, row) => sum + (shares.plannedHa[row] ?? 0), 0);
    expect(notServed(cut, scenario)).toMatchObject([{ reason: 'not-reachable', communities: [community] }]);
    expect(notServed(cut, scenario)[0]?.hectares).toBeCloseTo(planned, 9);
  });

  it('tells those who get nothing on any day from those who get a part', () => {
    const left = notServed(withLeft([loadOf(community, 'dry')], [7]), scenario);
    // The plan still hands goods over to the community; without its stops it gets nothing.
    expect([...servedNothing(plan, left)]).toEqual([]);
    const none: Plan = {
      ...plan,
      delivery: { ...plan.delivery, stops: { ...plan.delivery.stops, loads: plan.delivery.stops.loads.map(() => []) } },
    };
    expect([...servedNothing(none, left)]).toEqual([community]);
    const zone = scenario.zones.find(({ id }) => id === scenario.communities[community]?.zoneId);
    expect(left[0]?.zones).toEqual([zone?.name]);
  });
});

describe('a way that is closed', () => {
  it('is the last road driven to the stop, from the day on', () => {
    const stop = { ...plan.delivery.stops };
    const row = stop.leg.findIndex((leg) => (plan.delivery.legs[leg]?.pieces.length ?? 0) > 0);
    const closed = closeWay(plan, scenario, { row } as DayStop, '2026-11-20');
    expect(closed).toMatchObject({ kind: 'road-closed', from: '2026-11-20', to: plan.scenario.planningTo });
    const [road] = plan.delivery.legs[stop.leg[row] ?? -1]?.pieces.at(-1) ?? [];
    const line = scenario.roads[road ?? -1]?.positions ?? [];
    const [west, east] = [Math.min(...line.map(([lon]) => lon)), Math.max(...line.map(([lon]) => lon))];
    if (closed?.kind !== 'road-closed') throw new Error('nothing is closed');
    expect(closed.lon).toBeGreaterThanOrEqual(west - 1e-6);
    expect(closed.lon).toBeLessThanOrEqual(east + 1e-6);
  });
});
