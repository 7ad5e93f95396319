import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SURVIVAL_SETS } from '../../../src/engine/reference/survival-sets.ts';
import {
  blendReachCurves,
  delayFactor,
  type InoculantLife,
  LOSS_BREAKS,
  lifeValue,
  type ReachInput,
  reachCurve,
} from '../../../src/engine/science/reach.ts';
import { onSeedLog10Loss, packLog10PerDay } from '../../../src/engine/science/survival.ts';

const BREAKS = LOSS_BREAKS.length;
const days = (n: number, celsius: number): Float64Array => new Float64Array(n).fill(celsius);

const dry: ReachInput = {
  from: 1000,
  planningDays: 20,
  firstDay: [1005],
  lastDay: [1010],
  delayLossPerDay: 0.01,
  delayFreeDays: 0,
  inoculant: null,
};
const life: InoculantLife = {
  log10PerSeed: 6,
  survival: SURVIVAL_SETS.default.value,
  depotCelsius: days(20, 8),
  communityCelsius: days(95, 30),
  floorCellsPerSeed: 1e5,
};
const living: ReachInput = { ...dry, inoculant: life };

describe('dry goods', () => {
  test('full value up to the last day that lets sowing begin in the window, then one percent a day', () => {
    const { value, inTime } = reachCurve(dry);
    // Handed over on day 9, sown on day 10, the last good day; on day 12, sown on day 13, three days late.
    expect(value[9 * BREAKS]).toBe(1);
    expect(value[12 * BREAKS]).toBeCloseTo(0.97, 12);
    expect([inTime[9], inTime[10]]).toEqual([1, 0]);
  });

  test('no loss on the road matters to seed', () => {
    const { value } = reachCurve(dry);
    for (let k = 0; k < BREAKS; k++) expect(value[12 * BREAKS + k]).toBe(value[12 * BREAKS]);
  });

  test('a season without onset counts as nothing; two seasons are averaged', () => {
    const { value, inTime } = reachCurve({ ...dry, firstDay: [1005, Number.NaN], lastDay: [1010, Number.NaN] });
    expect(value[0]).toBe(0.5);
    expect(inTime[0]).toBe(0.5);
  });

  test('no seasons at all: nothing is claimed', () => {
    const { value, inTime } = reachCurve({ ...dry, firstDay: [], lastDay: [] });
    expect(Math.max(...value, ...inTime)).toBe(0);
  });

  test('free days put off the loss', () => {
    expect(delayFactor(14, 0.01, 14)).toBe(1);
    expect(delayFactor(16, 0.01, 14)).toBeCloseTo(0.98, 12);
    expect(delayFactor(200, 0.01, 14)).toBe(0);
  });
});

describe('inoculant', () => {
  test('by hand: 6 log10, three cool days at the depot, two warm days in the community, six hours on the seed', () => {
    const { value } = reachCurve(living);
    // Handed over on day 3, sown on day 5.
    const left =
      6 - 3 * packLog10PerDay(8, life.survival) - 2 * packLog10PerDay(30, life.survival) - onSeedLog10Loss(6, 30);
    for (const [k, road] of LOSS_BREAKS.entries()) {
      expect(value[3 * BREAKS + k]).toBeCloseTo(lifeValue(left - road, 5), 12);
    }
  });

  test('worth of rhizobia on the seed: full at 10⁶, 0.8 at the floor of 10⁵, half of that half a log10 below, none at 10⁴', () => {
    expect([lifeValue(7, 5), lifeValue(6, 5), lifeValue(5, 5)]).toEqual([1, 1, 0.8]);
    expect(lifeValue(5.5, 5)).toBeCloseTo(0.9, 12);
    expect(lifeValue(4.5, 5)).toBeCloseTo(0.4, 12);
    expect([lifeValue(4, 5), lifeValue(1, 5), lifeValue(Number.NaN, 5)]).toEqual([0, 0, 0]);
  });

  test('a floor as high as the goal still falls and never rises', () => {
    expect([lifeValue(6.5, 6.5), lifeValue(6, 6.5)]).toEqual([1, 0.4]);
  });

  test('days beyond the record of the store lose as its last day', () => {
    const late = { ...living, firstDay: [1100], lastDay: [1110] };
    const short = reachCurve({ ...late, inoculant: { ...life, communityCelsius: days(10, 30) } });
    const long = reachCurve({ ...late, inoculant: { ...life, communityCelsius: days(120, 30) } });
    for (let i = 0; i < long.value.length; i++) expect(short.value[i]).toBeCloseTo(long.value[i] as number, 10);
  });

  test('a store hotter than the model reaches is worth nothing', () => {
    const { value } = reachCurve({ ...living, inoculant: { ...life, communityCelsius: days(95, 61) } });
    expect(Math.max(...value)).toBe(0);
  });
});

const season = fc
  .array(fc.tuple(fc.integer({ min: -20, max: 60 }), fc.integer({ min: 0, max: 30 }), fc.boolean()), {
    minLength: 1,
    maxLength: 12,
  })
  .map((members) => ({
    firstDay: members.map(([first, , onset]) => (onset ? 1000 + first : Number.NaN)),
    lastDay: members.map(([first, length, onset]) => (onset ? 1000 + first + length : Number.NaN)),
  }));
