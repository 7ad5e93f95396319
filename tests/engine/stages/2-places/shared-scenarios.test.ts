import { describe, expect, it } from 'vitest';
import { loadGeosOverlay } from '../../../../src/adapters/geometry/geos-overlay.ts';
import { readScenarioFolder } from '../../../../src/adapters/scenario-files/read-folder.ts';
import type { Places, Problem, Scenario } from '../../../../src/engine/index.ts';
import { geodesicKm, lineKm } from '../../../../src/engine/numerics/geodesic-length.ts';
import { readScenario } from '../../../../src/engine/stages/1-intake/read-scenario.ts';
import { findRoadPieces } from '../../../../src/engine/stages/2-places/find-road-pieces.ts';
import { locatePlaces } from '../../../../src/engine/stages/2-places/locate-places.ts';
import { measureRoads } from '../../../../src/engine/stages/2-places/measure-roads.ts';
import { openLegTracer } from '../../../../src/engine/stages/2-places/trace-legs.ts';
import { SHARED_ABSENT, sharedFolder } from '../../../shared-folder.ts';

interface LocatedScenario {
  readonly scenario: Scenario;
  readonly places: Places;
  readonly problems: readonly Problem[];
}

async function locate(name: string): Promise<LocatedScenario> {
  const { scenario, decisions } = readScenario(readScenarioFolder(`${sharedFolder}/scenarios/${name}`));
  if (scenario === null) throw new Error(`${name} was not read`);
  const { result, problems } = locatePlaces(scenario, decisions, await loadGeosOverlay());
  return { scenario, places: result, problems };
}

const ids = (problems: readonly Problem[], code: string) =>
  problems
    .filter((one) => one.code === code)
    .map(({ facts }) => String(facts['id']))
    .sort();

const areaHa = ({ scenario, places }: LocatedScenario, id: string): number => {
  const community = scenario.communities.findIndex((one) => one.id === id);
  const zone = scenario.zones.findIndex((one) => one.id === id);
  return (places.communityAreaHa[community] ?? places.zoneAreaHa[zone]) as number;
};

const roadKm = ({ scenario }: LocatedScenario) =>
  scenario.roads.reduce((km, { positions }) => km + lineKm(positions), 0);

/** Ids of communities by the id of their zone; '' outside all zones. A straddler stands in each of its zones. */
function communitiesByZone({ scenario, places }: LocatedScenario): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const [k, community] of places.shares.community.entries()) {
    const zone = scenario.zones[places.shares.zone[k] as number]?.id ?? '';
    found.set(zone, [...(found.get(zone) ?? []), scenario.communities[community]?.id ?? '']);
  }
  return found;
}

/** Every 97th leg of every table is traced: the same minutes and kilometres, to the last bit. */
function traceSome({ scenario, places }: LocatedScenario): number {
  const trace = openLegTracer(scenario, places);
  let traced = 0;
  for (const [vehicleClass, sets] of places.travel.tables.entries()) {
    for (const [closureSet, states] of sets.entries()) {
      for (const [roadState, table] of states.entries()) {
        for (let from = 0; from + 1 < table.offsets.length; from++) {
          for (let k = table.offsets[from] as number; k < (table.offsets[from + 1] as number); k++) {
            if (k % 97 !== 0) continue;
            const path = trace(vehicleClass, closureSet, roadState, from, table.destinations[k] as number);
            expect(path.minutes).toBe(table.minutes[k]);
            expect(path.kilometres).toBe(table.kilometres[k]);
            traced++;
          }
        }
      }
    }
  }
  return traced;
}

