import { describe, expect, it } from 'vitest';
import { amountsIn, drawsOf } from '../../../src/presentation/views/coverage-amounts.ts';
import { lossBudget, percentLost } from '../../../src/presentation/views/coverage-losses.ts';
import { coverageMethod } from '../../../src/presentation/views/coverage-method.ts';
import { coverageMoney } from '../../../src/presentation/views/coverage-money.ts';
import { coverageSeasons, scaleSteps } from '../../../src/presentation/views/coverage-seasons.ts';
import { coverageFigures, placeOnScale } from '../../../src/presentation/views/coverage-view.ts';
import { communityShares, coverageZones } from '../../../src/presentation/views/coverage-zones.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { recordSmallPlan } from '../../engine/record/record-small-plan.ts';
import { smallPlan } from '../../engine/stages/7-outcomes/small-plan.ts';

const windows = [
  [5, 26],
  [Number.NaN, Number.NaN],
  [-20, 1],
] as const;
const plan = recordSmallPlan({ windows });
const { scenario } = smallPlan({ windows });
const mainSeason = { name: 'main', from: { month: 11, day: 1 }, to: { month: 1, day: 31 } };
const acrossNewYear = { ...scenario, seasons: [mainSeason] };

describe('the figures of the coverage view', () => {
  const view = coverageFigures(plan, scenario);

  it('are those of the plan’s headline', () => {
    const { headline } = plan.outcomes;
    expect(view.steps).toEqual({ planned: 10, expected: headline.reachedHa.p50, signedFor: null, sown: null });
    expect(view.programmeNitrogen.middle).toBe(headline.programmeNitrogenKg.p50);
    expect(view.womenPercent).toBeCloseTo(62.5, 4);
  });

  it('put all nitrogen and its parts on one scale that holds nought', () => {
    const scales = [view.programmeNitrogen, view.allNitrogen, view.inoculation];
    expect(new Set(scales.map(({ scaleFrom, scaleTo }) => `${scaleFrom} ${scaleTo}`)).size).toBe(1);
    for (const range of scales) {
      expect(placeOnScale(0, range)).toBeGreaterThanOrEqual(0);
      expect(placeOnScale(range.low, range)).toBeGreaterThanOrEqual(-1e-9);
      expect(placeOnScale(range.high, range)).toBeLessThanOrEqual(100 + 1e-9);
    }
  });

  it('say that nothing can be expected where no season can be played', () => {
    expect(coverageFigures(recordSmallPlan({ windows: [] }), scenario).playable).toBe(false);
  });
});

describe('past seasons', () => {
  const view = coverageSeasons(plan, acrossNewYear);

  it('name the worst by its season, with what cost most', () => {
    // 4 ha inoculated; nothing is reached without onset, nor where the window had closed.
    expect(view.seasons.map(({ ha, lostHa, cost }) => [ha, lostHa, cost])).toEqual([
      [4, 0, 'little'],
      [0, 4, 'no-onset'],
      [0, 4, 'late'],
    ]);
    // The search for rains begins in November and ends in January.
    expect(view.worst).toMatchObject({ label: '2001/02', ha: 0, cost: 'no-onset', costHa: 4 });
    expect(view.middleHa).toBe(0);
    expect([...view.costs].sort()).toEqual(['late', 'little', 'no-onset']);
  });

  it('have no worst where all are alike', () => {
    expect(coverageSeasons(recordSmallPlan({ windows: [[5, 26]] }), scenario).worst).toBeNull();
  });

  it('are drawn from nought in at most six round steps', () => {
    expect(scaleSteps(2166)).toEqual({ step: 500, to: 2500 });
    expect(scaleSteps(30)).toEqual({ step: 10, to: 30 });
    for (const most of [0, 0.3, 7, 99, 1234, 98_765]) expect(scaleSteps(most).to).toBeGreaterThanOrEqual(most);
  });
});

