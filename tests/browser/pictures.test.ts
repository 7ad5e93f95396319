import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mapDrawn } from './app-page.ts';
import { type Dashboard, openDashboard, openPage } from './open-dashboard.ts';

/**
 * Takes the pictures that README.md shows, by `npm run pictures`; without that command's variable there is nothing to do here.
 * Every picture is of the page that `npm start` serves, on the demonstration district.
 */
const wanted = process.env['NODULARY_PICTURES'] !== undefined;
const folder = fileURLToPath(new URL('./pictures', import.meta.url));
const demo = fileURLToPath(new URL('../../scenarios/demo-district', import.meta.url));

const LAPTOP = { width: 1366, height: 768 };
/** 1366 x 768 at 200 percent: half the pixels of the page, drawn twice as large. */
const ZOOMED = { width: 683, height: 384 };
const PHONE = { width: 390, height: 844 };

let dashboard: Dashboard;

if (wanted) {
  beforeAll(async () => {
    dashboard = await openDashboard();
  }, 240_000);
  afterAll(() => dashboard?.close());
}

describe.skipIf(!wanted)('pictures', () => {
  it.each(['stock', 'days', 'coverage'])('of the view %s, light and dark', async (view) => {
    const page = await opened(view);
    await take(page, view);
    await page.getByRole('button', { name: 'Dark' }).click();
    await take(page, `${view}-dark`);
    await page.close();
  });

  it('of a figure opened', async () => {
    const page = await opened('coverage');
    await page.locator('.answer .figure').first().click();
    await page.getByRole('dialog').waitFor();
    await take(page, 'figure-opened');
    await page.close();
  });

  it('of the problems that a broken file has', async () => {
    const page = await opened('problems');
    const lots = readFileSync(join(demo, 'lots.csv'), 'utf8')
      .replace('2026-12-18', '18/12/2026')
      .replace('SB-0688,', '=SB-0688,')
      .replace(',cleared,', ',clear,');
    await page.getByRole('banner').getByRole('button').first().click();
    const file = { name: 'lots.csv', mimeType: 'text/csv', buffer: Buffer.from(lots) };
    await page.locator('input[type=file]').nth(2).setInputFiles(file);
    await page.getByText('18/12/2026').first().waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { level: 1 }).click();
    await take(page, 'problems');
    await page.close();
  });

  it('of figures that are stale, and of planning', async () => {
    const page = await opened('stock');
    await page.getByRole('button', { name: /Fix the share of Soybean in Cheverin/ }).click();
    await page.getByRole('spinbutton', { name: /Share, percent/ }).fill('90');
    await page.keyboard.press('Enter');
    await take(page, 'inputs-changed');
    await page.getByRole('button', { name: 'Replan' }).click();
    await page.waitForTimeout(1500);
    await page.screenshot({ path: join(folder, 'planning.png') });
    await page.close();
  });

  it('at 200 percent, and on a phone', async () => {
    for (const view of ['stock', 'days', 'coverage']) {
      const page = await opened(view, ZOOMED);
      await take(page, `${view}-200-percent`);
      await page.close();
    }
    for (const view of ['stock', 'days', 'coverage']) {
      const page = await opened(view, PHONE);
      await take(page, `${view}-phone`);
      await page.close();
    }
  }, 240_000);

  it('of the handover amounts, on a phone and beside the map', async () => {
    for (const [name, size] of [
      ['handover-phone', PHONE],
      ['handover', LAPTOP],
    ] as const) {
      const page = await opened('handover?community=C071', size);
      await page.locator('.cap-count').first().waitFor();
      await take(page, name);
      await page.close();
    }
  });
});

describe.skipIf(!wanted)('pictures of papers', () => {
  beforeAll(async () => {
    dashboard ??= await openDashboard();
  }, 240_000);
  afterAll(() => dashboard?.close());

  it.each([
    // A trip with a cold box: seed alone has less to say.
    ['paper-route', 'papers?paper=route&day=2026-11-21', 'Bring ice packs and box back'],
    ['paper-handover', 'papers?paper=handover&community=C071', ''],
    ['paper-waybill', 'papers?paper=waybill&day=2026-11-21', ''],
    ['paper-hold', 'papers?paper=hold&day=2026-11-21', ''],
    ['paper-wall', 'papers?paper=wall', ''],
  ])('%s, as the printer gets it', async (name, view, saying) => {
    const { page } = await openPage(dashboard, { width: 1100, height: 1123 });
    await page.goto(`${dashboard.address}#/${view}`);
    await page.locator('article.paper').first().waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => document.fonts.ready);
    await page
      .locator('article.paper')
      .filter({ hasText: saying })
      .first()
      .screenshot({ path: join(folder, `${name}.png`) });
    await page.close();
  });

  it('the view of papers', async () => {
    const page = await opened('papers?paper=route&day=2026-11-21');
    await page.locator('article.paper').first().waitFor();
    await take(page, 'papers');
    await page.close();
  });
});

async function opened(view: string, size = LAPTOP): Promise<Page> {
  const { page } = await openPage(dashboard, size);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`${dashboard.address}#/${view}`);
  await page.locator('.answer h1').waitFor();
  return page;
}

async function take(page: Page, name: string): Promise<void> {
  await mapDrawn(page);
  await page.mouse.move(0, 0);
  await page.screenshot({ path: join(folder, `${name}.png`) });
  expect(await page.locator('.answer h1').count()).toBe(1);
}
