import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactSum } from '../../../../src/engine/numerics/exact-sum.ts';
import { CROP_FACTS } from '../../../../src/engine/reference/crops.ts';
import { estimateNeeds } from '../../../../src/engine/stages/4-needs/estimate-needs.ts';
import { dayFromCivil } from '../../../../src/engine/vocabulary/calendar.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import {
  community,
  fertiliser,
  inoculant,
  lot,
  plan,
  seed,
  sharesOnly,
  smallScenario,
  sticker,
} from './small-scenario.ts';

const products = [
  inoculant('INO-SOY', ['soybean'], {}),
  inoculant('INO-BEAN', ['common_bean'], { doseGPerKg: 10 }),
  seed('SEED-SOY', 'soybean', { seedRateKgPerHa: 60, thousandSeedG: 150 }),
  sticker('STICKER', ['soybean']),
  fertiliser('PHOSPHATE', ['soybean'], 100),
];
/** Kalunde lies a quarter in zone 0 and three quarters in zone 1; Mwera outside all zones. */
const hand: Partial<Scenario> = {
  products,
  lots: [lot('INO-SOY', 40), lot('SEED-SOY', 70)],
  communities: [
    community('Kalunde', [plan('soybean', 12, { ownSeedKg: 100 }), plan('cowpea', 0)]),
    community('Mwera', [plan('cowpea', 1), plan('common_bean', 2, { seedRateKgPerHa: 90 })]),
  ],
};
const places = sharesOnly([
  [0, 0, 0.25],
  [0, 1, 0.75],
  [1, -1, 1],
]);

describe('worked by hand', () => {
  const { result, problems } = estimateNeeds(smallScenario(hand), places);

  test('one row per zone, community and crop with planned land, by community, zone, crop', () => {
    expect([...result.community]).toEqual([0, 0, 1, 1]);
    expect([...result.zone]).toEqual([0, 1, -1, -1]);
    expect([...result.crop]).toEqual([0, 0, 1, 2]);
    // 12 ha of soybean: a quarter is 3 ha, three quarters are 9 ha.
    expect([...result.plannedHa]).toEqual([3, 9, 1, 2]);
  });

  test('seed: 3 and 9 ha at 60 kg/ha, cowpea at the reference rate, beans at the community’s own 90 kg/ha', () => {
    expect([...result.seedKg]).toEqual([180, 540, CROP_FACTS.cowpea.seedRateKgPerHa.value, 180]);
  });

  test('farmer-saved seed, 25 and 75 kg, comes off what the programme brings', () => {
    expect([...result.ownSeedKg]).toEqual([25, 75, 0, 0]);
    expect([...result.programmeSeedKg]).toEqual([155, 465, CROP_FACTS.cowpea.seedRateKgPerHa.value, 180]);
  });

  test('and not off what is inoculated: 180 and 540 kg at 5 g/kg, 180 kg of beans at 10 g/kg; packs of 100 g', () => {
    expect([...result.inoculantG]).toEqual([900, 2700, 0, 1800]);
    expect([...result.product]).toEqual([0, 0, -1, 1]);
    for (const [row, packs] of [9, 27, 0, 18].entries()) expect(result.packsNeeded[row]).toBeCloseTo(packs, 10);
  });

  test('sticker 2 g/kg in sachets of 50 g, fractions kept: 7.2 and 21.6 sachets; none is for beans', () => {
    for (const [row, packs] of [7.2, 21.6, 0, 0].entries()) expect(result.stickerPacks[row]).toBeCloseTo(packs, 10);
  });

  test('water: 300 mL a sachet, 2.16 and 6.48 L; 180 kg of beans without sticker at 15 mL/kg, 2.7 L (common practice, no source)', () => {
    for (const [row, litres] of [2.16, 6.48, 0, 2.7].entries()) expect(result.waterL[row]).toBeCloseTo(litres, 10);
  });

  test('fertiliser: 3 and 9 ha at 100 kg/ha', () => {
    expect([...result.fertiliserKg]).toEqual([300, 900, 0, 0]);
  });

  test('seeds in a kilogram: 150 g a thousand by the product, cowpea and beans by reference', () => {
    const [soybean, cowpea, bean] = result.seedsPerKg;
    expect(soybean).toBeCloseTo(6666.667, 3);
    expect(cowpea).toBeCloseTo(1e6 / CROP_FACTS.cowpea.thousandSeedG.value, 6);
    expect(bean).toBeCloseTo(1e6 / CROP_FACTS.common_bean.thousandSeedG.value, 6);
  });

  test('cowpea without an inoculant is noted, with its hectares', () => {
    expect(problems.map(({ code, facts }) => [code, facts])).toEqual([
      ['E4001', { crop: 'cowpea', hectares: 1, similar: '' }],
    ]);
  });
});

