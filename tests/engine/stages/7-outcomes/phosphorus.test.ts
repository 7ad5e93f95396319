import { describe, expect, it } from 'vitest';
import type { Product } from '../../../../src/engine/index.ts';
import { firstPhosphorus } from '../../../../src/engine/stages/7-outcomes/draw-parameters.ts';
import { makePlayResult } from '../../../../src/engine/stages/7-outcomes/play-result.ts';
import { playSeason } from '../../../../src/engine/stages/7-outcomes/play-season.ts';
import { preparePlay } from '../../../../src/engine/stages/7-outcomes/prepare-play.ts';
import { weighOutcomes } from '../../../../src/engine/stages/7-outcomes/weigh-outcomes.ts';
import { blankProduct } from '../../blank-scenario.ts';
import { type SmallPlan, smallPlan } from './small-plan.ts';

const ONE_SEASON = [[5, 26]] as const;

/**
 * The small plan with 8 bags of 50 kg at 100 kg per ha, 20 percent phosphorus unless told otherwise, for 4 of its 8 ha with seed, on
 * the same vehicle: 20 kg of P a hectare.
 */
function withBags(over: Partial<Product> = {}, day = 3): SmallPlan {
  const plan = smallPlan({ windows: ONE_SEASON });
  const { scenario, allocation, delivery } = plan;
  const bag = blankProduct({
    id: 'P-BAG',
    kind: 'fertiliser',
    packSize: 50,
    packUnit: 'kg',
    packG: 50_000,
    rateKgPerHa: 100,
    phosphorusPercent: 20,
    pricePerPack: 30,
    ...over,
  });
  const [dayOfGoods] = delivery.vehicleDays;
  if (!dayOfGoods) throw new Error('the small plan drives one day');
  const carry = (loads: readonly number[], on: number) => ({
    ...dayOfGoods,
    day: on,
    trips: dayOfGoods.trips.map((trip) => ({ ...trip, stops: trip.stops.map((stop) => ({ ...stop, loads })) })),
  });
  const { grants } = allocation;
  return {
    ...plan,
    scenario: {
      ...scenario,
      products: [...scenario.products, bag],
      lots: [
        ...scenario.lots,
        { ...(scenario.lots[0] as (typeof scenario.lots)[number]), id: 'L-BAG', productId: 'P-BAG' },
      ],
    },
    allocation: {
      ...allocation,
      grants: {
        community: Int32Array.of(...grants.community, 0),
        crop: Int32Array.of(...grants.crop, 0),
        lot: Int32Array.of(...grants.lot, 2),
        packs: Int32Array.of(...grants.packs, 8),
        kg: Float64Array.of(...grants.kg, 400),
        // 4 ha at 60 kg of seed.
        servesSeedKg: Float64Array.of(...grants.servesSeedKg, 240),
      },
    },
    delivery: {
      ...delivery,
      loads: [
        ...delivery.loads,
        { consignment: 2, grants: [2], packs: [8], kg: 400, coolLitres: 0, inoculantKg: 0, hectares: 4 },
      ],
      vehicleDays: day === 3 ? [carry([0, 1, 2], 3)] : [carry([0, 1], 3), carry([2], day)],
    },
  };
}

const weigh = ({ scenario, places, season, needs, allocation, delivery }: SmallPlan) =>
  weighOutcomes(scenario, places, season, needs, allocation, delivery);
const codesOf = (plan: SmallPlan) => weigh(plan).problems.map(({ code }) => code);

/** Nitrogen fixed in kg per ha of soybean, written out from Herridge et al. 2022 (read*). */
function soybeanNitrogen(grainTPerHa: number): number {
  const dryMatterT = grainTPerHa / (0.1178 * Math.log(grainTPerHa) + 0.2775);
  return dryMatterT * 10 * (3.913 - 0.118 * dryMatterT) * 1.4 * 0.61;
}

