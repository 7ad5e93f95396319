import { describe, expect, it } from 'vitest';
import { IMPORT_TABLE, importFaults } from './import-rules.ts';
import { listFiles, readSource } from './source-files.ts';

const files = listFiles('src', ['.ts', '.tsx']);

/** One fault planted in each row of the table: a file that could stand there, with an import that may not. */
const PLANTED: readonly [string, string][] = [
  ['src/engine/numerics/planted.ts', "import { CROPS } from '../vocabulary/crops.ts';"],
  ['src/engine/vocabulary/planted.ts', "import type { Position } from '../science/box.ts';"],
  ['src/engine/reference/planted.ts', "import { exp } from '../numerics/elementary.ts';"],
  ['src/engine/science/planted.ts', "export { planSeason } from '../pipeline.ts';"],
  ['src/engine/stages/4-needs/planted.ts', "import type { Places } from '../2-places/locate-places.ts';"],
  ['src/engine/record/planted.ts', "export * from '../stages/4-needs/estimate-needs.ts';"],
  ['src/engine/checker/planted.ts', "const box = await import('../science/box.ts');"],
  ['src/engine/replay/planted.ts', "import { estimateNeeds } from '../stages/4-needs/estimate-needs.ts';"],
  ['src/engine/pipeline.ts', "import { advance } from './science/box.ts';"],
  ['src/engine/ground.ts', "import { recordPlan } from './record/record-plan.ts';"],
  ['src/engine/questions.ts', "import { checkPlan } from './checker/check-plan.ts';"],
  ['src/engine/index.ts', "export { box } from './science/box.ts';"],
  ['src/presentation/planted.ts', "type Exp = import('../engine/numerics/elementary.ts').Exp;"],
  ['src/adapters/planted.ts', "import { headline } from '../presentation/headline.ts';"],
  ['src/app/planted.tsx', "import { planSeason } from '../engine/index.ts';"],
  ['src/cli/planted.ts', "const address = new URL('../app/main.tsx', import.meta.url);"],
];

describe('who may import whom', () => {
  it('reads the files it judges', () => {
    expect(files.length).toBeGreaterThan(60);
  });

  it.each(files.map((path) => [path]))('%s keeps the import table', (path) => {
    expect(importFaults(path, readSource(path))).toEqual([]);
  });

  it('has one planted fault for each row of the table', () => {
    for (const { folder } of IMPORT_TABLE)
      expect(
        PLANTED.some(([path]) => path.startsWith(folder)),
        folder,
      ).toBe(true);
  });

  it.each(PLANTED)('finds the fault planted in %s', (path, source) => {
    expect(importFaults(path, source)).toHaveLength(1);
  });

  it('finds a package where none may be, and an address that is not plain text', () => {
    expect(importFaults('src/engine/science/planted.ts', "import fs from 'node:fs';")).toHaveLength(1);
    expect(() => importFaults('src/engine/science/planted.ts', 'const m = await import(name);')).toThrow(
      'not plain text',
    );
  });

  it('lets nothing in src import tests', () => {
    const faults = files.filter((path) => /from '[^']*tests\//.test(readSource(path)));
    expect(faults).toEqual([]);
  });
});