describe('zones', () => {
  it('stand from planned to expected, with what was supplied between them', () => {
    const { rows, scaleHa, cutOff } = coverageZones(plan, scenario);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ id: 'Z1', name: 'East ridge', plannedHa: 10, signedForHa: null, cutOff: 0 });
    expect(rows[0]?.suppliedHa).toBeCloseTo(4, 5);
    expect(rows[0]?.expected).toEqual(plan.outcomes.zones.reachedRange[0]);
    expect(scaleHa).toBe(10);
    expect(cutOff).toBe(0);
  });

  it('name the communities that get no inoculant', () => {
    const without = recordSmallPlan({ windows, inoculantServed: false });
    expect(coverageZones(without, scenario)).toMatchObject({ cutOff: 1, rows: [{ cutOff: 1 }] });
    expect(communityShares(without)).toEqual([0]);
  });
});

describe('losses', () => {
  it('are told in log10 and percent: half a log is 68 percent', () => {
    expect(percentLost(0.5)).toBeCloseTo(68.377, 3);
    expect(percentLost(0)).toBe(0);
    const budget = lossBudget(plan, scenario);
    expect(budget?.most).toBe('seed');
    const sum = budget?.steps.reduce((all, { log10 }) => all + log10, 0) ?? Number.NaN;
    expect(budget?.log10).toBeCloseTo(sum, 12);
    // 7.5 * 10^5 on a seed before any loss (agronomy sheet, row 10, derived).
    expect(Math.log10(budget?.perSeed ?? 0) + sum).toBeCloseTo(Math.log10(7.5e5), 4);
  });

  it('are not told where no inoculant is handed over', () => {
    expect(lossBudget(recordSmallPlan({ inoculantServed: false }), scenario)).toBeNull();
  });
});

describe('money', () => {
  it('is told as the plan has it, and the residual benefit alone is priced', () => {
    const one = recordSmallPlan({ windows: [[5, 26]] });
    const view = coverageMoney(one, scenario);
    expect(view).toMatchObject({ goods: 18 * 400 + 12 * 60, delivery: 211, productsWithoutPrice: [] });
    expect(view.residual).toMatchObject({ leastKgPerHa: 20, mostKgPerHa: 40, worth: { least: 240, most: 480 } });
  });

  it('names the products whose price is missing', () => {
    const products = scenario.products.map((product) =>
      product.kind === 'inoculant' ? { ...product, pricePerPack: null } : product,
    );
    const { headline } = plan.outcomes;
    const unpricedHeadline = { ...headline, goodsCost: null, costPerHectare: null };
    const unpriced = { ...plan, outcomes: { ...plan.outcomes, headline: unpricedHeadline } };
    const view = coverageMoney(unpriced, { ...scenario, products });
    expect(view.perHectare).toBeNull();
    expect(view.productsWithoutPrice).toEqual(['P-INO']);
  });
});

describe('how well the inputs are known', () => {
  const view = coverageMethod(plan);

  it('counts each input once, by status', () => {
    expect(view.counts.reduce((sum, { count }) => sum + count, 0)).toBe(view.inputs);
    expect(view.counts.map(({ status }) => status)).not.toContain('read-2');
    const ours = view.counts.filter(({ status }) => status === 'assumed' || status === 'memory');
    expect(ours.reduce((sum, { count }) => sum + count, 0)).toBe(view.ours.length);
    expect(view.ours.length).toBeGreaterThan(3);
  });

  it('tells how many draws stand behind the ranges', () => {
    expect(drawsOf(plan)).toBe(200);
  });
});

describe('amounts', () => {
  const { hectares, tonnes, money, amount } = amountsIn(english);

  it('show no more digits than are known, and never break a line within a figure', () => {
    expect(hectares(1578.2)).toBe('1\u00a0578');
    expect(hectares(94.52)).toBe('94.5');
    expect(tonnes(177_218)).toBe('177');
    expect(tonnes(5_130)).toBe('5.1');
    expect(tonnes(72)).toBe('0.07');
    expect(amount(0)).toBe('0');
  });

  it('give the currency’s own decimals to small sums', () => {
    expect(money(6.55, 'USD')).toBe('USD\u00a06.55');
    expect(money(219_799.5, 'USD')).toBe('USD\u00a0219\u00a0800');
    // ISO 4217: the Rwandan franc has none.
    expect(money(6.55, 'RWF')).toBe('RWF\u00a07');
  });
});
