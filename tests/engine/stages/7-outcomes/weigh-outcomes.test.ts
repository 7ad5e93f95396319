import { describe, expect, it } from 'vitest';
import { SURVIVAL_SETS } from '../../../../src/engine/reference/survival-sets.ts';
import { LOSS_BREAKS, reachCurve } from '../../../../src/engine/science/reach.ts';
import { weighOutcomes } from '../../../../src/engine/stages/7-outcomes/weigh-outcomes.ts';
import { type SmallPlanChange, smallPlan } from './small-plan.ts';

function weigh(change: SmallPlanChange = {}) {
  const { scenario, places, season, needs, allocation, delivery } = smallPlan(change);
  return weighOutcomes(scenario, places, season, needs, allocation, delivery);
}

const NOTHING = { p10: 0, p25: 0, p50: 0, p75: 0, p90: 0 };

/** Nitrogen fixed in kg per ha of soybean outside Brazil and Europe, written out from Herridge et al. 2022 (read*). */
function soybeanNitrogen(grainTPerHa: number): number {
  const dryMatterT = grainTPerHa / (0.1178 * Math.log(grainTPerHa) + 0.2775);
  return dryMatterT * 10 * (3.913 - 0.118 * dryMatterT) * 1.4 * 0.61;
}

describe('a season that begins and one that never does', () => {
  const { crops, headline } = weigh().result;

  it('covers land with the growers’ own seed and the seed handed over', () => {
    // 120 kg of own seed and 360 kg handed over are 480 of 600 kg: eight tenths of 10 ha.
    expect(crops.seedHa[0]).toBeCloseTo(8, 12);
    // 12 packs of 100 g at 5 g per kg coat 240 kg: four tenths of 10 ha.
    expect(crops.inoculatedHa[0]).toBeCloseTo(4, 12);
    expect(headline).toMatchObject({ plannedHa: 10, communities: 1, communitiesReached: 1 });
  });

  it('counts land as in time in the seasons that have an onset', () => {
    // Seed is in hand on day 3, the window closes on day 26: in time in one season of two.
    expect(crops.seedInTimeHa[0]).toBeCloseTo(4, 12);
    expect(crops.reachedHa[0]).toBeCloseTo(2, 12);
  });

  it('takes the losses of store, road, community and seed off the rhizobia on each seed', () => {
    // D(T) = 28 d * 10^((40 - T) / 18). D(4) is 2800 d and D(30) is 100.63 d (agronomy sheet, row 15, derived).
    expect(crops.storeLog10[0]).toBeCloseTo(3 / 2800, 8);
    expect(crops.roadLog10[0]).toBe(0.02);
    // Days 3 and 4 in a room 2 K warmer than the mean air of 28 °C.
    expect(crops.communityLog10[0]).toBeCloseTo(2 / 100.63, 5);
    // Six hours on the seed at 30 °C: (0.40 + 0.094 * 6 / 24) * 10^(5 / 68).
    expect(crops.seedLog10[0]).toBeCloseTo(0.4235 * 10 ** (5 / 68), 12);
    // 10^9 per g, 5 g per kg, 150 g per thousand seeds: 7.5 * 10^5 per seed (row 10, derived).
    const before = Math.log10(7.5e5);
    const lost = 3 / 2800 + 0.02 + 2 / 100.63 + 0.4235 * 10 ** (5 / 68);
    expect(crops.log10PerSeed[0]).toBeCloseTo(before - lost, 5);
  });

  it('fixes nitrogen by the grain of each part of the land', () => {
    // Herridge et al. 2022: 125.93 kg per ha at 1.36 t per ha (agronomy sheet 4.2, derived).
    expect(soybeanNitrogen(1.36)).toBeCloseTo(125.93, 2);
    // Rhizobia between the floor 10^5 and the goal 10^6 are worth 0.8 and a fifth of the way between them.
    const worth = 0.8 + 0.2 * ((crops.log10PerSeed[0] as number) - 5);
    const inoculated = 1.36 + 0.116 * worth;
    // 4 ha uncoated and 4 ha inoculated, in one season of two.
    expect(crops.grainT[0]).toBeCloseTo((4 * 1.36 + 4 * inoculated) / 2, 10);
    expect(crops.nitrogenKg[0]).toBeCloseTo((4 * soybeanNitrogen(1.36) + 4 * soybeanNitrogen(inoculated)) / 2, 8);
  });

  it('adds up money', () => {
    // 18 packs at 400 and 12 at 60.
    expect(headline.goodsCost).toBe(18 * 400 + 12 * 60);
    expect(headline.deliveryCost).toBe(211);
    // 6 ha of seed brought, 20 to 40 kg of fertiliser nitrogen each, 2 a kg; nothing else of the nitrogen is priced.
    expect(headline.residualWorth).toEqual({ least: 6 * 20 * 2, most: 6 * 40 * 2 });
  });
});

