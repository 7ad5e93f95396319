import { describe, expect, it } from 'vitest';
import { type Decision, dayNumber, type Lot, type Product } from '../../../../src/engine/index.ts';
import { judgeLots } from '../../../../src/engine/stages/5-allocation/judge-lots.ts';
import { decisions, FROM, lot, PLANNING_DAYS, sachet, seedPack, smallDistrict } from './small-district.ts';

const LAST_DAY = FROM + PLANNING_DAYS - 1;
const powder = sachet(['soybean']);
const seed = seedPack('soybean', 10);

/** Verdict and problem codes of one lot, in a district whose ten seasons begin to sow on the days given. */
function judge(of: Product, over: Partial<Lot>, firstDays: readonly number[] = [5], edits: readonly Decision[] = []) {
  const { scenario, season, needs } = smallDistrict({
    crops: ['soybean', 'cowpea'],
    communities: [{ ha: { soybean: 10 } }],
    products: [of],
    lots: [lot(of, 40, { id: 'L', ...over })],
    seasons: firstDays.map((first) => [first, first + 21] as const),
    policy: { reservePercent: 10 },
  });
  const { verdicts, problems } = judgeLots(
    scenario,
    decisions(...edits),
    season,
    needs,
    new Int32Array(scenario.lots.length),
  );
  return { ...verdicts[0], codes: problems.map(({ code }) => code), problem: problems[0] };
}

const day = (offset: number) => dayNumber(FROM + offset);

describe('which lots may be given (design section 6, heat and quality rules)', () => {
  it('a sound lot, less the reserve: 40 packs, 4 kept back', () => {
    expect(judge(powder, {})).toMatchObject({ reasons: [], packsReserved: 4, packsOffered: 36, codes: [] });
  });

  it('never one past expiry, by a day', () => {
    expect(judge(powder, { expires: day(-1) })).toMatchObject({
      reasons: ['expired'],
      packsOffered: 0,
      codes: ['E5001'],
    });
    expect(judge(powder, { expires: day(-1) }).problem).toMatchObject({
      about: { part: 'lots', id: 'L' },
      column: 'expires',
      weight: 'noted',
    });
  });

  it('only where the chance of sowing before expiry is 0.9: 9 of 10 seasons will do, 8 will not', () => {
    const tenSeasons = [1, 2, 3, 4, 5, 6, 7, 8, 9, 30];
    const expires = day(10);
    expect(judge(powder, { expires }, tenSeasons)).toMatchObject({ reasons: [], chanceSownBeforeExpiry: 0.9 });
    const eight = judge(powder, { expires: day(9) }, tenSeasons);
    expect(eight).toMatchObject({ reasons: ['expires-before-sowing'], chanceSownBeforeExpiry: 0.8, codes: ['E5002'] });
  });

  it('a season without onset says nothing about expiry', () => {
    expect(judge(powder, { expires: day(10) }, [5, Number.NaN, Number.NaN])).toMatchObject({
      reasons: [],
      chanceSownBeforeExpiry: 1,
    });
    expect(judge(powder, { expires: day(10) }, [Number.NaN]).chanceSownBeforeExpiry).toBeNaN();
  });

  it('not on hold, unless a named person cleared the flag; not awaiting, cleared or not', () => {
    const clear: Decision = {
      kind: 'flag-cleared',
      lotId: 'L',
      evidence: 'count of 9e8 per g, laboratory of the ministry',
      by: 'M. N.',
    };
    expect(judge(powder, { status: 'on_hold' })).toMatchObject({ reasons: ['on-hold'], codes: ['E5003'] });
    expect(judge(powder, { status: 'on_hold' }, [5], [clear])).toMatchObject({ reasons: [], packsOffered: 36 });
    expect(judge(powder, { status: 'awaiting' }, [5], [clear])).toMatchObject({
      reasons: ['awaiting'],
      codes: ['E5004'],
    });
  });

  it('not below the minimum count, 5e7 per g on a carrier (India, Fertiliser (Control) Order Schedule III, read); the test comes before the label', () => {
    expect(judge(powder, { testedCountPerG: 4.9e7 })).toMatchObject({
      reasons: ['count-below-minimum'],
      codes: ['E5005'],
    });
    expect(judge(powder, { testedCountPerG: 5e7 }).reasons).toEqual([]);
    expect(judge({ ...powder, countPerG: 1e7 }, { testedCountPerG: 6e7 }).reasons).toEqual([]);
    expect(judge({ ...powder, countPerG: 1e7 }, {}).reasons).toEqual(['count-below-minimum']);
  });

  it('the minimum is asked of what is left when planning begins: 5e7 tested 60 days before, kept at 6 °C, is banned', () => {
    const stored = judge(powder, { testedCountPerG: 5e7, testedOn: day(-60) });
    // 28 days at 40 °C for a tenth part, ten times as long for every 18 K less: 60 days cost 0.0277 log10.
    expect(stored.countPerG).toBeCloseTo(5e7 * 10 ** -(60 / (28 * 10 ** (34 / 18))), 0);
    expect(stored).toMatchObject({ reasons: ['count-below-minimum'], codes: ['E5005'] });
    expect(judge(powder, { testedCountPerG: 5.5e7, testedOn: day(-60) }).reasons).toEqual([]);
  });

  it('not where nobody states a count', () => {
    expect(judge({ ...powder, countPerG: null }, {})).toMatchObject({
      reasons: ['count-below-minimum'],
      codes: ['E5011'],
    });
  });

  it('seed not below its minimum germination, where it was tested', () => {
    expect(judge(seed, { germinationPercent: 69 })).toMatchObject({
      reasons: ['germination-below-minimum'],
      codes: ['E5006'],
    });
    expect(judge(seed, { germinationPercent: 70 }).reasons).toEqual([]);
    expect(judge(seed, { germinationPercent: null }).reasons).toEqual([]);
  });

  it('treated seed only where its label allows inoculant in words', () => {
    for (const inoculantAllowed of [null, false]) {
      const verdict = judge({ ...seed, treatedSeed: true, inoculantAllowed }, {});
      expect(verdict).toMatchObject({ reasons: ['treated-seed-not-for-inoculant'], codes: ['E5007'] });
    }
    expect(judge({ ...seed, treatedSeed: true, inoculantAllowed: true }, {}).reasons).toEqual([]);
  });

  it('not after the last planning day; on it, and noted, it is still of use', () => {
    expect(judge(seed, { availableFrom: dayNumber(LAST_DAY + 1) })).toMatchObject({
      reasons: ['available-too-late'],
      codes: ['E5008'],
    });
    expect(judge(seed, { availableFrom: dayNumber(LAST_DAY) })).toMatchObject({ reasons: [], codes: ['E5012'] });
    expect(judge(seed, { availableFrom: day(-30) })).toMatchObject({ reasons: [], codes: [] });
  });

  it('not for a crop that has a column but no hectares, nor at a depot that is not there', () => {
    expect(judge(sachet(['cowpea']), {})).toMatchObject({ reasons: ['no-crop-planned'], codes: ['E5009'] });
    expect(judge(seed, { depotId: 'ELSEWHERE' })).toMatchObject({ reasons: ['unknown-depot'], codes: ['E5010'] });
  });

  it('tells every reason of one lot', () => {
    const { reasons } = judge(powder, { expires: day(-1), status: 'on_hold', testedCountPerG: 1 });
    expect(reasons).toEqual(['expired', 'on-hold', 'count-below-minimum']);
  });
});
