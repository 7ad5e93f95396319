import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readScenarioFolder } from '../../../src/adapters/scenario-files/read-folder.ts';
import { recordsFromFiles } from '../../../src/adapters/scenario-files/record-files.ts';

let folder = '';
const DOCUMENT = JSON.stringify({
  files: {
    depots: 'depots.csv',
    lots: 'linked.csv',
    products: '../outside.csv',
    weather: 'absent.csv',
    readings: 'readings/',
  },
});
const DEPOTS = 'depot_id,name\nD1,One\n';
const READING = 'time,celsius\n2026-11-01T10:00,21\n';

beforeAll(() => {
  const outer = mkdtempSync(join(tmpdir(), 'scenario-'));
  folder = join(outer, 'folder');
  mkdirSync(join(folder, 'readings'), { recursive: true });
  writeFileSync(join(outer, 'outside.csv'), 'product_id\nX\n');
  symlinkSync(join(outer, 'outside.csv'), join(folder, 'linked.csv'));
  writeFileSync(join(folder, 'scenario.json'), DOCUMENT);
  writeFileSync(join(folder, 'depots.csv'), DEPOTS);
  writeFileSync(join(folder, 'readings', 'box.csv'), READING);
});
afterAll(() => rmSync(join(folder, '..'), { recursive: true }));

it('reads what scenario.json names and nothing outside the folder, not even through a link', () => {
  const { depots, lots, products, readings, faults } = readScenarioFolder(folder);
  expect([depots?.rows.length, lots, products, readings.length]).toEqual([1, null, null, 1]);
  expect(faults.map(({ kind, file }) => [kind, file]).sort()).toEqual([
    ['missing', 'absent.csv'],
    ['unsafe-path', '../outside.csv'],
    ['unsafe-path', 'linked.csv'],
  ]);
});

it('gives the records that the same bytes give without a folder', () => {
  const encoder = new TextEncoder();
  const files = new Map([
    ['scenario.json', encoder.encode(DOCUMENT)],
    ['depots.csv', encoder.encode(DEPOTS)],
    ['readings/box.csv', encoder.encode(READING)],
  ]);
  expect(readScenarioFolder(folder).sha256).toBe(recordsFromFiles(files).sha256);
});

it('says of a folder that is not there that scenario.json is missing', () => {
  const { document, faults } = readScenarioFolder(join(folder, 'nowhere'));
  expect(document).toBeNull();
  expect(faults).toEqual([{ kind: 'missing', file: 'scenario.json', row: null, value: '' }]);
});
