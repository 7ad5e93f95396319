import { describe, expect, it } from 'vitest';
import { readScenarioFolder } from '../../../../src/adapters/scenario-files/read-folder.ts';
import { loadPlanningTools } from '../../../../src/adapters/tools/load-planning-tools.ts';
import { readScenario } from '../../../../src/engine/stages/1-intake/read-scenario.ts';
import { locatePlaces } from '../../../../src/engine/stages/2-places/locate-places.ts';
import { outlookSeason } from '../../../../src/engine/stages/3-season/outlook-season.ts';
import { estimateNeeds } from '../../../../src/engine/stages/4-needs/estimate-needs.ts';
import { allocateStock } from '../../../../src/engine/stages/5-allocation/allocate-stock.ts';
import { SHARED_ABSENT, sharedFolder } from '../../../shared-folder.ts';

const allocated = new Map<string, ReturnType<typeof allocateAfresh>>();

function allocateFolder(name: string) {
  const found = allocated.get(name) ?? allocateAfresh(name);
  allocated.set(name, found);
  return found;
}

async function allocateAfresh(name: string) {
  const tools = await loadPlanningTools();
  const { scenario, decisions } = readScenario(readScenarioFolder(`${sharedFolder}/scenarios/${name}`));
  if (!scenario) throw new Error(`${name} is not readable`);
  const places = locatePlaces(scenario, decisions, tools.overlay).result;
  const season = outlookSeason(scenario, places).result;
  const needs = estimateNeeds(scenario, places).result;
  const begun = performance.now();
  const { result, problems } = allocateStock(scenario, decisions, places, season, needs, tools.solver, null);
  return { scenario, result, problems, seconds: (performance.now() - begun) / 1000 };
}

/** Trap lots of the scenarios' READMEs: [expired, tested below the minimum, arrives late, germinates at 58 percent]. */
const TRAPS = {
  'rwanda-sectors': ['LOT-069-EXPIRED', 'LOT-070-LOWCOUNT', 'LOT-071-LATE', 'LOT-072-LOWGERM'],
  'sahel-east': ['LOT-049-EXPIRED', 'LOT-050-LOWCOUNT', 'LOT-051-LATE', 'LOT-052-LOWGERM'],
  'south-malawi-roads': ['LOT-049-EXPIRED', 'LOT-050-LOWCOUNT', 'LOT-051-LATE', 'LOT-052-LOWGERM'],
} as const;

describe.skipIf(sharedFolder === null)(`stock of the scenarios on real layers (${SHARED_ABSENT} otherwise)`, () => {
  it.each(Object.entries(TRAPS))(
    '%s: every trap is found and coded, and nothing of it is given',
    async (name, traps) => {
      const { scenario, result, problems, seconds } = await allocateFolder(name);
      const codeOf = (lot: string) => problems.filter(({ facts }) => facts['lot'] === lot).map(({ code }) => code);
      expect(traps.map(codeOf)).toEqual([['E5001'], ['E5005'], ['E5012'], ['E5006']]);
      const given = new Set(Array.from(result.grants.lot, (lot) => scenario.lots[lot]?.id));
      for (const lot of [traps[0], traps[1], traps[3]]) expect(given.has(lot)).toBe(false);
      const treated = scenario.lots.flatMap(({ productId }, lot) => (productId.includes('TREATED') ? [lot] : []));
      expect(treated.length).toBeGreaterThan(0);
      for (const lot of treated) expect(result.lots[lot]?.reasons).toEqual(['treated-seed-not-for-inoculant']);
      // Each pool's least share is the largest there is: the proof's prices bound it from above.
      for (const { bound, leastShare } of result.proofs) expect(bound - leastShare).toBeLessThan(1e-9);
      expect(seconds).toBeLessThan(5);
    },
  );

  it('rwanda-sectors: the sector without a road, S3103, is out of reach and is given nothing', async () => {
    const { scenario, result } = await allocateFolder('rwanda-sectors');
    const sector = scenario.communities.findIndex(({ id }) => id === 'S3103');
    expect(Array.from(result.grants.community)).not.toContain(sector);
    const reasons = result.shortfalls
      .filter(({ shareRow, commodity }) => result.shares.community[shareRow] === sector && commodity === 'seed')
      .map(({ reason }) => reason);
    expect(new Set(reasons)).toEqual(new Set(['not-reachable']));
  });

  it('south-malawi-roads: nothing goes to the five that lie 33 to 48 km from any road', async () => {
    const { scenario, result } = await allocateFolder('south-malawi-roads');
    const far = ['V004', 'V024', 'V026', 'V049', 'V075'];
    const given = new Set(Array.from(result.grants.community, (c) => scenario.communities[c]?.id));
    for (const id of far) expect(given.has(id)).toBe(false);
  });

  it('sahel-east: one peat product serves cowpea and Bambara groundnut by one share', async () => {
    const { scenario, result } = await allocateFolder('sahel-east');
    const pools = result.proofs.filter(({ commodity }) => commodity === 'inoculant');
    expect(pools.map(({ crops }) => crops.map((crop) => scenario.crops[crop]))).toContainEqual(['cowpea', 'bambara']);
  });
});
