import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { makeDemoDistrict } from '../../scenarios/demo-district/generate/make-demo-district.mjs';
import { checkPlan } from '../../src/engine/index.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';

const folder = fileURLToPath(new URL('../../scenarios/demo-district/', import.meta.url));
const { scenario, decisions, plan, problems } = planFiles(readFolderFiles(folder), 400);

describe('the demonstration district', () => {
  it('is what its generator writes, file by file', () => {
    const made = new Map<string, string>();
    makeDemoDistrict((name: string, text: string) => made.set(name, text));
    expect(made.size).toBeGreaterThan(9);
    for (const [name, text] of made) expect(readFileSync(`${folder}${name}`, 'utf8') === text, name).toBe(true);
  });

  it('holds what it promises: 180 communities in 14 zones, two depots and a seed group, 8 vehicles of 3 kinds, 30 seasons', () => {
    expect([scenario.communities.length, scenario.zones.length]).toEqual([180, 14]);
    expect(scenario.depots.map(({ kind }) => kind).sort()).toEqual(['depot', 'depot', 'seed_group']);
    expect(scenario.vehicles).toHaveLength(8);
    expect(new Set(scenario.vehicles.map(({ kind }) => kind)).size).toBe(3);
    expect(scenario.weather).toHaveLength(3);
    expect(scenario.roads.some(({ closedFrom }) => closedFrom !== null)).toBe(true);
    expect(problems.filter(({ weight }) => weight !== 'noted')).toEqual([]);
  });

  it('is short where it should be, and says why', () => {
    const short = (commodity: string, crop: string) =>
      plan.allocation.proofs.find(
        (p) => p.commodity === commodity && p.crops.includes(scenario.crops.indexOf(crop as never)),
      );
    expect(short('inoculant', 'soybean')?.bound).toBeLessThan(0.85);
    expect(short('seed', 'cowpea')?.bound).toBeLessThan(0.85);
    const reasons = new Set(plan.allocation.lots.reasons.flat());
    expect(reasons.has('on-hold') && reasons.has('germination-below-minimum')).toBe(true);
  });

  it('makes a plan that the checker accepts', () => expect(checkPlan(scenario, decisions, plan)).toEqual([]));
});
