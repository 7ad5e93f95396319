import { describe, expect, it } from 'vitest';
import type { RankedUnknowns, ReplayedPlan } from '../../../src/engine/index.ts';
import { comparedPlans, rankingView, worstSeasonTexts } from '../../../src/presentation/views/coverage-replay.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { stockCase } from './stock-case.ts';

const { scenario } = stockCase('tiny-district');

/** A plan of 100 ha that keeps so many of them in each season from 2001 on, and loses the rest to late goods. */
function played(reached: readonly number[]): ReplayedPlan {
  return {
    rule: 'as-printed',
    inoculatedHa: 100,
    seasons: reached.map((reachedHa, i) => ({
      year: 2001 + i,
      reachedHa,
      valueKept: reachedHa / 100,
      programmeNitrogenKg: 10 * reachedHa,
      lostHa: { noOnset: 0, late: 100 - reachedHa, hot: 0, waiting: 0, weak: 0 },
      cost: reachedHa < 95 ? 'late' : 'little',
      tripsMoved: i,
      daysMoved: 2 * i,
      tripsNever: 0,
      stopsOnHold: 0,
      zoneLosses: reachedHa < 100 ? [{ zone: 0, cause: 'late', hectares: 100 - reachedHa }] : [],
    })),
  };
}

describe('the worst seasons', () => {
  it('are three, fewest hectares first, each with what was lost, where, and what waited', () => {
    const texts = worstSeasonTexts({ printed: played([90, 70, 100, 80]), zoneNames: ['Esk', null] }, scenario, english);
    expect(texts).toHaveLength(3);
    expect(texts[0]).toContain('70.0 of 100.0 ha inoculated would have been sown in time');
    expect(texts[0]).toContain('The goods for 30.0 ha came after the sowing window, most of it in Esk (30.0 ha)');
    expect(texts[0]).toContain('1 trip waited for the road, 2 days in all');
    expect(texts[1]).toContain('80.0 of 100.0');
    for (const text of texts) expect(text).not.toMatch(/\breached\b|promise|will be/);
  });
});

describe('two plans', () => {
  it('differ by what this one has beyond the other', () => {
    const { seasons, more, fewer, same, meanHa, scaleHa } = comparedPlans(
      played([90, 70, 100]),
      played([80, 90, 100]),
      scenario,
    );
    expect(seasons.map(({ thisHa, otherHa, moreHa }) => [thisHa, otherHa, moreHa])).toEqual([
      [90, 80, 10],
      [70, 90, -20],
      [100, 100, 0],
    ]);
    expect([more, fewer, same]).toEqual([1, 1, 1]);
    expect(meanHa).toBeCloseTo(-10 / 3, 12);
    expect(scaleHa).toBe(20);
  });
});

describe('which unknowns matter', () => {
  const ranked: RankedUnknowns = {
    programmeNitrogenKg: [
      { unknown: 'nitrogenMethod', first: 0.6, total: 0.63 },
      { unknown: 'yield', first: 0.3, total: 0.31 },
      { unknown: 'delays', first: -0.004, total: 0.009 },
    ],
    reachedHa: [
      { unknown: 'survivalOnSeed', first: 0.4, total: 0.45 },
      { unknown: 'delays', first: 0.35, total: 0.4 },
    ],
  };

  it('names the one that makes half of the spread or more, and sets aside what is under a hundredth', () => {
    const { rows, little, most } = rankingView(ranked, 'programmeNitrogenKg');
    expect(rows.map(({ unknown }) => unknown)).toEqual(['nitrogenMethod', 'yield']);
    expect(little).toEqual(['delays']);
    expect(most).toEqual({ unknowns: ['nitrogenMethod'], percent: 60 });
  });

  it('names two where none makes half, and nothing where nothing varies', () => {
    expect(rankingView(ranked, 'reachedHa').most).toEqual({ unknowns: ['survivalOnSeed', 'delays'], percent: 75 });
    const still = rankingView({ reachedHa: [{ unknown: 'delays', first: 0, total: 0 }] }, 'reachedHa');
    expect(still).toEqual({ rows: [], little: ['delays'], most: { unknowns: [], percent: 0 } });
  });
});
