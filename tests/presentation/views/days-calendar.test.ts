import { describe, expect, it } from 'vitest';
import { deliveriesCsv } from '../../../src/presentation/exports/deliveries-csv.ts';
import { calendarColumns, planningDays, shownDay } from '../../../src/presentation/views/days-axis.ts';
import { zoneCalendar } from '../../../src/presentation/views/days-calendar.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const calendar = zoneCalendar(plan, scenario);

/** Rows of the deliveries table: what the calendar is held against. */
const delivered = deliveriesCsv(plan)
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([date = '', , , , community = '', consignment = '']) => ({ date, community, consignment }));

describe('the days of a plan', () => {
  it('are the planning period, with Sundays as gaps', () => {
    const days = planningDays(plan);
    expect([days[0]?.iso, days.at(-1)?.iso]).toEqual(['2026-11-16', '2026-12-12']);
    // 16 November 2026 is a Monday.
    expect(days[0]?.weekday).toBe(0);
    expect(days.filter(({ works }) => !works).map(({ iso }) => iso)).toEqual([
      '2026-11-22',
      '2026-11-29',
      '2026-12-06',
    ]);
  });

  it('leave one gap where several days stand idle', () => {
    const days = planningDays(plan).map((day, i) => ({ ...day, works: ![5, 6, 7].includes(i) }));
    const columns = calendarColumns(days);
    expect(columns.filter(({ kind }) => kind === 'gap').map(({ day }) => day.offset)).toEqual([7]);
    expect(columns).toHaveLength(days.length - 2);
  });

  it('show the day asked for only where it may be driven', () => {
    expect(shownDay(plan, '2026-12-03')).toBe('2026-12-03');
    const first = [...plan.delivery.trips.date].sort()[0];
    for (const asked of ['2026-11-22', '2027-01-01', null]) expect(shownDay(plan, asked)).toBe(first);
  });
});

describe('zones by days', () => {
  it('frame the days on which the deliveries table names the zone, inoculant before seed', () => {
    for (const { zoneId, cells } of calendar.rows) {
      const inZone = new Set(scenario.communities.filter((one) => one.zoneId === zoneId).map(({ id }) => id));
      calendar.days.forEach(({ iso }, day) => {
        const rows = delivered.filter(({ date, community }) => date === iso && inZone.has(community));
        const hasInoculant = rows.some(({ consignment }) => !consignment.includes('/dry/'));
        expect(cells[day]?.handed, `${zoneId} ${iso}`).toBe(
          hasInoculant ? 'inoculant' : rows.length > 0 ? 'dry' : null,
        );
      });
    }
  });

  it('are worth no more on the days chosen than all of it on the best day of each load', () => {
    const { consignments } = plan.allocation;
    const most = consignments.hectares.reduce(
      (sum, ha, c) =>
        consignments.group[c] === 'dry' ? sum : sum + ha * Math.max(...(consignments.reachByDay[c] ?? [])),
      0,
    );
    const chosen = calendar.rows.reduce((sum, row) => sum + row.chosenHa, 0);
    expect(chosen).toBeGreaterThan(0.8 * most);
    expect(chosen).toBeLessThanOrEqual(most + 1e-6);
  });

  it('say hectares and share by hand for a curve of our own', () => {
    const days = plan.season.workday.length;
    const half = Array.from({ length: days }, (_, day) => (day === 3 ? 0.8 : day === 4 ? 0.4 : 0.76));
    const { consignments } = plan.allocation;
    const own = {
      ...plan,
      allocation: {
        ...plan.allocation,
        consignments: { ...consignments, reachByDay: consignments.community.map(() => half) },
      },
    };
    for (const { cells } of zoneCalendar(own, scenario).rows) {
      expect([3, 4, 5].map((day) => cells[day]?.share)).toEqual([1, expect.closeTo(0.5, 9), expect.closeTo(0.95, 9)]);
      expect([3, 4].map((day) => cells[day]?.aliveClass)).toEqual([6, 2]);
    }
    const hectares = zoneCalendar(own, scenario).rows.reduce((sum, { cells }) => sum + (cells[3]?.hectares ?? 0), 0);
    const inoculated = consignments.hectares.reduce(
      (sum, ha, c) => (consignments.group[c] === 'dry' ? sum : sum + ha),
      0,
    );
    expect(hectares).toBeCloseTo(0.8 * inoculated, 6);
  });
});
