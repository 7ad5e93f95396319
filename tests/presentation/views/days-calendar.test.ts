import { describe, expect, it } from 'vitest';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import { calendarOf } from '../../../src/engine/index.ts';
import { deliveriesCsv } from '../../../src/presentation/exports/deliveries-csv.ts';
import { calendarColumns, planningDays, shownDay } from '../../../src/presentation/views/days-axis.ts';
import { zoneCalendar } from '../../../src/presentation/views/days-calendar.ts';
import { zoneDayWorth } from '../../../src/presentation/views/days-worth.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario, decisions } = stockCase('demo-district');
const { overlay } = await loadPlanningTools();
const worth = calendarOf(scenario, decisions, null, overlay);
const calendar = zoneCalendar(plan, scenario, worth);

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

  it('are worth no more on the days chosen than all of it on each zone’s best day', () => {
    for (const { chosenHa, cells } of calendar.rows) {
      const most = Math.max(...cells.map(({ hectares }) => hectares));
      expect(chosenHa).toBeLessThanOrEqual(most + 1e-6);
      expect(chosenHa).toBeGreaterThan(0.8 * most);
    }
  });

  it('say share and hectares by hand for a calendar of our own', () => {
    const own = {
      ...worth,
      value: worth.value.map((_, cell) => ({ 3: 0.8, 4: 0.4 })[cell % worth.planningDays] ?? 0.76),
    };
    const { rows } = zoneCalendar(plan, scenario, own);
    for (const { cells } of rows) {
      expect([3, 4, 5].map((day) => cells[day]?.share)).toEqual([1, expect.closeTo(0.5, 9), expect.closeTo(0.95, 9)]);
      expect([3, 4, 5].map((day) => cells[day]?.aliveClass)).toEqual([6, 2, 5]);
    }
    const hectares = rows.reduce((sum, { cells }) => sum + (cells[3]?.hectares ?? 0), 0);
    const { consignments } = plan.allocation;
    const inoculated = consignments.hectares.reduce(
      (sum, ha, c) => (consignments.group[c] === 'dry' ? sum : sum + ha),
      0,
    );
    expect(hectares).toBeCloseTo(0.8 * inoculated, 6);
  });

  it('are bare, deliveries still framed, while the days are being weighed', () => {
    const { rows } = zoneCalendar(plan, scenario, null);
    expect(rows.every(({ cells }) => cells.every(({ share, kept }) => share === null && kept === null))).toBe(true);
    expect(rows.map(({ cells }) => cells.map(({ handed }) => handed))).toEqual(
      calendar.rows.map(({ cells }) => cells.map(({ handed }) => handed)),
    );
  });
});

describe('one zone on one day', () => {
  it('keeps and loses the whole of its value, part by part', () => {
    scenario.zones.forEach((_, zone) => {
      for (const day of [0, 9, 20]) {
        const told = zoneDayWorth(worth, zone, day);
        const lost = (told?.parts ?? []).reduce((sum, { share }) => sum + share, 0);
        // Parts below half a thousandth are left out.
        expect((told?.kept ?? 0) + lost).toBeCloseTo(1, 2);
        expect(told?.best?.kept).toBeGreaterThanOrEqual((told?.kept ?? 0) - 1e-12);
        expect(told?.latestLeaveMinute ?? 0).toBeGreaterThanOrEqual(told?.leaveMinute ?? 0);
      }
    });
  });

  it('is not told for a day outside the plan', () => {
    expect(zoneDayWorth(worth, 0, -1)).toBeNull();
    expect(zoneDayWorth(worth, 0, worth.planningDays)).toBeNull();
  });
});
