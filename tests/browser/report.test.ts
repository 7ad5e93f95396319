import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import { openReplay, replaySeasons } from '../../src/engine/index.ts';
import { renderReport } from '../../src/presentation/report/render-report.ts';
import { projectRoot } from '../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';
import { findChromium, LAUNCH_ARGUMENTS } from './find-chromium.mjs';

/** The report on the demonstration district, opened from disk: no server, no file beside it. */
const desk = mkdtempSync(join(tmpdir(), 'nodulary-report-'));
const file = join(desk, 'report.html');
let browser: Browser;
let page: Page;
const asked: string[] = [];
const complaints: string[] = [];
const { plan, scenario, decisions } = planFiles(readFolderFiles(join(projectRoot, 'scenarios', 'demo-district')), 300);

beforeAll(async () => {
  const executablePath = await findChromium();
  if (!executablePath) throw new Error('No Chromium found, fetched or installed: browser tests cannot run.');
  const { overlay } = await loadPlanningTools();
  const replay = openReplay(scenario, decisions, plan, null, overlay);
  const printed = replaySeasons(replay, 'as-printed');
  writeFileSync(file, renderReport({ plan, scenario, printed, zoneNames: replay.zoneNames }));
  browser = await chromium.launch({ executablePath, args: LAUNCH_ARGUMENTS });
  page = await browser.newPage({ viewport: { width: 1100, height: 900 } });
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => complaints.push(message.text()));
  await page.goto(pathToFileURL(file).href);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  rmSync(desk, { recursive: true, force: true });
});

describe('the report opened from disk', () => {
  it('asks for nothing but itself, and complains of nothing', () => {
    expect(asked).toEqual([pathToFileURL(file).href]);
    expect(complaints).toEqual([]);
  });

  it('draws every community on its map, and shows the plan’s figures as text', async () => {
    expect(await page.locator('figure svg title').count()).toBe(scenario.communities.length);
    const shown = await page.locator('data').evaluateAll((all) => all.map((one) => one.getAttribute('value')));
    expect(shown.length).toBeGreaterThan(200);
    expect(shown).toContain(String(plan.outcomes.headline.programmeNitrogenKg.p50));
  });

  it.each([1100, 390])(
    'keeps within the window where that is %d wide, but for tables that are broader',
    async (width) => {
      await page.setViewportSize({ width, height: 900 });
      const beyond = await page.evaluate(() =>
        [...document.querySelectorAll('p, li, h1, h2, svg')]
          .filter((element) => element.getBoundingClientRect().right > window.innerWidth + 1)
          .map(({ textContent }) => textContent?.slice(0, 60)),
      );
      expect(beyond).toEqual([]);
    },
  );

  it('prints on A4 with nothing beyond the edge of the paper', async () => {
    // A4 less 14 mm on either side, px.
    await page.setViewportSize({ width: Math.floor(((210 - 28) / 25.4) * 96), height: 1000 });
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const sheets = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(sheets).toBeGreaterThan(4);
    expect(sheets).toBeLessThan(20);
  });
});
