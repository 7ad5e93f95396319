import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../architecture/source-files.ts';
import { readFolderFiles } from '../plan-files.ts';
import { type AppOnShow, mapDrawn, showApp } from './app-page.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const VIEWS = ['stock', 'days', 'coverage', 'problems', 'handover?community=C071'] as const;
const SHORT_SEARCH = 300;

let app: AppOnShow;
beforeAll(async () => {
  app = await showApp('demo-district', SHORT_SEARCH);
}, 240_000);
afterAll(() => app?.close());

const answered = (page: Page) => page.waitForSelector('.answer .figure', { timeout: 60_000 });
const planState = (page: Page) => page.locator('.plan-state').textContent();

async function opened(hash = '', options = {}) {
  const found = await app.open(options);
  await found.page.goto(app.url + hash);
  await found.page.waitForSelector('.answer h1', { timeout: 60_000 });
  if (hash !== '#/problems') await answered(found.page);
  return found;
}

/** Rules of WCAG 2.2 A and AA, by axe-core. The map's own canvas is drawn, not marked up. */
async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(root: Document, options: object): Promise<AxeRun> } };
    interface AxeRun {
      readonly violations: readonly { readonly id: string; readonly nodes: readonly { readonly html: string }[] }[];
    }
    const { violations } = await axe.run(document, {});
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
  });
}

describe('a first visit', () => {
  it('shows the planned district within 5 s, and draws its map, without a complaint', async () => {
    const { page, complaints } = await app.open();
    const began = performance.now();
    await page.goto(app.url);
    await answered(page);
    const took = performance.now() - began;
    expect(await planState(page)).toContain('current');
    await mapDrawn(page);
    for (const view of VIEWS) {
      await page.goto(`${app.url}#/${view}`);
      await page.waitForTimeout(300);
    }
    expect(took).toBeLessThan(5000);
    expect(complaints).toEqual([]);
  });

  it('reaches each view by its tab, tells the address, and goes back', async () => {
    const { page } = await opened();
    for (const [tab, view] of [
      ['Days and routes', 'days'],
      ['Coverage', 'coverage'],
      ['Stock', 'stock'],
    ] as const) {
      await page.getByRole('link', { name: tab, exact: true }).focus();
      await page.keyboard.press('Enter');
      expect(page.url()).toContain(`#/${view}`);
      expect(await page.locator('.tabs [aria-current=page]').textContent()).toBe(tab);
    }
    await page.goBack();
    expect(page.url()).toContain('#/coverage');
    expect(await page.locator('.tabs [aria-current=page]').textContent()).toBe('Coverage');
  });
});

describe('what is chosen', () => {
  it('on the map is found in the address, and stays while views change', async () => {
    const { page } = await opened('#/coverage');
    await mapDrawn(page);
    await page.locator('.map canvas').click({ position: { x: 275, y: 190 } });
    await page.waitForFunction(() => location.hash.includes('community='));
    const chosen = new URLSearchParams(page.url().split('?')[1]);
    await page.getByRole('link', { name: 'Stock', exact: true }).click();
    expect(page.url()).toContain(`zone=${chosen.get('zone')}`);
    await page.locator('.map canvas').click({ position: { x: 275, y: 190 } });
    await page.waitForFunction(() => !location.hash.includes('community='));
  });
});

