import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../src/engine/checker/check-plan.ts';
import { tinyWithFertiliser } from '../../fertiliser-files.ts';
import { planFiles } from '../../plan-files.ts';
import { FERTILISER_SPOILS } from './spoils/fertiliser.ts';
import { applySpoil } from './spoils/spoil.ts';

/** Bags for half of the land that has seed. */
const sound = planFiles(tinyWithFertiliser(52), 300);

test('a plan with fertiliser for half of the land holds, and hands most of it over', () => {
  expect(checkPlan(sound.scenario, sound.decisions, sound.plan)).toEqual([]);
  expect(sound.plan.outcomes.headline.fertilisedHa).toBeGreaterThan(6);
});

describe('a spoiled plan is caught', () => {
  test.each(FERTILISER_SPOILS)('$code $name', (spoil) => {
    const spoiled = applySpoil(spoil, sound);
    expect(spoiled, 'the plan has nothing to spoil in this way').not.toBeNull();
    if (!spoiled) return;
    const codes = checkPlan(spoiled.scenario, spoiled.decisions, spoiled.plan).map(({ code }) => code);
    expect(codes).toContain(spoil.code);
  });
});
