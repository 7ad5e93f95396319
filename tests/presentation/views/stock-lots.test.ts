import { describe, expect, it } from 'vitest';
import { lotsView } from '../../../src/presentation/views/stock-lots.ts';
import { plainTold } from '../../../src/presentation/views/stock-told.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { stockCase } from './stock-case.ts';

const { plan, scenario, stock } = stockCase('demo-district');
const few = lotsView(plan, scenario, stock.shortages, false, english);
const all = lotsView(plan, scenario, stock.shortages, true, english);
const day = (iso: string) => Date.parse(iso) / 864e5;

describe('lots along time', () => {
  it('shows those of what runs out first, and says how many there are', () => {
    expect(few.count).toBe(`7 of ${scenario.lots.length} lots`);
    expect(few.rows.slice(0, 4).map(({ goods }) => goods)).toEqual(Array(4).fill('Soybean inoculant'));
    expect(few.title).toBe('Lots: soybean inoculant and cowpea seed');
    expect(all.rows).toHaveLength(scenario.lots.length);
    expect(new Set(all.rows.map(({ id }) => id)).size).toBe(scenario.lots.length);
  });

  it('hatches what is kept back and only that, each with its reason', () => {
    const kept = all.rows.filter((row) => row.kept !== null).map(({ id }) => id);
    expect(kept.sort()).toEqual(
      plan.ids.lots.filter((_, i) => (plan.allocation.lots.reasons[i] ?? []).length > 0).sort(),
    );
    expect(all.rows.find(({ id }) => id === 'SB-0671')?.kept).toBe(english.reasons.LOT_REASON_WORDING['on-hold']);
  });

  it('flags the lot that may expire before it is sown, with the chance the plan gives', () => {
    const soon = all.rows.filter((row) => row.soon !== null);
    expect(soon.map(({ id }) => id)).toEqual(['SB-0688']);
    const chance = plan.allocation.lots.chanceSownBeforeExpiry[plan.ids.lots.indexOf('SB-0688')] ?? 0;
    expect(plainTold(soon[0]?.soon ?? { text: '', figures: [] })).toBe(
      `Expires 18\u00a0Dec: chance of being sown before ${Math.floor(100 * chance)}\u00a0%.`,
    );
  });

  it('places days in proportion, today before the expiry dates, the window from the earliest P20 to the latest P80', () => {
    const row = (id: string) => few.rows.find((one) => one.id === id)?.to ?? Number.NaN;
    const perDay = (row('SB-0699') - row('SB-0688')) / (day('2027-03-31') - day('2026-12-18'));
    expect(row('SB-0688') - few.today).toBeCloseTo((day('2026-12-18') - day('2026-11-12')) * perDay, 9);
    const { windows } = plan.season;
    const wanted = windows.crop.flatMap((crop, i) => (crop === 0 || crop === 2 ? [i] : []));
    const last = Math.max(...wanted.map((i) => day(windows.firstP80[i] ?? '1970-01-01')));
    expect((few.sowing?.to ?? 0) - few.today).toBeCloseTo((last - day('2026-11-12')) * perDay, 9);
    expect(few.months.find(({ year }) => year !== null)).toMatchObject({ label: 'Jan', year: '2027' });
  });

  it('makes the largest lot shown the thickest, by packs', () => {
    const weights = few.rows.map(({ weight }) => weight);
    expect(Math.max(...weights)).toBe(1);
    expect(few.rows.find(({ id }) => id === 'SB-0688')?.weight).toBeCloseTo(410 / 1299, 9);
  });
});
