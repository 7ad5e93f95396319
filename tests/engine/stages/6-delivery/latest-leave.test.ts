import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkPlan, type Plan } from '../../../../src/engine/index.ts';
import { projectRoot } from '../../../architecture/source-files.ts';
import { type Planned, planFiles, readFolderFiles } from '../../../plan-files.ts';

/** Codes of the checker for a trip that leaves at the wrong time: hours, the vehicle's next trip, heat. */
const LATE = new Set(['E8608', 'E8702', 'E8703', 'E8708', 'E8901']);
const HOT_SUMMER_C = 14;

/** The tiny district as it is, and in days so hot that heat, not the shift, bounds the leaving hour. */
function planned(hotter: number, coolLitres: string): Planned {
  const files = readFolderFiles(join(projectRoot, 'scenarios', 'tiny-district'));
  const change = (name: string, make: (text: string) => string) =>
    files.set(name, new TextEncoder().encode(make(new TextDecoder().decode(files.get(name)))));
  const column = (text: string, name: string, to: (value: string) => string) => {
    const [head = '', ...rows] = text.trimEnd().split('\n');
    const at = head.split(',').indexOf(name);
    return [
      head,
      ...rows.map((row) =>
        row
          .split(',')
          .map((cell, i) => (i === at ? to(cell) : cell))
          .join(','),
      ),
    ].join('\n');
  };
  change('weather.csv', (text) => column(text, 'tmax_c', (value) => String(Number(value) + hotter)));
  change('vehicles.csv', (text) =>
    column(
      column(text, 'cool_litres', () => coolLitres),
      'ice_kg',
      () => '',
    ),
  );
  if (coolLitres === '0') {
    change('depots.csv', (text) =>
      column(
        column(text, 'cool_store_litres', () => '0'),
        'cool_store_c',
        () => '',
      ),
    );
  }
  return planFiles(files, 300);
}

/** The plan with one trip driven so many minutes later, waiting as the places' hours ask. */
function driven({ plan, scenario }: Planned, trip: number, leaveMinute: number): Plan {
  const later = structuredClone(plan) as unknown as {
    delivery: { trips: Record<string, number[]>; stops: Record<string, number[]> };
  };
  const { trips, stops } = later.delivery;
  const set = (column: number[] | undefined, row: number, value: number) => column?.splice(row, 1, value);
  set(trips['leaveMinute'], trip, leaveMinute);
  let minute = leaveMinute;
  plan.delivery.stops.trip.forEach((of, stop) => {
    if (of !== trip) return;
    const arrive = minute + (plan.delivery.legs[plan.delivery.stops.leg[stop] ?? -1]?.minutes ?? 0);
    const point = scenario.handoverPoints.find(
      ({ id }) => id === plan.ids.places[plan.delivery.stops.place[stop] ?? -1],
    );
    const start = Math.max(arrive, point?.opens ?? 0);
    const service = (plan.delivery.stops.departMinute[stop] ?? 0) - (plan.delivery.stops.startMinute[stop] ?? 0);
    minute = start + service;
    set(stops['arriveMinute'], stop, arrive);
    set(stops['startMinute'], stop, start);
    set(stops['departMinute'], stop, minute);
  });
  const home = plan.delivery.legs[plan.delivery.trips.returnLeg[trip] ?? -1]?.minutes ?? 0;
  set(trips['returnMinute'], trip, minute + home);
  return later as unknown as Plan;
}

const faults = (one: Planned, trip: number, leaveMinute: number): string[] =>
  checkPlan(one.scenario, one.decisions, driven(one, trip, leaveMinute)).flatMap(({ code }) =>
    LATE.has(code) ? [code] : [],
  );

describe.each([
  ['the tiny district', 0, '20', 'E8702'],
  ['the tiny district in great heat, in cartons from a store that is not cool', HOT_SUMMER_C, '0', 'E8901'],
] as const)('the latest leaving hour in %s, judged by the checker’s own models', (_, hotter, coolLitres, bound) => {
  const one = planned(hotter, coolLitres);
  const latest = one.plan.delivery.trips.latestLeaveMinute;
  const last = one.plan.delivery.trips.vehicle.map((vehicle, trip) => {
    const { trips } = one.plan.delivery;
    return !trips.vehicle.some(
      (other, i) =>
        other === vehicle && trips.date[i] === trips.date[trip] && (trips.trip[i] ?? 0) > (trips.trip[trip] ?? 0),
    );
  });

  it('is never before the hour planned', () => {
    expect(latest.length).toBeGreaterThan(0);
    for (const [trip, minute] of latest.entries()) {
      expect(minute).toBeGreaterThanOrEqual(one.plan.delivery.trips.leaveMinute[trip] ?? 0);
    }
  });

  it('breaks no rule of hours or heat', () => {
    latest.forEach((minute, trip) => {
      if (last[trip]) expect(faults(one, trip, minute), String(trip)).toEqual([]);
    });
  });

  it('is the last: half an hour later one is broken', () => {
    const broken = latest.map((minute, trip) => faults(one, trip, minute + 30));
    for (const [trip, codes] of broken.entries()) expect(codes, String(trip)).not.toEqual([]);
    // Each case is bounded by what it was made for.
    expect(broken.some((codes) => codes.includes(bound))).toBe(true);
  });
});
