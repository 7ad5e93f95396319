import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../architecture/source-files.ts';

/** What a slow line has to carry before the first view, gzip. */
const BUDGET_BYTES = 150_000;

interface Chunk {
  readonly file: string;
  readonly isEntry?: boolean;
  readonly imports?: readonly string[];
}

const outDir = mkdtempSync(join(tmpdir(), 'nodulary-budget-'));
let manifest: Readonly<Record<string, Chunk>>;

beforeAll(() => {
  // In a process of its own: within the tests, libraries would be built as for development.
  const vite = join(projectRoot, 'node_modules', 'vite', 'bin', 'vite.js');
  const options = ['build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'error'];
  const env = { ...process.env, NODE_ENV: 'production' };
  const { status, stderr } = spawnSync(process.execPath, [vite, ...options], {
    cwd: projectRoot,
    env,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`the page does not build: ${stderr}`);
  manifest = JSON.parse(readFileSync(join(outDir, '.vite', 'manifest.json'), 'utf8'));
}, 120_000);

afterAll(() => rmSync(outDir, { recursive: true, force: true }));

/** Files that the browser loads before the first view: the entry and all that it imports at once. */
function firstScripts(): Set<string> {
  const files = new Set<string>();
  const follow = (name: string) => {
    const chunk = manifest[name];
    if (!chunk || files.has(chunk.file)) return;
    files.add(chunk.file);
    for (const imported of chunk.imports ?? []) follow(imported);
  };
  for (const [name, chunk] of Object.entries(manifest)) if (chunk.isEntry) follow(name);
  return files;
}

describe('scripts before the first view', () => {
  it(`are at most ${BUDGET_BYTES / 1000} kB gzip`, () => {
    const sizes = [...firstScripts()].map((file) => gzipSync(readFileSync(join(outDir, file))).length);
    expect(sizes.length).toBeGreaterThan(0);
    const total = sizes.reduce((sum, size) => sum + size, 0);
    expect(total, `${total} bytes gzip`).toBeLessThanOrEqual(BUDGET_BYTES);
  });

  it('hold neither map nor overlay, solver nor geometry', () => {
    const first = [...firstScripts()].map((file) => readFileSync(join(outDir, file), 'utf8')).join('\n');
    for (const mark of ['maplibregl-canvas', 'ScatterplotLayer', 'highs.wasm', 'GEOSPrepare']) {
      expect(first.includes(mark), mark).toBe(false);
    }
  });

  it('leave the base map to be made at build time', () => {
    const land = JSON.parse(readFileSync(join(outDir, 'base-map', 'land.geojson'), 'utf8'));
    expect(land.geometry.type).toBe('MultiPolygon');
  });
});