const store = fc.record({ depot: fc.integer({ min: 2, max: 45 }), community: fc.integer({ min: 2, max: 45 }) });
const count = fc.double({ min: 4, max: 8, noNaN: true });

const inputOf = (
  { firstDay, lastDay }: { firstDay: number[]; lastDay: number[] },
  { depot, community }: { depot: number; community: number },
  log10PerSeed: number,
): ReachInput => ({
  ...dry,
  firstDay,
  lastDay,
  inoculant: { ...life, log10PerSeed, depotCelsius: days(20, depot), communityCelsius: days(95, community) },
});

describe('always', () => {
  test('value is a share, and never rises with loss on the road', () => {
    fc.assert(
      fc.property(season, store, count, (members, celsius, log10PerSeed) => {
        const { value } = reachCurve(inputOf(members, celsius, log10PerSeed));
        for (let h = 0; h < 20; h++) {
          for (let k = 0; k < BREAKS; k++) {
            const here = value[h * BREAKS + k] as number;
            expect(here).toBeGreaterThanOrEqual(0);
            expect(here).toBeLessThanOrEqual(1);
            if (k > 0) expect(here).toBeLessThanOrEqual(value[h * BREAKS + k - 1] as number);
          }
        }
      }),
    );
  });

  test('handed over later, dry goods are never worth more and never more surely in time', () => {
    fc.assert(
      fc.property(season, (members) => {
        const { value, inTime } = reachCurve({ ...dry, ...members });
        for (let h = 1; h < 20; h++) {
          expect(value[h * BREAKS]).toBeLessThanOrEqual(value[(h - 1) * BREAKS] as number);
          expect(inTime[h]).toBeLessThanOrEqual(inTime[h - 1] as number);
        }
      }),
    );
  });

  test('once every window is past, inoculant handed over later is never worth more', () => {
    fc.assert(
      fc.property(store, count, (celsius, log10PerSeed) => {
        const members = { firstDay: [990, 995], lastDay: [998, 1003] };
        const { value } = reachCurve(inputOf(members, celsius, log10PerSeed));
        for (let h = 5; h < 20; h++) {
          for (let k = 0; k < BREAKS; k++) {
            expect(value[h * BREAKS + k]).toBeLessThanOrEqual((value[(h - 1) * BREAKS + k] as number) + 1e-12);
          }
        }
      }),
    );
  });

  test('hotter stores never keep more, fewer rhizobia are never worth more, and life is never worth more than dry goods', () => {
    fc.assert(
      fc.property(season, store, count, (members, celsius, log10PerSeed) => {
        const base = reachCurve(inputOf(members, celsius, log10PerSeed)).value;
        const warmer = { depot: celsius.depot + 3, community: celsius.community + 3 };
        const hot = reachCurve(inputOf(members, warmer, log10PerSeed)).value;
        const thin = reachCurve(inputOf(members, celsius, log10PerSeed - 0.5)).value;
        const seed = reachCurve({ ...dry, ...members }).value;
        for (let i = 0; i < base.length; i++) {
          expect(hot[i]).toBeLessThanOrEqual(base[i] as number);
          expect(thin[i]).toBeLessThanOrEqual(base[i] as number);
          expect(base[i]).toBeLessThanOrEqual(seed[i] as number);
        }
      }),
    );
  });

  test('the order of the seasons does not matter, to the last place but a few', () => {
    fc.assert(
      fc.property(season, store, count, ({ firstDay, lastDay }, celsius, log10PerSeed) => {
        const base = reachCurve(inputOf({ firstDay, lastDay }, celsius, log10PerSeed)).value;
        const turned = { firstDay: firstDay.toReversed(), lastDay: lastDay.toReversed() };
        const other = reachCurve(inputOf(turned, celsius, log10PerSeed)).value;
        for (let i = 0; i < base.length; i++) expect(other[i]).toBeCloseTo(base[i] as number, 12);
      }),
    );
  });
});

describe('blending', () => {
  test('three quarters seed in time and one quarter late', () => {
    const late = reachCurve({ ...dry, firstDay: [980], lastDay: [990] });
    const blend = blendReachCurves([reachCurve(dry), late], [3, 1]);
    // Late seed of day 0 is sown on day 1, eleven days after its window: 0.89.
    expect(blend.value[0]).toBeCloseTo(0.75 * 1 + 0.25 * 0.89, 12);
    expect(blend.inTime[0]).toBe(0.75);
  });
});

test('a thousand consignments over 40 days and 25 seasons take well under two seconds', () => {
  const members = Array.from({ length: 25 }, (_, m) => 1010 + m);
  const input: ReachInput = {
    ...living,
    planningDays: 40,
    firstDay: members,
    lastDay: members.map((first) => first + 21),
    inoculant: { ...life, depotCelsius: days(40, 8), communityCelsius: days(115, 28) },
  };
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < 1000; i++) sum += reachCurve(input).value[0] as number;
  const took = performance.now() - start;
  expect(sum).toBeGreaterThan(0);
  expect(took).toBeLessThan(2000);
});
