import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
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

beforeAll(async () => {
  const configFile = join(projectRoot, 'vite.config.ts');
  await build({ configFile, mode: 'production', logLevel: 'error', build: { outDir, emptyOutDir: true } });
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
  it('keep the budget', () => {
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
