import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { loadPlanningTools } from '../../../../src/adapters/tools/load-planning-tools.ts';
import {
  dayFromCivil,
  dayNumber,
  isoDate,
  openReplay,
  type ProblemCode,
  replaySeasons,
} from '../../../../src/engine/index.ts';
import { renderReport } from '../../../../src/presentation/report/render-report.ts';
import { coverageMethod } from '../../../../src/presentation/views/coverage-method.ts';
import { english } from '../../../../src/presentation/wording/words.ts';
import { tinyWithFertiliser, withText } from '../../../fertiliser-files.ts';
import { type Files, planFiles, readFolderFiles } from '../../../plan-files.ts';

const tiny = readFolderFiles(fileURLToPath(new URL('../../../../scenarios/tiny-district', import.meta.url)));
const { overlay } = await loadPlanningTools();

/** The tiny district with scenario.json changed. */
function withScenario(change: (scenario: Record<string, unknown>) => void, files: Files = tiny): Files {
  return withText(files, 'scenario.json', (text) => {
    const scenario = JSON.parse(text) as Record<string, unknown>;
    change(scenario);
    return JSON.stringify(scenario);
  });
}

/** The tiny district with one crop as another, in every file. */
function withCrop(crop: string, other: string, files: Files = tiny): Files {
  return [...files.keys()].reduce<Files>(
    (changed, name) => withText(changed, name, (text) => text.replaceAll(crop, other)),
    files,
  );
}

/** The tiny district with the weather of years before: dry until planting rain on 25 November, then rain every fifth day. */
function withYears(years: readonly number[]): Files {
  return withText(tiny, 'weather.csv', (text) => {
    const rows = years.flatMap((year) => {
      const from = dayFromCivil(year, 10, 1);
      return Array.from({ length: 150 }, (_, day) => {
        const rain = day >= 55 && day % 5 === 0 ? 25 : 0;
        return `RISE-MET,-13.05,31.1,1180,${isoDate(dayNumber(from + day))},18,32,${rain}`;
      });
    });
    return `${text.trimEnd()}\n${rows.join('\n')}\n`;
  });
}

const facts = (files: Files, code: ProblemCode) =>
  planFiles(files)
    .plan.problems.filter((problem) => problem.code === code)
    .map((problem) => problem.facts);

describe('what the outcomes must not guess', () => {
  it('E7002: a crop without a published response gains nothing by its inoculant', () => {
    const files = withCrop('soybean', 'pigeonpea');
    const { plan } = planFiles(files);
    expect(facts(files, 'E7002')).toEqual([{ crop: 'pigeonpea' }]);
    expect(plan.outcomes.headline.inoculationGrainT).toMatchObject({ p10: 0, p90: 0 });
    const place = plan.ids.crops.indexOf('pigeonpea');
    const { crop } = plan.allocation.shares;
    const grain = plan.outcomes.crops.grainT.filter((_, row) => crop[row] === place);
    expect(Math.max(...grain)).toBeGreaterThan(0);
  });

  it('E7005: a few past seasons are said to be few, and five are not', () => {
    expect(facts(tiny, 'E7005')).toEqual([{ seasons: 1 }]);
    expect(facts(withYears([2025, 2024, 2023, 2022]), 'E7005')).toEqual([{ seasons: 4 }]);
    expect(facts(withYears([2025, 2024, 2023, 2022, 2021]), 'E7005')).toEqual([]);
  });

  it('E7006: bags whose phosphorus is not stated add nothing, and are named', () => {
    const { plan } = planFiles(tinyWithFertiliser(40, ''));
    const told = plan.problems.filter(({ code }) => code === 'E7006');
    expect(told.map(({ column, facts: of }) => [column, of['product']])).toEqual([['p_percent', 'PHOSPHATE']]);
    expect(plan.outcomes.headline.phosphorusGrainT?.p90).toBe(0);
    expect(facts(tinyWithFertiliser(40), 'E7006')).toEqual([]);
  });

  it('E7007: a missing price of grain leaves its worth unstated; with all prices it is stated', () => {
    const files = withScenario((scenario) => {
      scenario['prices'] = { nitrogen: 1.5, grain: { soybean: 400 } };
    });
    expect(facts(files, 'E7007')).toEqual([{ crop: 'groundnut' }]);
    expect(planFiles(files).plan.outcomes.headline.programmeGrainWorth).toBeNull();
    expect(facts(tiny, 'E7007')).toEqual([]);
    expect(planFiles(tiny).plan.outcomes.headline.programmeGrainWorth?.p50).toBeGreaterThan(0);
  });

  it('E7008: a crop without residue coefficients is left out of residue nitrogen, and of nothing else', () => {
    expect(facts(tiny, 'E7008')).toEqual([{ crop: 'groundnut' }]);
    expect(facts(withCrop('groundnut', 'cowpea'), 'E7008')).toEqual([]);
    const less = planFiles(tiny).plan.outcomes.headline.central.residueNitrogenKg as number;
    const all = planFiles(withCrop('groundnut', 'cowpea')).plan.outcomes.headline.central.residueNitrogenKg as number;
    expect(all).toBeGreaterThan(less);
  });

  it('E7009: a yield ten times too high is reckoned with as given, and said to be unusual', () => {
    const files = withScenario((scenario) => {
      scenario['yields'] = { soybean: 10, groundnut: 1.007 };
    });
    expect(facts(files, 'E7009')).toEqual([{ crop: 'soybean', yield: 10, usual: 1.28 }]);
    expect(facts(tiny, 'E7009')).toEqual([]);
  });

  it('E7010: bags for a crop without a published response to phosphorus add nothing to it', () => {
    const told = facts(withCrop('groundnut', 'common_bean', tinyWithFertiliser(80)), 'E7010');
    expect(told).toEqual([{ crop: 'common_bean' }]);
    expect(facts(tinyWithFertiliser(80), 'E7010')).toEqual([]);
  });
});

describe('what was left open is on the page', () => {
  const files = withScenario(
    (scenario) => {
      scenario['prices'] = {};
      scenario['yields'] = { lentil: 12.8 };
    },
    withCrop('soybean', 'lentil'),
  );
  const { plan, scenario, decisions } = planFiles(files);
  const replay = openReplay(scenario, decisions, plan, null, overlay);
  const page = renderReport({
    plan,
    scenario,
    printed: replaySeasons(replay, 'as-printed'),
    zoneNames: replay.zoneNames,
  });
  const { leftOpen, cropsWithoutResponse } = coverageMethod(plan);

  it('in the coverage view: no response, few seasons, no prices, an unusual yield', () => {
    expect(cropsWithoutResponse).toEqual(['lentil']);
    expect(leftOpen.map(({ code }) => code)).toEqual(expect.arrayContaining(['E7005', 'E7007', 'E7009']));
  });

  it('in the report, in the same words, and nothing is made up for it', () => {
    const plainly = page.replaceAll('&#39;', "'");
    for (const problem of leftOpen) expect(plainly).toContain(english.problemOf[problem.code].what(problem));
    expect(plainly).toContain('not stated: a price is missing');
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
  });
});
