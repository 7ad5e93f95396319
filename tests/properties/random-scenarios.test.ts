import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../src/engine/index.ts';
import { planFiles } from '../plan-files.ts';
import { randomScenario } from './random-scenario.ts';

/** 40 in every run; `npm run test:long` asks for 500. */
const COUNT = Number(process.env['NODULARY_RANDOM_SCENARIOS'] ?? 40);
const FIRST = Number(process.env['NODULARY_FIRST_SEED'] ?? 1);
const seeds = Array.from({ length: COUNT }, (_, i) => FIRST + i);

describe('plans of invented scenarios', () => {
  it.each(seeds)('the checker accepts the plan of odd scenario %i', (seed) => {
    const { scenario, decisions, plan } = planFiles(randomScenario(seed, 'any'), 300);
    expect(checkPlan(scenario, decisions, plan)).toEqual([]);
  });

  it.each(seeds.filter((seed) => seed % 2 === 0))(
    'nothing is left out where stock and vehicles are ample: %i',
    (seed) => {
      const { scenario, decisions, plan } = planFiles(randomScenario(seed, 'ample'), 300);
      expect(checkPlan(scenario, decisions, plan)).toEqual([]);
      expect(plan.delivery.unserved.reason).toEqual([]);
      expect(plan.allocation.shortfalls.reason.filter((reason) => reason !== 'pack-rounding')).toEqual([]);
    },
  );
});
