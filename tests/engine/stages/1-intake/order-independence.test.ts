import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readScenarioFolder } from '../../../../src/adapters/scenario-files/read-folder.ts';
import { readScenario } from '../../../../src/engine/stages/1-intake/read-scenario.ts';
import { compareAlongCurve } from '../../../../src/engine/stages/1-intake/spatial-key.ts';
import type { Position } from '../../../../src/engine/vocabulary/places.ts';
import type { ScenarioRecords } from '../../../../src/engine/vocabulary/records.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import { SHARED_ABSENT, sharedFolder } from '../../../shared-folder.ts';
import { recordsOf, SMALL_FILES, withChange } from './small-scenario.ts';

/** The same records with the rows of every file in another order, by a small linear congruential generator. */
function shuffled(records: ScenarioRecords, seed: number): ScenarioRecords {
  let state = seed;
  const below = (n: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state % n;
  };
  const shuffle = <T>(items: readonly T[]): T[] => {
    const mixed = [...items];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = below(i + 1);
      [mixed[i], mixed[j]] = [mixed[j] as T, mixed[i] as T];
    }
    return mixed;
  };
  const renumbered = <T extends { readonly row: number }>(rows: readonly T[]): T[] =>
    shuffle(rows).map((row, index) => ({ ...row, row: index + 2 }));
  const entries = Object.entries(records).map(([name, part]) => {
    if (part !== null && typeof part === 'object' && 'rows' in part)
      return [name, { ...part, rows: renumbered(part.rows) }];
    if (part !== null && typeof part === 'object' && 'features' in part)
      return [name, { ...part, features: renumbered(part.features) }];
    return [name, part];
  });
  return Object.fromEntries(entries) as ScenarioRecords;
}

const scenarioOf = (records: ScenarioRecords): Scenario => {
  const { scenario, problems } = readScenario(records);
  if (scenario === null) throw new Error(JSON.stringify(problems));
  // Where an entry stood is the one thing that reordering changes.
  return { ...scenario, origins: [] };
};

it('the order of communities at a hand-over point does not matter', () => {
  const turned = scenarioOf(recordsOf(withChange('handover-points.csv', 'C1;C2', 'C2;C1')));
  expect(turned.handoverPoints).toEqual(scenarioOf(recordsOf(SMALL_FILES)).handoverPoints);
});

describe('reordered rows give the identical scenario', () => {
  it('in the small scenario, with twins, duplicate ids and many rows that tie in place', () => {
    const twins =
      'L4,SEED-S,D1,150,cleared,,2027-06-30,,88\nL2,SEED-S,D1,7,cleared,,2027-06-30,,88\nL5,INO,D1,40,cleared,2026-10-01,2027-03-01,1.2e9,\n';
    const records = recordsOf(
      withChange('lots.csv', 'L3,', `${twins}L3,`, {
        'weather.csv': `${String(SMALL_FILES['weather.csv'])}WEST,-13.1,28,2026-11-03,,31,0\nWEST,-13.2,28,2026-11-03,1,31,0\n`,
      }),
    );
    const expected = scenarioOf(records);
    for (let seed = 1; seed <= 50; seed++) expect(scenarioOf(shuffled(records, seed))).toEqual(expected);
  });

  for (const name of ['rwanda-sectors', 'sahel-east', 'south-malawi-roads']) {
    it.skipIf(sharedFolder === null)(`in ${name}${sharedFolder === null ? ` (${SHARED_ABSENT})` : ''}`, () => {
      const records = readScenarioFolder(`${sharedFolder}/scenarios/${name}`);
      expect(scenarioOf(shuffled(records, 7))).toEqual(scenarioOf(records));
    });
  }
});

it('renamed ids only rename', () => {
  const rename = (text: string) =>
    text.replace(/\b(C[1-4]|Z[12]|L[1-4]|TRUCK|MOTO|D1|P1|WEST|EAST)\b/g, (id) => NEW_NAMES[id] ?? id);
  // Two lots of one product in one depot and two vehicle rows of one depot: only what they hold can order them.
  const files = withChange('lots.csv', 'L3,', 'L4,SEED-S,D1,20,cleared,,2027-06-30,,90\nL3,');
  const renamed = Object.fromEntries(Object.entries(files).map(([path, text]) => [path, rename(String(text))]));
  const expected = scenarioOf(recordsOf(files));
  const { sha256, ...found } = scenarioOf(recordsOf(renamed));
  expect(found).toEqual({
    ...JSON.parse(rename(JSON.stringify(expected))),
    ...columnsOf(expected, rename),
    sha256: undefined,
  });
});

/** Names whose alphabetical order is another than that of the old ones. */
const NEW_NAMES: Readonly<Record<string, string>> = {
  C1: 'zulu',
  C2: 'alpha',
  C3: 'mike',
  C4: 'bravo',
  Z1: 'zone-b',
  Z2: 'zone-a',
  L1: 'lot-9',
  L2: 'lot-8',
  L3: 'lot-7',
  L4: 'lot-6',
  TRUCK: 'a-truck',
  MOTO: 'z-moto',
  D1: 'hub',
  P1: 'point',
  WEST: 'station-2',
  EAST: 'station-1',
};

/** Typed arrays do not survive JSON. */
const columnsOf = ({ weather }: Scenario, rename: (text: string) => string) => ({
  weather: weather.map((station) => ({ ...station, id: rename(station.id) })),
});

it('the curve orders as the interleaved bits do', () => {
  const degrees = (limit: number) => fc.integer({ min: -limit * 1e6, max: limit * 1e6 }).map((n) => n / 1e6);
  const position = fc.tuple(degrees(180), degrees(90));
  const interleaved = ([lon, lat]: Position): bigint => {
    const [x, y] = [BigInt(Math.round((lon + 180) * 1e6)), BigInt(Math.round((lat + 90) * 1e6))];
    let key = 0n;
    // Longitude takes the higher bit of each pair.
    for (let bit = 28n; bit >= 0n; bit--) key = (key << 2n) | (((x >> bit) & 1n) << 1n) | ((y >> bit) & 1n);
    return key;
  };
  fc.assert(
    fc.property(position, position, (a, b) => {
      const [x, y] = [interleaved(a), interleaved(b)];
      expect(Math.sign(compareAlongCurve(a, b))).toBe(x < y ? -1 : x > y ? 1 : 0);
    }),
  );
});
