import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { serveApp } from '../../src/cli/serve-app.ts';
import { addProblems } from '../../src/engine/index.ts';
import { projectRoot } from '../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';
import { findChromium, LAUNCH_ARGUMENTS } from './find-chromium.mjs';

/** The built page with a planned scenario, as `npm start` serves it, and a browser to look at it. */
export interface AppOnShow {
  readonly url: string;
  /** A page in a profile of its own. What its console complains of is added to `complaints`. */
  open(options?: BrowserContextOptions): Promise<{ readonly page: Page; readonly complaints: string[] }>;
  close(): Promise<void>;
}

/** What a browser without a graphics processor says of the map library, and is no fault of the page. */
const EXPECTED = [/GPU stall due to ReadPixels/, /uniform block reflection failed/];

/** @throws one clear line where there is no Chromium */
export async function showApp(scenario: string, iterations: number): Promise<AppOnShow> {
  const executablePath = await findChromium();
  if (!executablePath) throw new Error('No Chromium found, fetched or installed: browser tests cannot run.');
  const folder = mkdtempSync(join(tmpdir(), 'nodulary-app-'));
  buildPage(join(folder, 'app'));
  const server = await serve(folder, scenario, iterations);
  const browser = await chromium.launch({ executablePath, args: LAUNCH_ARGUMENTS });
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    open: (options) => openPage(browser, options),
    async close() {
      await browser.close();
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** In a process of its own: within the tests, libraries would be built as for development. */
function buildPage(outDir: string): void {
  const vite = join(projectRoot, 'node_modules', 'vite', 'bin', 'vite.js');
  const env = { ...process.env, NODE_ENV: 'production' };
  const options = ['build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'error'];
  const { status, stderr } = spawnSync(process.execPath, [vite, ...options], {
    cwd: projectRoot,
    env,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`the page does not build: ${stderr}`);
}

async function serve(folder: string, scenario: string, iterations: number): Promise<Server> {
  const from = join(projectRoot, 'scenarios', scenario);
  const files = readFolderFiles(from);
  const { plan, problems } = planFiles(files, iterations);
  writeFileSync(join(folder, 'plan.json'), JSON.stringify(addProblems(plan, problems)));
  const start = { folder: from, name: scenario, files: [...files.keys()], plan: join(folder, 'plan.json') };
  const server = serveApp(join(folder, 'app'), start);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}

async function openPage(browser: Browser, options: BrowserContextOptions = {}) {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  const complain = (text: string) => {
    if (!EXPECTED.some((expected) => expected.test(text))) complaints.push(text);
  };
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complain(message.text());
  });
  page.on('pageerror', (error) => complain(error.message));
  page.on('requestfailed', (request) => complain(`${request.url()} ${request.failure()?.errorText}`));
  return { page, complaints };
}

/** Waits until the map is drawn with its first picture. */
export async function mapDrawn(page: Page): Promise<void> {
  await page.waitForSelector('.map-state', { state: 'detached', timeout: 30_000 });
  await page.waitForTimeout(500);
}
