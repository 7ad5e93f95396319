import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ONSET_DEFINITIONS, type OnsetDefinition } from '../../../src/engine/reference/onset-definitions.ts';
import { detectOnset, detectSeasonEnd } from '../../../src/engine/science/onset.ts';

/** The rule as a sentence, for a whole known series: the first window that qualifies and is not followed by a dry run. */
function onsetBySearch(rain: readonly number[], rule: OnsetDefinition): number {
  const ends = [...rain.keys()].filter((end) => end >= rule.windowDays - 1 && end + rule.searchDays < rain.length);
  for (const end of ends) {
    const window = rain.slice(end - rule.windowDays + 1, end + 1);
    const total = window.reduce((sum, mm) => sum + mm, 0);
    const enough = rule.totalRule === 'at-least' ? total >= rule.totalMm : total > rule.totalMm;
    if (!enough || window.filter((mm) => mm > rule.wetDayMm).length < rule.minWetDays) continue;
    const after = rain.slice(end + 1, end + 1 + rule.searchDays);
    const letters = after.map((mm) => (mm > rule.wetDayMm ? 'w' : 'd')).join('');
    if (rule.dryRunDays > 0 && letters.includes('d'.repeat(rule.dryRunDays))) continue;
    return rule.dateConvention === 'window-end'
      ? end
      : rain.findIndex((mm, i) => i > end - rule.windowDays && mm > rule.wetDayMm);
  }
  return Number.NaN;
}

const rainfall = fc.array(
  fc.oneof(
    { weight: 2, arbitrary: fc.constant(0) },
    fc.integer({ min: 0, max: 300 }).map((n) => n / 10),
  ),
  {
    minLength: 60,
    maxLength: 90,
  },
);

describe('onset of planting rains', () => {
  it.each(ONSET_DEFINITIONS.map((rule) => [rule.name, rule] as const))('%s does what its sentence says', (_, rule) => {
    fc.assert(
      fc.property(rainfall, (rain) => {
        const last = rain.length - 1;
        const found = detectOnset(rain, 0, last - rule.searchDays, last, rule);
        expect(found.day).toBe(onsetBySearch(rain, rule));
        expect(found.status).toBe(Number.isNaN(found.day) ? 'none' : 'confirmed');
      }),
    );
  });
  it('what is confirmed stays, and what is a false start stays, however the season goes on', () => {
    const rule = ONSET_DEFINITIONS[0] as OnsetDefinition;
    fc.assert(
      fc.property(rainfall, fc.integer({ min: 5, max: 59 }), (rain, known) => {
        const sofar = detectOnset(rain, 0, known, known, rule);
        const later = detectOnset(rain, 0, rain.length - 1, rain.length - 1, rule);
        if (sofar.status === 'confirmed') expect(later).toEqual(sofar);
        for (const day of sofar.falseStarts) expect(later.day).not.toBe(day);
      }),
    );
  });
  it('rain that was not recorded neither makes a start nor breaks a dry run', () => {
    const rule = ONSET_DEFINITIONS[0] as OnsetDefinition;
    fc.assert(
      fc.property(rainfall, fc.nat({ max: 59 }), (rain, missing) => {
        const gap = rain.with(missing, Number.NaN);
        const { day, windowEnd } = detectOnset(gap, 0, 59, 59, rule);
        if (!Number.isNaN(day)) expect(missing >= windowEnd - 2 && missing <= windowEnd).toBe(false);
      }),
    );
    const dry = [25, 0, 0, ...Array(6).fill(0), Number.NaN, ...Array(30).fill(5)];
    expect(detectOnset(dry, 0, 2, 39, rule).falseStarts).toEqual([0]);
  });
  it('the same first wet day, spoiled with one window and holding with the next, is no false start', () => {
    // 20 mm on day 2: days 0 to 2, 1 to 3 and 2 to 4 all hold it. Dry from day 3 to 9 is a run of seven after the first
    // window; from day 4, six after the second.
    const rain = [0, 0, 20, 0, 0, 0, 0, 0, 0, 0, ...Array(30).fill(5)];
    const rule = ONSET_DEFINITIONS[0] as OnsetDefinition;
    expect(detectOnset(rain, 0, 20, 39, rule)).toMatchObject({
      status: 'confirmed',
      day: 2,
      windowEnd: 3,
      falseStarts: [],
    });
  });
});

describe('end of the season', () => {
  it('15 mm last three days at 5 mm a day', () => {
    expect(detectSeasonEnd([15, 0, 0, 0, 0], 0, 0, 4)).toBe(2);
  });
  it('no earlier than the earliest day', () => expect(detectSeasonEnd([0, 0, 0, 0, 0], 0, 3, 4)).toBe(3));
  it('none where the rains go on', () => expect(detectSeasonEnd(Array(20).fill(6), 0, 5, 19)).toBeNaN());
});
