import { describe, expect, it } from 'vitest';
import type { Handover } from '../../../../src/engine/index.ts';
import { dayNumber } from '../../../../src/engine/index.ts';
import { lossRate } from '../../../../src/engine/stages/7-outcomes/draw-parameters.ts';
import { countHandedOver } from '../../../../src/engine/stages/7-outcomes/handed-over.ts';
import { playPastSeasons } from '../../../../src/engine/stages/7-outcomes/past-seasons.ts';
import { makePlayResult } from '../../../../src/engine/stages/7-outcomes/play-result.ts';
import { playSeason } from '../../../../src/engine/stages/7-outcomes/play-season.ts';
import { preparePlay } from '../../../../src/engine/stages/7-outcomes/prepare-play.ts';
import { weighOutcomes } from '../../../../src/engine/stages/7-outcomes/weigh-outcomes.ts';
import { type SmallPlanChange, smallPlan } from './small-plan.ts';

function seasonsOf(change: SmallPlanChange) {
  const plan = smallPlan(change);
  return playPastSeasons(
    preparePlay(plan),
    plan.season.members.map(({ year }) => year),
  );
}

function headlineOf(change: SmallPlanChange = {}) {
  const { scenario, places, season, needs, allocation, delivery } = smallPlan(change);
  return weighOutcomes(scenario, places, season, needs, allocation, delivery).result.headline;
}

describe('what cost each past season most', () => {
  // The small plan inoculates 4 ha; its packs are handed over on day 3 and can be sown from day 4 on.
  it('is nothing, no onset at all, or a window that closed before the goods', () => {
    const seasons = seasonsOf({
      windows: [
        [5, 26],
        [Number.NaN, Number.NaN],
        [-20, 1],
      ],
    });
    expect(seasons.cost).toEqual(['little', 'no-onset', 'late']);
    expect([...seasons.reachedHa]).toEqual([4, 0, 0]);
    expect([...seasons.noOnsetHa]).toEqual([0, 4, 0]);
    expect([...seasons.lateHa]).toEqual([0, 0, 4]);
  });

  it('is the wait where packs were above the floor when handed over and are below it at sowing', () => {
    // 10^5.35 on a seed when handed over; a room at 30 °C takes a log in 100.63 days (agronomy sheet, row 15, derived), so that
    // 0.35 are gone after 36 days.
    const seasons = seasonsOf({
      windows: [
        [3 + 30, 60],
        [3 + 40, 60],
      ],
    });
    expect(seasons.cost).toEqual(['little', 'waiting']);
    expect([...seasons.waitingHa]).toEqual([0, 4]);
  });

  it('is the packs where they were below the floor however soon they are sown', () => {
    const seasons = seasonsOf({ roadLog10: 1, windows: [[5, 26]] });
    expect(seasons.cost).toEqual(['weak']);
    expect([...seasons.weakHa]).toEqual([4]);
  });
});

describe('the part of the nitrogen that inoculation adds', () => {
  it('is the gain of the yield response alone: 5.8 kg per ha for 116 kg of grain per ha', () => {
    // van Heerwaarden et al. 2018: 1.227 to 1.343 t per ha; nitrogen 119.27 to 125.09 kg per ha (agronomy sheet 4.2, derived).
    const plan = smallPlan({ windows: [[5, 26]] });
    const prepared = preparePlay({ ...plan, scenario: { ...plan.scenario, yieldsTPerHa: { soybean: 1.227 } } });
    // Ten times more than the goal is left on each seed, so that the response is whole.
    prepared.parcels.log10PerSeed.fill(8);
    const result = makePlayResult(prepared);
    playSeason(prepared, 0, new Float64Array(prepared.drawWidth), result);
    expect(result.inoculationNitrogenKg / 4).toBeCloseTo(125.09 - 119.27, 1);
  });

  it('is nought without inoculant, and less than what the programme adds with its seed', () => {
    expect(headlineOf({ inoculantServed: false }).inoculationNitrogenKg.p50).toBe(0);
    const { inoculationNitrogenKg, programmeNitrogenKg } = headlineOf({ windows: [[5, 26]] });
    expect(inoculationNitrogenKg.p50).toBeGreaterThan(0);
    expect(inoculationNitrogenKg.p50).toBeLessThan(programmeNitrogenKg.p50);
  });
});