describe('a figure', () => {
  it('opens to its source by keys alone, and gives the focus back', async () => {
    const { page } = await opened('#/coverage');
    const figure = page.locator('.answer .figure').first();
    const shown = await figure.textContent();
    await figure.focus();
    await page.keyboard.press('Enter');
    const panel = page.getByRole('dialog');
    expect(await panel.locator('.big-figure').textContent()).toBe(shown);
    expect(await panel.locator('.formula').textContent()).not.toBe('');
    expect(await panel.locator('.inputs tbody tr').count()).toBeGreaterThan(0);
    expect(await axeFaults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await panel.count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(shown);
  });
});

describe('the handover of a community', () => {
  it('is reached from its row, and its amounts follow the seed that is coated', async () => {
    const { page, complaints } = await opened('#/stock?zone=Z03&community=C071');
    await page.getByRole('link', { name: /^Handover amounts of/ }).focus();
    await page.keyboard.press('Enter');
    await page.getByText('21 growers to 19 packs.').waitFor();
    const amount = page.locator('.cap-count b').first();
    const [before, seed] = [Number(await amount.textContent()), page.locator('.batch-kg')];
    expect(await seed.textContent()).toContain('18');
    for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'more seed' }).press('Enter');
    expect(await seed.textContent()).toContain('20');
    expect(Number(await amount.textContent())).toBe(Math.floor((2 * 20 * 5) / 4.5) / 2);
    expect(before).toBe(20);
    await page.getByRole('radio', { name: /groundnut/ }).focus();
    await page.keyboard.press('Space');
    await page.getByText('Groundnut skins tear: lift, do not rub.').waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('files', () => {
  it('of another scenario are opened from a zip and planned beside the page', async () => {
    const { page, complaints } = await opened();
    const tiny = readFolderFiles(join(projectRoot, 'scenarios', 'tiny-district'));
    const archive = zipSync(Object.fromEntries([...tiny].map(([name, bytes]) => [`tiny/${name}`, bytes])));
    const zip = { name: 'tiny.zip', mimeType: 'application/zip', buffer: Buffer.from(archive) };
    await page.locator('input[type=file][accept=".zip"]').setInputFiles(zip);
    await page.waitForFunction(() => document.querySelector('.scenario-name')?.textContent?.includes('Tiny'));
    await page.waitForFunction(() => document.querySelector('.plan-state')?.textContent?.includes('current'));
    expect(complaints).toEqual([]);
  });

  it('that are broken are dropped and block, and are mended by dropping them again', async () => {
    const { page } = await opened();
    const good = readFileSync(join(projectRoot, 'scenarios', 'demo-district', 'lots.csv'), 'utf8');
    await drop(page, 'lots.csv', good.replaceAll(/\d{4}-\d{2}-\d{2}/g, '31/02/27'));
    await page.waitForFunction(() => document.querySelector('.plan-state')?.textContent?.includes('1 input changed'));
    await page.goto(`${app.url}#/problems`);
    await page.getByText('is not a date of the form').first().waitFor();
    await drop(page, 'lots.csv', good);
    await page.getByText('is not a date of the form').first().waitFor({ state: 'detached' });
  });

  it('have their cells mended on the page, in the copy only', async () => {
    const { page } = await opened('#/problems');
    const good = readFileSync(join(projectRoot, 'scenarios', 'demo-district', 'depots.csv'), 'utf8');
    await drop(page, 'depots.csv', good.replace('05:30', 'half five'));
    const item = page.locator('.problems > li', { hasText: 'half five' });
    await item.getByRole('button', { name: 'Mend' }).click();
    await item.locator('input').fill('05:30');
    await item.getByRole('button', { name: 'Use these values' }).click();
    await item.waitFor({ state: 'detached' });
  });
});

describe('planning again', () => {
  it('can be cancelled, keeps the last plan, and then plans to the end', async () => {
    const { page } = await opened();
    await keepDecision(page);
    await page.reload();
    await answered(page);
    expect(await planState(page)).toContain('1 input changed');
    await page.getByRole('button', { name: 'Replan' }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    expect(await page.locator('.lines').textContent()).toContain('cancelled');
    await answered(page);
    await page.getByRole('button', { name: 'Replan' }).click();
    await page.waitForFunction(
      () => document.querySelector('.plan-state')?.textContent?.includes('current'),
      undefined,
      { timeout: 90_000 },
    );
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await planState(page)).toContain('1 input changed');
    await page.getByRole('button', { name: 'Redo' }).click();
    expect(await planState(page)).toContain('current');
  });
});

describe('every reader', () => {
  it.each(VIEWS.flatMap((view) => [[view, 'light'] as const, [view, 'dark'] as const]))(
    'axe finds nothing in %s, %s',
    async (view, colorScheme) => {
      const { page } = await opened('#/coverage', { colorScheme });
      await page.goto(`${app.url}#/${view}`);
      await mapDrawn(page);
      expect(await axeFaults(page)).toEqual([]);
    },
  );

  it.each([
    ['a phone', { width: 390, height: 844 }],
    ['200 percent on a small laptop', { width: 683, height: 384 }],
    ['400 percent', { width: 320, height: 256 }],
  ])('sees no page wider than %s', async (_, viewport) => {
    const { page } = await opened('#/stock', { viewport });
    for (const view of VIEWS) {
      await page.goto(`${app.url}#/${view}`);
      await page.waitForTimeout(200);
      // Charts take their width once they stand on the page, which a busy machine may do late.
      const wider = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      await expect.poll(wider, { message: view, timeout: 5000 }).toBeLessThanOrEqual(0);
    }
  });

  it('can take the page in another language, longer words included', async () => {
    const { page, complaints } = await opened();
    await page.getByLabel('Language').selectOption('pseudo');
    await page
      .locator('.tabs')
      .getByRole('link', { name: /Šťó|Štóó/ })
      .waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('en-XA');
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
  });
});

/** Drops a file onto the page as a desktop would. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([file, content]) => {
      const made = new DataTransfer();
      made.items.add(new File([content], file, { type: 'text/csv' }));
      return made;
    },
    [name, text] as const,
  );
  await page.dispatchEvent('.page', 'drop', { dataTransfer: transfer });
}

/** Puts a decision into the browser's memory, under the scenario that the page opens. */
async function keepDecision(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const plan = (await (await fetch('start/plan.json')).json()) as {
      readonly scenarioSha256: string;
      readonly ids: { readonly vehicles: readonly string[] };
    };
    const away = { kind: 'vehicle-away', vehicleId: plan.ids.vehicles[0], from: '2026-11-16', to: '2026-11-20' };
    localStorage.setItem(`nodulary:decisions:${plan.scenarioSha256}`, JSON.stringify([away]));
  });
}
