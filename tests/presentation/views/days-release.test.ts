import { describe, expect, it } from 'vitest';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import { calendarOf } from '../../../src/engine/index.ts';
import { releaseTable } from '../../../src/presentation/season-table.ts';
import { releaseView } from '../../../src/presentation/views/days-release.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario, decisions } = stockCase('demo-district');
const { overlay } = await loadPlanningTools();
const held = (releaseMmInThreeDays: number) => {
  const asked = { ...scenario, policy: { ...scenario.policy, releaseMmInThreeDays } };
  return { asked, worth: calendarOf(asked, decisions, null, overlay) };
};

describe('zones held until it rains', () => {
  it('let go on the first of the days measured on which so much had fallen in three, counted from the file', () => {
    const { asked, worth } = held(20);
    const { waiting, released } = releaseView(plan, asked, worth);
    expect(waiting).toEqual([]);
    expect(released.length).toBeGreaterThan(5);
    for (const { zoneId, firedOn } of released) {
      const zone = scenario.zones.findIndex(({ id }) => id === zoneId);
      const id = plan.season.stations[plan.season.zoneStation[zone] ?? -1];
      const station = scenario.weather.find((one) => one.id === id);
      const rain = (day: number) => station?.rainMm[station.days.indexOf(day)] || 0;
      const sums = Array.from({ length: 29 }, (_, i) => scenario.asOf - 28 + i).filter(
        (day) => rain(day) + rain(day - 1) + rain(day - 2) >= 20,
      );
      const day = Date.parse(firedOn ?? '') / 86_400_000;
      // The season's rains are looked for from 15 October on, which is 28 days before.
      expect(day).toBe(sums[0]);
    }
  });

  it('shows what waits where, and that it is all the inoculant still to be sent', () => {
    const { asked, worth } = held(75);
    const { waiting, released, mm } = releaseView(plan, asked, worth);
    expect(mm).toBe(75);
    expect(waiting.length).toBeGreaterThan(3);
    const kinds = new Map(scenario.products.map(({ id, kind }) => [id, kind]));
    const all = plan.allocation.grants.lot.reduce((sum, lot, i) => {
      const isLiving = kinds.get(scenario.lots[lot]?.productId ?? '') === 'inoculant';
      return isLiving ? sum + (plan.allocation.grants.packs[i] ?? 0) : sum;
    }, 0);
    expect([...waiting, ...released].reduce((sum, { packs }) => sum + packs, 0)).toBe(all);
    for (const zone of waiting) {
      expect(zone.depots.length).toBeGreaterThan(0);
      expect(zone.firedOn).toBeNull();
      expect(zone.tooLate).toBeGreaterThanOrEqual(0);
    }
  });

  it('stands in the text of the season, zone by zone', () => {
    const { asked, worth } = held(75);
    const text = releaseTable(asked, worth);
    expect(text).toContain('Held until 75 mm fall in three days; packs go out 2 days after.');
    expect(text).toMatch(/by 20\d\d-\d\d-\d\d \(|in no season/);
    expect(releaseTable(scenario, held(20).worth)).toMatch(/let go 2026-11-\d\d/);
  });
});