describe('how fast rhizobia may die', () => {
  it('lies within a factor of two in nine draws of ten: 5 and 95 percent, not one standard deviation', () => {
    // 1.6449 is the 95 % point of the standard normal distribution (any table of it).
    expect(lossRate(1.6448536)).toBeCloseTo(2, 6);
    expect(lossRate(-1.6448536)).toBeCloseTo(0.5, 6);
    expect(lossRate(0)).toBe(1);
    expect(lossRate(1)).toBeLessThan(1.6);
  });
});

describe('people and hectares of the headline', () => {
  it('counts farmers in proportion to the land reached, and the women among them', () => {
    // 40 farmers, 25 of them women, plan 10 ha; 4 are reached in the one season played.
    const { farmers, farmersReached, womenShare } = headlineOf({ windows: [[5, 26]] });
    expect(farmers).toBe(40);
    expect(farmersReached.p50).toBeCloseTo(16, 10);
    expect(womenShare).toBeCloseTo(0.625, 10);
  });

  it('prices 20 to 40 kg of nitrogen on each hectare of seed brought, and no more', () => {
    // 360 kg of seed brought at 60 kg per ha are 6 ha; nitrogen costs 2 a kg (agronomy sheet 4.6, read).
    const { broughtSeedHa, residualNitrogenKg, residualWorth } = headlineOf();
    expect(broughtSeedHa).toBeCloseTo(6, 10);
    expect(residualNitrogenKg.least).toBeCloseTo(120, 8);
    expect(residualNitrogenKg.most).toBeCloseTo(240, 8);
    expect(residualWorth?.most).toBeCloseTo(480, 8);
  });

  it('spreads goods and delivery over the hectares reached, where any are reached in nine outcomes of ten', () => {
    const { scenario, places, season, needs, allocation, delivery } = smallPlan({ windows: [[5, 26]] });
    const policy = { ...scenario.policy, cellsPerSeedFloor: 1e4 };
    const { headline } = weighOutcomes({ ...scenario, policy }, places, season, needs, allocation, delivery).result;
    // 18 packs at 400, 12 at 60, and 211 for the vehicle, over 4 ha.
    const each = (18 * 400 + 12 * 60 + 211) / 4;
    expect(headline.costPerHectare?.p10).toBeCloseTo(each, 8);
    expect(headline.costPerHectare?.p90).toBeCloseTo(each, 8);
    expect(headline.deliveryPerHectare).toBeCloseTo(211 / 4, 8);
    expect(headlineOf().costPerHectare).toBeNull();
  });

  it('says the quarters of a range within its tenths', () => {
    const { p10, p25, p50, p75, p90 } = headlineOf().nitrogenKg;
    expect([p10, p25, p50, p75, p90]).toEqual([p10, p25, p50, p75, p90].toSorted((a, b) => a - b));
  });
});

describe('what was signed for', () => {
  const handover = (change: Partial<Handover>): Handover => ({
    date: dayNumber(0),
    communityId: 'C1',
    lotId: 'L-INO',
    packs: 6,
    kg: null,
    boxC: null,
    returnedPacks: 0,
    sownOn: null,
    growers: null,
    growersWomen: null,
    vehicleId: null,
    reason: null,
    ...change,
  });
  const count = (...handovers: Handover[]) => {
    const plan = smallPlan();
    return countHandedOver({ ...plan, scenario: { ...plan.scenario, handovers } });
  };

  it('is the land that the packs kept coat: 100 g at 5 g per kg on 60 kg of seed per ha', () => {
    const { signedForHa, sownHa } = count(handover({ returnedPacks: 1 }), handover({ packs: 3, sownOn: dayNumber(5) }));
    // Five and three packs coat 160 kg of seed, which sow 2.67 ha; three packs 1 ha.
    expect(signedForHa[0]).toBeCloseTo(160 / 60, 10);
    expect(sownHa[0]).toBeCloseTo(1, 10);
  });

  it('is never more than is planned, and seed does not count', () => {
    expect(count(handover({ packs: 500 })).signedForHa[0]).toBe(10);
    expect(count(handover({ lotId: 'L-SEED' })).signedForHa[0]).toBe(0);
  });
});
