import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../src/engine/checker/check-plan.ts';
import { smallPlan } from './small-plan.ts';
import { noDecisions, smallScenario } from './small-scenario.ts';
import { applySpoil, SPOILS } from './spoiled-plans.ts';

const sound = { scenario: smallScenario, decisions: noDecisions, plan: smallPlan };

test('the plan worked by hand holds', () => {
  expect(checkPlan(smallScenario, noDecisions, smallPlan)).toEqual([]);
});

describe('a spoiled plan is caught', () => {
  test.each(SPOILS)('$code $name', (spoil) => {
    const spoiled = applySpoil(spoil, sound);
    expect(spoiled, 'the small plan has nothing to spoil in this way').not.toBeNull();
    if (!spoiled) return;
    const codes = checkPlan(spoiled.scenario, spoiled.decisions, spoiled.plan).map(({ code }) => code);
    expect(codes).toContain(spoil.code);
  });
});
