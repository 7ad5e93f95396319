import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import {
  comparePlans,
  halfWidthShare,
  openReplay,
  planSeason,
  playHere,
  rankRun,
  readScenario,
  replaySeasons,
  type SureSpreads,
  spreadRun,
  worstSeasons,
} from '../../../src/engine/index.ts';
import { drawParameters, makePlayResult, playSeason } from '../../../src/engine/pipeline.ts';
import { SPREAD_TOTALS } from '../../../src/engine/replay/spread-over-draws.ts';
import { explainSeason } from '../../../src/presentation/explain-season.ts';
import { grouped } from '../../../src/presentation/grouped-figure.ts';
import { replayLines } from '../../../src/presentation/replay-lines.ts';
import { paperWords } from '../../../src/presentation/wording/paper-words.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { bytesPutOnHeap } from '../../benchmarks/heap-profile.ts';
import { readFolderFiles } from '../../plan-files.ts';

const folder = fileURLToPath(new URL('../../../scenarios/demo-district', import.meta.url));
const { scenario, decisions } = readScenario(recordsFromFiles(readFolderFiles(folder)));
if (!scenario) throw new Error('the demonstration district is blocked');
const tools = await loadPlanningTools();
const settings = { seed: 1, iterations: 200, stop: null, progress: null };
const { plan, stages } = planSeason(scenario, decisions, null, settings, tools);
const other = planSeason(scenario, decisions, stages, { ...settings, seed: 2, iterations: 50 }, tools).plan;
const replay = openReplay(scenario, decisions, plan, null, tools.overlay);
const printed = replaySeasons(replay, 'as-printed');
const released = replaySeasons(replay, 'with-release');
const prepared = replay.play('as-printed');
/** Few seasons, for the time it takes: what the ends of a range are off by comes of the draws. */
const few = { ...prepared, members: Math.min(2, prepared.members) };

describe('a plan document played in past seasons', () => {
  it('gives what the plan itself records of them', () => {
    expect(printed.seasons.map(({ year }) => year)).toEqual(plan.outcomes.seasons.year);
    printed.seasons.forEach(({ reachedHa, cost, lostHa }, i) => {
      expect(reachedHa).toBeCloseTo(plan.outcomes.seasons.reachedHa[i] ?? -1, 2);
      expect(lostHa.late).toBeCloseTo(plan.outcomes.seasons.lateHa[i] ?? -1, 2);
      expect(cost).toBe(plan.outcomes.seasons.cost[i]);
    });
  });

  it('accounts for every inoculated hectare, and for where each lost one lies', () => {
    for (const { seasons, inoculatedHa } of [printed, released])
      for (const { reachedHa, lostHa, zoneLosses, valueKept } of seasons) {
        const lost = Object.values(lostHa).reduce((sum, ha) => sum + ha, 0);
        expect(reachedHa + lost).toBeCloseTo(inoculatedHa, 4);
        expect(zoneLosses.reduce((sum, { hectares }) => sum + hectares, 0)).toBeCloseTo(lost, 4);
        expect(valueKept).toBeGreaterThanOrEqual(0);
        expect(valueKept).toBeLessThanOrEqual(1 + 1e-12);
      }
  });

  it('moves goods later by the release rule, never sooner', () => {
    const later = replay.play('with-release').visitDay;
    later.forEach((day, i) => {
      if (!Number.isNaN(day)) expect(day).toBeGreaterThanOrEqual(prepared.visits[i % prepared.visits.length]?.day ?? 0);
    });
  });

  it('names the worst three and says what failed and where', () => {
    const worst = worstSeasons(printed, 3);
    const fewest = printed.seasons.map(({ reachedHa }) => reachedHa).sort((a, b) => a - b);
    expect(worst.map(({ reachedHa }) => reachedHa)).toEqual(fewest.slice(0, 3));
    for (const season of worst) {
      const text = explainSeason(
        season,
        printed,
        { scenario, zoneNames: replay.zoneNames },
        paperWords(english).replay,
        grouped,
      );
      expect(text).toContain('would have been');
      const lost = Object.values(season.lostHa).some((ha) => ha >= 0.05);
      if (lost) expect(text).toMatch(/most of it in [A-Z]/);
    }
  });
});

describe('two plans side by side', () => {
  it('differ by nothing from themselves', () => {
    expect(comparePlans(printed, printed)).toMatchObject({ better: 0, worse: 0, meanHa: 0 });
  });

  it('differ season by season by what each gives', () => {
    const second = replaySeasons(openReplay(scenario, decisions, other, null, tools.overlay), 'as-printed');
    const { seasons, meanHa, better, worse } = comparePlans(printed, second);
    const mean = (of: typeof printed) =>
      of.seasons.reduce((sum, { reachedHa }) => sum + reachedHa, 0) / of.seasons.length;
    expect(meanHa).toBeCloseTo(mean(second) - mean(printed), 8);
    expect(better).toBe(seasons.filter(({ reachedHa }) => reachedHa > 1e-6).length);
    expect(better + worse).toBeGreaterThan(0);
  });

  it('are not compared over different seasons', () => {
    expect(() => comparePlans(printed, { ...printed, seasons: printed.seasons.slice(1) })).toThrow(RangeError);
  });
});

