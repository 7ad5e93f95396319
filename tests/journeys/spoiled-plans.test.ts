import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../src/engine/index.ts';
import { applySpoil, SPOILS } from '../engine/checker/spoiled-plans.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';

/** The list in the checker's README, put to plans that the pipeline made. A plan without a row to spoil is passed over. */
describe.each(['tiny-district', 'demo-district'])('the plan of %s, spoiled', (name) => {
  const sound = planFiles(readFolderFiles(fileURLToPath(new URL(`../../scenarios/${name}`, import.meta.url))), 300);
  const spoiled = SPOILS.map((spoil) => ({ spoil, found: applySpoil(spoil, sound) }));

  it('can be spoiled in more than a hundred of the ways listed', () => {
    expect(spoiled.filter(({ found }) => found !== null).length).toBeGreaterThan(100);
  });

  it.each(spoiled.filter(({ found }) => found !== null))('$spoil.code $spoil.name', ({ spoil, found }) => {
    if (!found) return;
    expect(checkPlan(found.scenario, found.decisions, found.plan).map(({ code }) => code)).toContain(spoil.code);
  });
});
