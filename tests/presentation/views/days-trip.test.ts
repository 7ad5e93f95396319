import { describe, expect, it } from 'vitest';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import { askTripAtHour } from '../../../src/engine/index.ts';
import { packsLine, tripQuestion } from '../../../src/presentation/views/days-trip.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario, decisions } = stockCase('demo-district');
const { overlay } = await loadPlanningTools();
const { trips, stops, curves } = plan.delivery;
const cold = trips.trip.flatMap((_, trip) => ((curves[trip]?.minute.length ?? 0) > 0 ? [trip] : [])).slice(0, 12);
const ask = (trip: number, minute: number) =>
  askTripAtHour(scenario, decisions, null, overlay, tripQuestion(plan, scenario, trip, minute));

describe('a planned trip left at another hour', () => {
  it('is the trip as planned where the hour is the planned one', () => {
    expect(cold.length).toBeGreaterThan(3);
    for (const trip of cold) {
      const told = ask(trip, trips.leaveMinute[trip] ?? 0);
      expect(told.returnMinute).toBeCloseTo(trips.returnMinute[trip] ?? 0, 1);
      const hottest = Math.max(...stops.trip.flatMap((of, row) => (of === trip ? [stops.packMaxC[row] ?? -99] : [])));
      expect(told.packMaxC).toBeCloseTo(hottest, 1);
      const last = packsLine(told).at(-1);
      expect(last?.[0]).toBeCloseTo(curves[trip]?.minute.at(-1) ?? 0, 1);
      expect(last?.[1]).toBeCloseTo(curves[trip]?.packC.at(-1) ?? 0, 1);
    }
  });

  it('stays under 40 °C in the hot band, and comes home, at the latest hour told', () => {
    for (const trip of cold) {
      const latest = trips.latestLeaveMinute[trip] ?? 0;
      expect(latest).toBeGreaterThanOrEqual(trips.leaveMinute[trip] ?? 0);
      expect(ask(trip, latest).hotBandMaxC).toBeLessThan(40);
    }
  });
});