describe('ranges over draws', () => {
  const ask = { draws: 600, seed: 1 };
  const told: number[] = [];
  const run = spreadRun(few, ask);
  const spreads = playHere(run, { progress: (share) => told.push(share) });

  it('rise, and tell how far they have come', () => {
    expect(spreads).not.toBeNull();
    for (const { p10, p25, p50, p75, p90 } of Object.values(spreads ?? {}))
      expect([p10, p25, p50, p75, p90]).toEqual([p10, p25, p50, p75, p90].sort((a, b) => a - b));
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(1);
  });

  it('are the same whoever plays which piece, in whatever order, from a copy of what is played', () => {
    const copy = spreadRun(structuredClone(few), ask);
    const played = new Array<Float64Array>(copy.pieces);
    for (let piece = copy.pieces - 1; piece >= 0; piece--) played[piece] = copy.play(piece);
    expect(JSON.stringify(copy.gather(played))).toBe(JSON.stringify(spreads));
  });

  it('stop when asked', () => {
    let asked = 0;
    expect(playHere(run, { stop: () => ++asked > 3 })).toBeNull();
    expect(asked).toBe(4);
    const ranking = rankRun(prepared, { outcomes: ['reachedHa'], rows: 64, seed: 1 });
    expect(playHere(ranking, { stop: () => true })).toBeNull();
  });

  it('have ends within 2 percent at 4000 draws, of themselves or, where they may be nought, of their range', () => {
    const sure = playHere(spreadRun(few, { draws: 4000, seed: 1 }));
    const shares = SPREAD_TOTALS.map((name) => halfWidthShare(name, sure?.[name] as SureSpreads[typeof name]));
    for (const share of shares) expect(share).toBeLessThanOrEqual(0.02);
    expect(Math.max(...shares)).toBeGreaterThan(0.002);
  });

  it('have nothing to say of no draws', () => expect(playHere(spreadRun(prepared, { draws: 0, seed: 1 }))).toBeNull());
});

describe('which unknowns matter', () => {
  const ask = { outcomes: ['reachedHa', 'programmeNitrogenKg'], rows: 256, seed: 1 } as const;
  const ranked = playHere(rankRun(prepared, ask));

  it('gives nothing to what cannot touch an outcome: yield, response and the nitrogen method leave hectares alone', () => {
    for (const { unknown, first, total } of ranked?.reachedHa ?? [])
      if (['yield', 'response', 'nitrogenMethod', 'shareFromAir'].includes(unknown))
        expect([Math.abs(first), total]).toEqual([0, 0]);
  });

  it('explains most of the nitrogen by method, share from the air and yield', () => {
    const share = (name: string) => ranked?.programmeNitrogenKg?.find(({ unknown }) => unknown === name)?.total ?? 0;
    expect(share('nitrogenMethod') + share('shareFromAir') + share('yield')).toBeGreaterThan(0.6);
    const totals = ranked?.programmeNitrogenKg?.map(({ total }) => total) ?? [];
    expect(totals).toEqual([...totals].sort((a, b) => b - a));
  });
});

describe('a play', () => {
  it('puts nothing on the heap: less than one number for each parcel, by the heap profile of warm plays', () => {
    const draws = drawParameters(40, prepared.shape, 3);
    const into = makePlayResult(prepared);
    const playAll = () => {
      for (const draw of draws)
        for (let member = 0; member < prepared.members; member++) playSeason(prepared, member, draw, into);
    };
    for (let warm = 0; warm < 3; warm++) playAll();
    // Tests run the engine's source file by file, where the compiler joins less than in the build: `npm run bench:play` has that.
    const bytes = bytesPutOnHeap(playAll) / (draws.length * prepared.members);
    expect(bytes).toBeLessThan(16 * prepared.parcels.field.length);
  });
});

it('is told in lines that promise nothing', () => {
  const text = replayLines({
    plan,
    scenario,
    zoneNames: replay.zoneNames,
    printed,
    released,
    draws: 0,
    spreads: null,
    unknowns: null,
    other: { name: 'other.json', printed },
  });
  expect(text).toContain('It promises no yield');
  expect(text).toContain('chosen on the same seasons');
  expect(text.split('\n').filter((line) => /^\d{4}\/\d\d /.test(line)).length).toBe(2 * printed.seasons.length);
});
