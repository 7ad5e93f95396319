import { describe, expect, it } from 'vitest';
import { shortfallsCsv } from '../../src/presentation/exports/shortfalls-csv.ts';
import { localNumber, wholePercent } from '../../src/presentation/local-number.ts';
import { recordSmallPlan } from '../engine/record/record-small-plan.ts';

const english = { language: { code: 'en', name: 'English' } };

describe('numbers on the page', () => {
  it('parts thousands by a no-break space, in four digits too (ISO 80000-1)', () => {
    expect(localNumber(1040, english)).toBe('1\u00a0040');
    expect(localNumber(1234567.85, english, 1)).toBe('1\u00a0234\u00a0567.9');
    expect(localNumber(-0.04, english, 1)).toBe('0.0');
  });

  it("writes the language's own decimal sign", () => {
    expect(localNumber(1040.5, { language: { code: 'pt-PT', name: 'Português' } }, 1)).toBe('1\u00a0040,5');
  });

  it('never says a share to be more than it is', () => {
    expect([0.9999, 1, 0.29, 0.7].map(wholePercent)).toEqual([99, 100, 29, 70]);
  });
});

describe('shortfalls as a table', () => {
  it('has one row for each, with ids', () => {
    const plan = recordSmallPlan();
    const lines = shortfallsCsv(plan).trimEnd().split('\r\n');
    expect(lines[0]).toBe('community_id,crop,commodity,short_kg,hectares,reason,product_id');
    expect(lines).toHaveLength(1 + plan.allocation.shortfalls.shareRow.length);
  });
});