describe('fertiliser that goes along', () => {
  const { crops, headline } = weigh(withBags()).result;
  const worth = 0.8 + 0.2 * ((crops.log10PerSeed[0] as number) - 5);
  const [bare, inoculant] = [1.36, 0.116 * worth];
  // 13.00 kg of grain a kg of P, 20 kg of P (Adjei-Nsiah et al. 2018); beside inoculant a third of the smaller is not had twice.
  const phosphorus = (13 * 20) / 1000;
  const both = inoculant + phosphorus - 0.33 * inoculant;
  // 4 of 8 ha with seed: half of the 4 ha that are inoculated, and half of the 4 that are not.
  const grain = 2 * bare + 2 * (bare + phosphorus) + 2 * (bare + inoculant) + 2 * (bare + both);

  it('covers half of the land with seed, coated and uncoated alike', () => {
    expect(headline.fertilisedHa).toBeCloseTo(4, 12);
    expect(headline.inoculatedHa).toBeCloseTo(4, 12);
  });

  it('adds grain by the kilogram of phosphorus, and nitrogen by the grain', () => {
    expect(headline.central.grainT).toBeCloseTo(grain, 10);
    const n = soybeanNitrogen;
    const nitrogen = 2 * n(bare) + 2 * n(bare + phosphorus) + 2 * n(bare + inoculant) + 2 * n(bare + both);
    expect(headline.central.nitrogenKg).toBeCloseTo(nitrogen, 8);
    const without = 4 * n(bare) + 4 * n(bare + inoculant);
    expect(headline.central.phosphorusNitrogenKg).toBeCloseTo(nitrogen - without, 8);
    expect(headline.central.phosphorusGrainT).toBeCloseTo(2 * phosphorus + 2 * (both - inoculant), 10);
  });

  it('is owed to the programme; inoculation is what the same fertilised land would lack', () => {
    // 120 of 600 kg of seed are the growers' own: 2 ha, bare.
    expect(headline.central.programmeGrainT).toBeCloseTo(grain - 2 * bare, 10);
    expect(headline.central.inoculationGrainT).toBeCloseTo(2 * inoculant + 2 * (both - phosphorus), 10);
  });

  it('is in the range, wider than nought, and in the cost of goods: 8 bags at 30', () => {
    const { p10, p50, p90 } = headline.phosphorusGrainT;
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    expect(Math.abs(p50 / headline.central.phosphorusGrainT - 1)).toBeLessThan(0.15);
    expect(headline.cost.otherGoods).toBe(18 * 400 + 8 * 30);
  });

  it('gains no more than the trials gave: 45 percent at 100 kg is reckoned as 30 kg of P', () => {
    const rich = weigh(withBags({ phosphorusPercent: 45 })).result.headline.central;
    const thirty = weigh(withBags({ phosphorusPercent: 30 })).result.headline.central;
    expect(rich.phosphorusGrainT).toBe(thirty.phosphorusGrainT);
    expect(rich.phosphorusGrainT).toBeGreaterThan(headline.central.phosphorusGrainT);
  });

  it('gains nothing where it comes after sowing: window from day 5, goods on day 3, bags on day 5', () => {
    expect(weigh(withBags({}, 4)).result.headline.central.phosphorusGrainT).toBeGreaterThan(0);
    const late = weigh(withBags({}, 5)).result.headline;
    expect(late.central.phosphorusGrainT).toBe(0);
    expect(late.central.grainT).toBeCloseTo(
      weigh(smallPlan({ windows: ONE_SEASON })).result.headline.central.grainT,
      12,
    );
    expect(late.fertilisedHa).toBeCloseTo(4, 12);
  });

  it('gains nothing and says so where its phosphorus, or the crop’s response, is not known', () => {
    const unstated = withBags({ phosphorusPercent: null });
    expect(weigh(unstated).result.headline.central.phosphorusGrainT).toBe(0);
    expect(codesOf(unstated)).toContain('E7006');
    expect(codesOf(withBags())).not.toContain('E7006');
    expect(codesOf(withBags())).not.toContain('E7010');
    const beans = withBags();
    expect(codesOf({ ...beans, scenario: { ...beans.scenario, crops: ['common_bean'] } })).toContain('E7010');
    expect(codesOf(smallPlan())).not.toContain('E7006');
  });

  it('a draw moves it by its own numbers alone: one spread of the district is sqrt(1/2) of 0.6 of the mean', () => {
    const prepared = preparePlay(withBags());
    const result = makePlayResult(prepared);
    const draw = new Float64Array(prepared.drawWidth);
    draw[firstPhosphorus(prepared.shape)] = 1;
    playSeason(prepared, 0, draw, result);
    const more = phosphorus * (1 + 0.6 * Math.SQRT1_2);
    expect(result.phosphorusGrainT).toBeCloseTo(2 * more + 2 * (more - 0.33 * inoculant), 10);
    draw[firstPhosphorus(prepared.shape)] = -5;
    playSeason(prepared, 0, draw, result);
    expect(result.phosphorusGrainT).toBe(0);
  });
});