test('a contingency raises the packs asked for, and nothing else', () => {
  const { result: plain } = estimateNeeds(smallScenario(hand), places);
  const { result: more } = estimateNeeds(smallScenario(hand, 10), places);
  for (const [row, packs] of [9.9, 29.7, 0, 19.8].entries()) expect(more.packsNeeded[row]).toBeCloseTo(packs, 10);
  expect(more.stickerPacks[0]).toBeCloseTo(7.92, 10);
  for (const name of ['plannedHa', 'seedKg', 'programmeSeedKg', 'inoculantG', 'waterL', 'fertiliserKg'] as const) {
    expect(more[name]).toEqual(plain[name]);
  }
});

describe('the reference product', () => {
  const coat = (lots: Scenario['lots'], more = products) =>
    estimateNeeds(
      smallScenario({
        products: [...more, inoculant('LIQUID', ['soybean'], { packG: 1000, doseGPerKg: 4 })],
        lots,
        communities: hand.communities ?? [],
      }),
      places,
    ).result.product[0];

  test('is the one whose cleared stock coats most seed: 40 packs coat 800 kg, three litres 750 kg, four litres 1000 kg', () => {
    expect(coat([lot('INO-SOY', 40), lot('LIQUID', 3)])).toBe(0);
    expect(coat([lot('INO-SOY', 40), lot('LIQUID', 4)])).toBe(products.length);
  });

  test('counts no lot that is on hold, awaiting or past expiry', () => {
    for (const more of [
      { status: 'on_hold' },
      { status: 'awaiting' },
      { expires: dayFromCivil(2026, 11, 1) },
    ] as const) {
      expect(coat([lot('INO-SOY', 1), lot('LIQUID', 9, more)])).toBe(0);
    }
  });

  test('without any stock, is still named, so that the need can be counted', () => {
    expect(coat([])).toBe(0);
  });

  test('never one whose label does not name the crop, though its group of rhizobia is the same', () => {
    const mung = inoculant('INO-MUNG', ['mung_bean'], {});
    const { result, problems } = estimateNeeds(smallScenario({ ...hand, products: [...products, mung] }), places);
    expect(result.product[2]).toBe(-1);
    expect(problems[0]?.facts['similar']).toBe('INO-MUNG');
  });
});

describe('the seed rate', () => {
  const rateOf = (parts: Partial<Scenario>) =>
    estimateNeeds(
      smallScenario({ ...hand, communities: [community('Kalunde', [plan('soybean', 1)])], ...parts }),
      sharesOnly([[0, 0, 1]]),
    ).result.seedKg[0];

  test('comes from the seed most in stock by kilograms', () => {
    const denser = seed('SEED-SOY-2KG', 'soybean', { packG: 2000, seedRateKgPerHa: 80 });
    expect(rateOf({ products: [...products, denser], lots: [lot('SEED-SOY', 70), lot('SEED-SOY-2KG', 340)] })).toBe(60);
    expect(rateOf({ products: [...products, denser], lots: [lot('SEED-SOY', 70), lot('SEED-SOY-2KG', 360)] })).toBe(80);
  });

  test('or from the programme’s assumption, or its stand: 30 plants/m² of 150 g seed, 85 % germination, 90 % emergence', () => {
    expect(rateOf({ assumptions: { 'soybean.seedRateKgPerHa': 55 } })).toBe(55);
    // 30 * 150 / (100 * 0.85 * 0.9)
    expect(rateOf({ assumptions: { 'soybean.plantsPerM2': 30 } })).toBeCloseTo(58.8235, 4);
  });

  test('or, where nobody states one, from the reference', () => {
    expect(rateOf({ products: [], lots: [] })).toBe(CROP_FACTS.soybean.seedRateKgPerHa.value);
  });
});

