import { describe, expect, it } from 'vitest';
import {
  civilFromDay,
  clockText,
  type DayNumber,
  dayFromCivil,
  dayOfYear,
  isoDate,
  isoWeekday,
  parseClock,
  parseIsoDate,
  parseMonthDay,
} from '../../../src/engine/index.ts';

describe('the civil calendar, against the platform (ECMA-262 time values are days of 86,400 s since 1970-01-01)', () => {
  const DAY_MS = 86_400_000;

  it('agrees on every day from 1890 to 2110', () => {
    const first = Date.UTC(1890, 0, 1) / DAY_MS;
    const last = Date.UTC(2110, 0, 1) / DAY_MS;
    for (let day = first; day <= last; day++) {
      const platform = new Date(day * DAY_MS);
      const text = platform.toISOString().slice(0, 10);
      expect(isoDate(day as DayNumber)).toBe(text);
      expect(parseIsoDate(text)).toBe(day);
      expect(isoWeekday(day as DayNumber)).toBe(platform.getUTCDay() || 7);
    }
  });

  it('counts the days of the year (FAO-56 example 8: 3 September is 246; example 18: 6 July is 187)', () => {
    expect(dayOfYear(dayFromCivil(2001, 9, 3))).toBe(246);
    expect(dayOfYear(dayFromCivil(2001, 7, 6))).toBe(187);
    expect(dayOfYear(dayFromCivil(2024, 12, 31))).toBe(366);
    expect(civilFromDay(dayFromCivil(2000, 2, 29))).toEqual({ year: 2000, month: 2, day: 29 });
  });

  it.each(['2026-13-01', '2026-02-29', '26-01-01', '2026/01/01', '01-02-2026', '2026-1-1', ''])(
    'refuses %s',
    (text) => {
      expect(parseIsoDate(text)).toBeNull();
    },
  );

  it('reads clocks and recurring days', () => {
    expect([parseClock('07:30'), parseClock('24:00'), parseClock('24:01'), parseClock('7.30')]).toEqual([
      450,
      1440,
      null,
      null,
    ]);
    expect([parseMonthDay('02-29'), parseMonthDay('02-30')]).toEqual([{ month: 2, day: 29 }, null]);
    expect(clockText(450.9)).toBe('07:30');
  });
});
