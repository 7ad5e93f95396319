import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type AppOnShow, showApp } from './app-page.ts';

/** An evening in the page: what happened is entered, the day is closed, the days after it are planned again. */
let app: AppOnShow;
beforeAll(async () => {
  app = await showApp('demo-district', 300);
}, 240_000);
afterAll(() => app?.close());

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

async function violationsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const run = (window as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: unknown[] }[] }> } })
      .axe;
    return (await run.run()).violations.map(({ id, nodes }) => `${id}: ${JSON.stringify(nodes).slice(0, 300)}`);
  });
}

async function openRecords(size: { readonly width: number; readonly height: number }) {
  const { page, complaints } = await app.open({ viewport: size });
  await page.goto(`${app.url}#/records`);
  await page
    .getByRole('button', { name: /^Enter, / })
    .first()
    .waitFor({ timeout: 60_000 });
  return { page, complaints };
}

const picture = async (page: Page, name: string) => {
  const folder = process.env['NODULARY_LOOK'];
  if (folder !== undefined) await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
};

describe('what happened, entered in the page', () => {
  it('a day is entered by keyboard, more than was carried is said, and closing it plans on from the plan people know', async () => {
    const { page, complaints } = await openRecords({ width: 1366, height: 900 });
    await picture(page, 'records');
    const enter = page.getByRole('button', { name: /^Enter, / }).first();
    await enter.focus();
    await page.keyboard.press('Enter');
    const handed = page.getByRole('spinbutton', { name: /^handed over, / }).first();
    const carried = Number(await handed.inputValue());
    await handed.fill(String(carried + 3));
    await page
      .getByRole('spinbutton', { name: /^of them back, / })
      .first()
      .fill(String(carried + 9));
    await page.getByRole('button', { name: 'Record', exact: true }).press('Enter');
    const told = page.getByRole('alert');
    expect(await told.textContent()).toContain('E1302');
    await page
      .getByRole('spinbutton', { name: /^of them back, / })
      .first()
      .fill('1');
    await page.getByLabel('Why it came back').first().fill('torn bag, "wet"');
    await picture(page, 'records-entry');
    expect(await violationsOf(page)).toEqual([]);
    await page.getByRole('button', { name: 'Record', exact: true }).press('Enter');
    await page.getByRole('button', { name: /^Record the \d+ open visits as planned$/ }).click();
    await page.getByText(/^Entered and not closed yet: /).click();
    await picture(page, 'records-entered');
    await page.getByRole('button', { name: /^Close .* and plan again$/ }).click();
    await page.getByRole('heading', { name: 'What changes' }).waitFor({ timeout: 120_000 });
    expect(await page.locator('h1').textContent()).toMatch(
      /packs and bags are with \d+ communities, by the records of 1 day/,
    );
    await picture(page, 'records-closed');
    expect(await violationsOf(page)).toEqual([]);
    await page.goto(`${app.url}#/coverage`);
    await page.getByText(/^So far, District: /).click();
    expect(await page.locator('.so-far tbody tr').count()).toBeGreaterThan(20);
    await picture(page, 'records-coverage');
    expect(await violationsOf(page)).toEqual([]);
    await page.goto(`${app.url}#/records`);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save handovers.csv' }).click(),
    ]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(text.split(/\r?\n/)[0]).toBe(
      'date,community_id,vehicle_id,lot_id,packs,returned_packs,kg,box_c,sown_on,growers,growers_women,reason',
    );
    expect(text).toContain(`,${carried + 3},1,`);
    expect(text).toContain('"torn bag, ""wet"""');
    // What was entered outlives the page.
    await page.reload();
    await page.locator('h1', { hasText: 'by the records of 1 day' }).waitFor({ timeout: 120_000 });
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 300_000);

  it('fits a phone, and nothing of it is out of reach there', async () => {
    const { page } = await openRecords({ width: 390, height: 844 });
    await page
      .getByRole('button', { name: /^Enter, / })
      .first()
      .click();
    await picture(page, 'records-phone');
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    expect(await violationsOf(page)).toEqual([]);
    await page.context().close();
  }, 120_000);
});