describe('noted', () => {
  test('more farmer-saved seed than the land takes: the programme brings none, all that is sown is inoculated', () => {
    const communities = [community('Kalunde', [plan('soybean', 1, { ownSeedKg: 61 })])];
    const { result, problems } = estimateNeeds(smallScenario({ ...hand, communities }), sharesOnly([[0, 0, 1]]));
    expect([result.programmeSeedKg[0], result.inoculantG[0]]).toEqual([0, 300]);
    expect(problems.map(({ code }) => code)).toEqual(['E4002']);
  });

  test('a label that puts 7.5e4 rhizobia on a seed, under the floor of 1e5: 1e8 per g, 5 g/kg, 150 g', () => {
    const thin = [inoculant('INO-SOY', ['soybean'], { countPerG: 1e8 }), ...products.slice(1)];
    const { problems } = estimateNeeds(smallScenario({ ...hand, products: thin }), places);
    const found = problems.find(({ code }) => code === 'E4003');
    expect(found?.facts).toEqual({ product: 'INO-SOY', crop: 'soybean', cells: 75_000, floor: 100_000 });
  });
});

test('every column of needs says how it was made, and reference values keep their status', () => {
  const { result, provenance } = estimateNeeds(smallScenario(hand), places);
  const described = provenance.map(({ figure }) => figure.replace('needs.', ''));
  const identity = ['zone', 'community', 'crop'];
  expect([...described, ...identity].sort()).toEqual(Object.keys(result).sort());
  const seedKg = provenance.find(({ figure }) => figure === 'needs.seedKg');
  const cowpea = seedKg?.inputs.find(({ name }) => name === 'seed rate, cowpea');
  expect([cowpea?.value, cowpea?.status]).toEqual([CROP_FACTS.cowpea.seedRateKgPerHa.value, 'derived']);
});

describe('always', () => {
  const weight = fc.double({ min: 1e-6, max: 1, noNaN: true });
  const hectares = fc.double({ min: 0.01, max: 1e5, noNaN: true });

  test('land, seed and farmer-saved seed of all zones add up to the communities’ own, to the last bit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(hectares, hectares, fc.array(weight, { minLength: 1, maxLength: 6 })), {
          minLength: 1,
          maxLength: 8,
        }),
        (draws) => {
          const communities = draws.map(([ha, own], c) =>
            community(`C${c}`, [plan('soybean', ha, { ownSeedKg: own })]),
          );
          const rows = draws.flatMap(([, , weights], c) => {
            const total = exactSum(weights);
            return weights.map((one, z) => [c, z - 1, one / total] as const);
          });
          const { result } = estimateNeeds(smallScenario({ ...hand, communities }), sharesOnly(rows));
          expect(exactSum(result.plannedHa)).toBe(exactSum(draws.map(([ha]) => ha)));
          expect(exactSum(result.seedKg)).toBe(exactSum(draws.map(([ha]) => ha * 60)));
          expect(exactSum(result.ownSeedKg)).toBe(exactSum(draws.map(([, own]) => own)));
          expect(Math.min(...result.plannedHa)).toBeGreaterThan(0);
        },
      ),
    );
  });

  test('renaming every id changes nothing', () => {
    const rename = (id: string) => `x${id.length}-${id.split('').reverse().join('')}`;
    const renamed = {
      products: products.map((product) => ({ ...product, id: rename(product.id) })),
      lots: (hand.lots ?? []).map((one) => ({ ...one, id: rename(one.id), productId: rename(one.productId) })),
      communities: (hand.communities ?? []).map((one) => ({ ...one, id: rename(one.id), name: rename(one.name) })),
    };
    expect(estimateNeeds(smallScenario(renamed), places).result).toEqual(
      estimateNeeds(smallScenario(hand), places).result,
    );
  });
});