describe.skipIf(sharedFolder === null)(`real layers (${SHARED_ABSENT} where it is absent)`, () => {
  it('rwanda-sectors: areas, zones by areal weighting, the sector without a road', async () => {
    const rwanda = await locate('rwanda-sectors');
    // EPSG:6933 by SpatiaLite; the whole to 1e-5, though our edges are straight in longitude and latitude.
    expect(Math.abs(areaHa(rwanda, 'S5314') / 64786.071 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(areaHa(rwanda, 'S3103') / 4416.164 - 1)).toBeLessThan(1e-5);
    expect(roadKm(rwanda)).toBeCloseTo(7372.3, 1);
    const byZone = communitiesByZone(rwanda);
    expect(rwanda.places.shares.community.length).toBe(416);
    for (const [zone, sectors] of byZone) for (const sector of sectors) expect(sector.slice(1, 3)).toBe(zone);
    expect(byZone.size).toBe(30);
    expect(ids(rwanda.problems, 'E2005')).toEqual(['S1107', 'S1109', 'S1110', 'S1213']);
    expect(ids(rwanda.problems, 'E2010')).toEqual(['S3103']);
    expect(rwanda.places.unreachable.map(({ reason }) => reason)).not.toContain('no-way-there-and-back');
    expect(rwanda.problems.map(({ code }) => code).filter((code) => !['E2005', 'E2010'].includes(code))).toEqual([]);
    expect(traceSome(rwanda)).toBeGreaterThan(5000);
  });

  it('sahel-east: invalid rings found and repaired, departments per region', async () => {
    const sahel = await locate('sahel-east');
    const repaired = {
      'BF-D091': 43887.033,
      'BF-D193': 33425.073,
      'BF-D306': 93315.141,
      'BF-D309': 253381.016,
      'BF-EST': 4656184.627,
    };
    expect(ids(sahel.problems, 'E2001')).toEqual(Object.keys(repaired));
    for (const [id, hectares] of Object.entries(repaired)) {
      expect(Math.abs(areaHa(sahel, id) / hectares - 1)).toBeLessThan(1e-5);
    }
    expect(Math.abs(areaHa(sahel, 'BF-D205') / 497806.829 - 1)).toBeLessThan(1e-5);
    expect(roadKm(sahel)).toBeCloseTo(8345.2, 1);
    const counts = [...communitiesByZone(sahel)].map(([zone, communities]) => [zone, communities.length]);
    expect(new Map(counts as [string, number][])).toEqual(
      new Map([
        ['BF-EST', 27],
        ['BF-SAHEL', 26],
        ['BF-CENTRE-EST', 30],
      ]),
    );
    expect(ids(sahel.problems, 'E2010')).toEqual([]);
    expect(traceSome(sahel)).toBeGreaterThan(300);
  });

  it('south-malawi-roads: a network in pieces, communities beyond all roads and zones', async () => {
    const malawi = await locate('south-malawi-roads');
    const beyond = ['V004', 'V024', 'V026', 'V049', 'V075'];
    expect(Math.abs(areaHa(malawi, 'Z1') / 79887.53 - 1)).toBeLessThan(1e-5);
    expect(roadKm(malawi)).toBeCloseTo(2719.2, 1);
    const measured = measureRoads(malawi.scenario.roads);
    const all = findRoadPieces(measured, () => true);
    const driven = findRoadPieces(measured, (road) => malawi.scenario.roads[road]?.roadClass !== 'path');
    expect([all.count, driven.count]).toEqual([137, 68]);
    // 2,142.2 and 1,817.1 km in UTM 36S, which is 0.2 in 2,719.4 km longer than the geodesics.
    expect(Math.abs(all.longestKm / 2142.2 - 1)).toBeLessThan(2e-4);
    expect(Math.abs(driven.longestKm / 1817.1 - 1)).toBeLessThan(2e-4);

    const cutOff = ids(malawi.problems, 'E2010');
    for (const id of beyond) expect(cutOff).toContain(id);
    const farOff = malawi.scenario.communities.filter(({ geometry }) => {
      const position = geometry.kind === 'point' ? geometry.position : ([0, 0] as const);
      return malawi.scenario.roads.every(({ positions }) => positions.every((one) => geodesicKm(one, position) > 10));
    });
    expect(farOff.map(({ id }) => id).sort()).toEqual(beyond);
    const reasons = malawi.problems.filter(
      ({ code, facts }) => code === 'E2010' && beyond.includes(String(facts['id'])),
    );
    expect(reasons.map(({ facts }) => facts['reason'])).toEqual(beyond.map(() => 'no-road-within-reach'));

    expect(malawi.places.shares.community.length).toBe(120);
    expect(communitiesByZone(malawi).get('')?.sort()).toEqual(['V024', 'V049']);
    expect(ids(malawi.problems, 'E2003')).toEqual(['V024', 'V049']);
    const homes = [...communitiesByZone(malawi)].filter(([, held]) => held.includes('V072')).map(([zone]) => zone);
    expect(homes.length).toBe(1);
    expect(['Z4', 'Z7', 'Z8']).toContain(homes[0]);
    expect(ids(malawi.problems, 'E2004')).toEqual([]);
    expect(malawi.problems.find(({ code }) => code === 'E2008')?.facts['pieces']).toBe(137);
    expect(traceSome(malawi)).toBeGreaterThan(300);
  });
});