describe('what the programme owns to', () => {
  it('owns to nothing where its packs are not handed over and own seed covers the land', () => {
    const plan = smallPlan({ ownSeedKg: 600, inoculantServed: false });
    const { result } = weighOutcomes(
      plan.scenario,
      plan.places,
      plan.season,
      plan.needs,
      plan.allocation,
      plan.delivery,
    );
    expect(result.headline.programmeNitrogenKg).toEqual(NOTHING);
    expect(result.crops.inoculatedHa[0]).toBe(0);
    expect(result.crops.log10PerSeed[0]).toBeNaN();
  });

  it('never counts more land than is planned', () => {
    const { crops } = weigh({ ownSeedKg: 500 }).result;
    expect(crops.seedHa[0]).toBe(10);
  });
});

describe('seasons against the day of delivery', () => {
  it('sows after the hand-over, late where the window has closed, and yields less', () => {
    // The window closes on day 1, the goods come on day 3 and are sown on day 4: three days late, 1.2 % a day.
    const { crops } = weigh({ ownSeedKg: 0, windows: [[-20, 1]] }).result;
    expect(crops.reachedHa[0]).toBe(0);
    expect(crops.seedInTimeHa[0]).toBe(0);
    const worth = 0.8 + 0.2 * ((crops.log10PerSeed[0] as number) - 5);
    const kept = 1 - 3 * 0.012;
    // 2 ha have seed and no inoculant, 4 ha have both.
    expect(crops.grainT[0]).toBeCloseTo(kept * (2 * 1.36 + 4 * (1.36 + 0.116 * worth)), 10);
  });

  it('gives ranges that hold the central case and repeat themselves', () => {
    const once = weigh({ windows: [[5, 26]] }).result;
    const again = weigh({ windows: [[5, 26]] }).result;
    expect(once.headline).toEqual(again.headline);
    const { p10, p50, p90 } = once.headline.nitrogenKg;
    const central = once.crops.nitrogenKg[0] as number;
    expect(Math.abs(p50 / central - 1)).toBeLessThan(0.1);
    // A relative standard deviation of 35 % (30 to 40 %, agronomy sheet 4.2, assumed) puts p10 near 0.55 and p90 near 1.45.
    expect(p10 / central).toBeGreaterThan(0.4);
    expect(p10 / central).toBeLessThan(0.65);
    expect(p90 / central).toBeGreaterThan(1.35);
    expect(p90 / central).toBeLessThan(1.65);
  });

  it('says that without seasons nothing can be told', () => {
    const { result, problems } = weigh({ windows: [] });
    expect(result.headline.reachedHa).toEqual(NOTHING);
    expect(problems.map(({ code }) => code)).toContain('E7001');
  });
});

describe('a community that lies in two zones', () => {
  it('divides its land, goods and people as its area is, and loses none', () => {
    // Three tenths of the community lie outside the zone.
    const { zones, headline, crops } = weigh({ outside: 0.3, windows: [[5, 26]] }).result;
    expect(zones.map(({ zone }) => zone)).toEqual([0, -1]);
    expect(zones.map(({ plannedHa }) => plannedHa)).toEqual([7, 3]);
    // 360 kg and 12 packs handed over, 40 farmers.
    expect(zones[0]?.seedKg).toBeCloseTo(252, 10);
    expect(zones[1]?.inoculantPacks).toBeCloseTo(3.6, 10);
    expect(zones[1]?.farmers).toBeCloseTo(12, 10);
    // It counts once, where most of it lies.
    expect(zones.map(({ communities }) => communities)).toEqual([1, 0]);
    expect(headline.plannedHa).toBe(10);
    const reachedHa = zones.reduce((sum, zone) => sum + zone.reachedHa, 0);
    expect(reachedHa).toBeCloseTo(crops.reachedHa[0] as number, 10);
    expect(reachedHa).toBeCloseTo(4, 10);
  });
});

describe('what the days were chosen by', () => {
  it('is what is found: the gain of inoculated land is the response times the worth of its reach curve', () => {
    // At a loss on the road of 0.05, where the curve has a break. Two seasons, one of them late for the goods of day 3.
    const windows = [
      [5, 26],
      [-20, 1],
    ] as const;
    const curve = reachCurve({
      from: 0,
      planningDays: 20,
      firstDay: windows.map(([first]) => first),
      lastDay: windows.map(([, last]) => last),
      delayLossPerDay: 0.012,
      delayFreeDays: 0,
      inoculant: {
        log10PerSeed: Math.log10(7.5e5),
        survival: SURVIVAL_SETS.default.value,
        depotCelsius: new Float64Array(20).fill(4),
        communityCelsius: new Float64Array(95).fill(30),
        floorCellsPerSeed: 1e5,
      },
    });
    const worth = curve.value[3 * LOSS_BREAKS.length + LOSS_BREAKS.indexOf(0.05)] as number;
    const change = { windows, roadLog10: 0.05, ownSeedKg: 0 };
    const [coated, plain] = [weigh(change), weigh({ ...change, inoculantServed: false })];
    const gainT = (coated.result.crops.grainT[0] as number) - (plain.result.crops.grainT[0] as number);
    // 4 inoculated hectares, 116 kg per ha at full worth (van Heerwaarden et al. 2018, read).
    expect(gainT).toBeCloseTo(4 * 0.116 * worth, 10);
  });
});
