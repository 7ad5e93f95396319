import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { build, type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { addProblems, openReplay, openRun, playHere, type RunOrder } from '../../src/engine/index.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';
import { findChromium, LAUNCH_ARGUMENTS } from './find-chromium.mjs';

const root = fileURLToPath(new URL('./same-bytes', import.meta.url));
const outDir = mkdtempSync(join(tmpdir(), 'nodulary-same-bytes-'));
let server: PreviewServer;
let browser: Browser;

beforeAll(async () => {
  const executablePath = await findChromium();
  if (!executablePath) throw new Error('No Chromium found, fetched or installed: browser tests cannot run.');
  const options = { root, configFile: false, logLevel: 'error', worker: { format: 'es' } } as const;
  await build({ ...options, build: { outDir, emptyOutDir: true, target: 'es2023', chunkSizeWarningLimit: 5000 } });
  server = await preview({ ...options, build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
  browser = await chromium.launch({ executablePath, args: LAUNCH_ARGUMENTS });
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(outDir, { recursive: true, force: true });
});

describe('the same scenario, decisions, seed and iterations give the same plan in Node and in a browser worker', () => {
  it.each([
    ['tiny-district', 20_000],
    ['demo-district', 1000],
  ])('%s, byte for byte', async (name, iterations) => {
    const files = readFolderFiles(fileURLToPath(new URL(`../../scenarios/${name}`, import.meta.url)));
    const { plan, problems } = planFiles(files, iterations);
    const page = await browser.newPage();
    await page.goto(server.resolvedUrls?.local[0] as string);
    const sent = [...files].map(([file, bytes]) => [file, Buffer.from(bytes).toString('base64')] as const);
    const inWorker = await page.evaluate(([list, steps]) => window.planInWorker(list, steps), [
      sent,
      iterations,
    ] as const);
    expect(inWorker === JSON.stringify(addProblems(plan, problems))).toBe(true);
  });
});

describe('long runs of plays give the same answers in Node and in the workers of a page', () => {
  it('whatever the number of workers: ranges and the ranking of unknowns, byte for byte', async () => {
    const files = readFolderFiles(fileURLToPath(new URL('../../scenarios/tiny-district', import.meta.url)));
    const { scenario, decisions, plan } = planFiles(files, 500);
    const { overlay } = await loadPlanningTools();
    const prepared = openReplay(scenario, decisions, plan, null, overlay).play('as-printed');
    const orders = [
      { kind: 'spreads', ask: { draws: 300, seed: 1 } },
      { kind: 'unknowns', ask: { outcomes: ['reachedHa', 'programmeNitrogenKg'], rows: 128, seed: 1 } },
    ] as const satisfies readonly RunOrder[];
    const inNode = orders.map((order) => JSON.stringify(playHere(openRun(prepared, order))));
    expect(inNode.every((text) => text.length > 100)).toBe(true);
    const page = await browser.newPage();
    await page.goto(server.resolvedUrls?.local[0] as string);
    const sent = [...files].map(([file, bytes]) => [file, Buffer.from(bytes).toString('base64')] as const);
    for (const workers of [1, 3]) {
      const inPage = await page.evaluate(([list, runs, count]) => window.playInPage(list, runs, count), [
        sent,
        orders,
        workers,
      ] as const);
      expect(inPage).toEqual(inNode);
    }
  });
});
