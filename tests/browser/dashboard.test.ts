import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SHARED_ABSENT, sharedFolder } from '../shared-folder.ts';
import { type Dashboard, openDashboard, openPage } from './open-dashboard.ts';

/** The part of axe-core that is used. */
interface Axe {
  run(): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
}

let dashboard: Dashboard;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  dashboard = await openDashboard();
}, 240_000);
afterAll(() => dashboard?.close());

beforeEach(async () => {
  ({ page, complaints } = await openPage(dashboard));
  await page.goto(dashboard.address);
  await answer().waitFor();
});
afterEach(async () => {
  expect(complaints).toEqual([]);
  await page.close();
});

const answer = () => page.getByRole('heading', { level: 1 });
const planState = (text: string | RegExp) => page.getByRole('banner').getByText(text);
const replan = async () => {
  await page.getByRole('button', { name: 'Replan' }).click();
  await planState('Plan is current').waitFor({ timeout: 120_000 });
};
const command = fileURLToPath(new URL('../../src/cli/nodulary.mjs', import.meta.url));
const demo = fileURLToPath(new URL('../../scenarios/demo-district', import.meta.url));

describe('npm start', () => {
  it('prints the headline, hectares among it, and the address, uncoloured', () => {
    expect(dashboard.printed).toMatch(/planned, hectares +2 165\.9/);
    expect(dashboard.printed).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/m);
    expect(dashboard.printed.includes(String.fromCharCode(27))).toBe(false);
  });

  it('shows the planned demonstration district within 5 seconds of opening', async () => {
    const from = performance.now();
    await page.goto(dashboard.address);
    await answer().waitFor();
    expect(await answer().textContent()).toContain('Enough seed for');
    expect(performance.now() - from).toBeLessThan(5000);
    await planState('Plan is current').waitFor();
  });

  it('serves under a content security policy, and nothing outside its folders', async () => {
    const response = await page.request.get(dashboard.address);
    const policy = response.headers()['content-security-policy'] ?? '';
    for (const rule of ["default-src 'self'", "'wasm-unsafe-eval'", "worker-src 'self'", "object-src 'none'"]) {
      expect(policy).toContain(rule);
    }
    for (const path of ['../package.json', '%2e%2e/package.json', 'start/../../package.json', '..%5cpackage.json']) {
      expect((await page.request.get(`${dashboard.address}${path}`)).status()).toBeGreaterThanOrEqual(400);
    }
  });
});

describe('the views', () => {
  it('are reached by click and by keyboard, and stand in the address', async () => {
    await page.getByRole('link', { name: 'Coverage' }).click();
    await answer().filter({ hasText: 'In a middle season' }).waitFor();
    expect(page.url()).toContain('#/coverage');
    await page.getByRole('link', { name: 'Days and routes' }).focus();
    await page.keyboard.press('Enter');
    await answer().filter({ hasText: 'vehicle-days' }).waitFor();
    await page.goto(page.url().replace('#/days', '#/stock'));
    await answer().filter({ hasText: 'Enough seed for' }).waitFor();
  });

  it('share what is chosen: a zone of the table is chosen on the map, and one of the map in the table', async () => {
    await page.getByRole('rowheader', { name: 'Cheverin' }).getByRole('button').click();
    expect(page.url()).toMatch(/zone=Z\d\d/);
    const first = page.url();
    const map = page.getByRole('region', { name: /Map of the district/ });
    const frame = await map.boundingBox();
    if (!frame) throw new Error('the map has no place on the page');
    // Clicks across the map until another zone answers: the district fills its middle.
    await expect
      .poll(
        async () => {
          await page.mouse.click(frame.x + frame.width * 0.3, frame.y + frame.height * 0.35);
          return page.url() !== first && /zone=Z\d\d/.test(page.url());
        },
        { timeout: 30_000, interval: 1000 },
      )
      .toBe(true);
    await page.getByRole('link', { name: 'Coverage' }).click();
    expect(page.url()).toMatch(/zone=Z\d\d/);
  });

  it('open a figure to its formula, inputs and sources, and give the focus back', async () => {
    const figure = page.getByRole('button', { name: /packs$/ }).first();
    const shown = await figure.textContent();
    await figure.click();
    const opened = page.getByRole('dialog');
    await opened.getByRole('heading', { name: 'Formula' }).waitFor();
    expect(await opened.getByRole('heading', { name: 'Inputs' }).count()).toBe(1);
    await page.keyboard.press('Escape');
    await opened.waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(shown);
  });
});

describe('decisions', () => {
  it('fix a cell by keyboard, mark what is stale, plan again, and undo', async () => {
    const cell = page.getByRole('button', { name: /Fix the share of Soybean in Cheverin/ });
    await cell.focus();
    await page.keyboard.press('Enter');
    const share = page.getByRole('spinbutton', { name: /Share, percent/ });
    await share.fill('90');
    await page.keyboard.press('Enter');
    await planState(/changed/).waitFor();
    await replan();
    await page.getByRole('button', { name: /Soybean in Cheverin, now (89|90|91) %/ }).waitFor();
    const undo = page.getByRole('button', { name: 'Undo' });
    while (await undo.isEnabled()) await undo.click();
    await planState(/changed/).waitFor();
    await replan();
    await page.getByRole('button', { name: /Fix the share of Soybean in Cheverin, now (69|70|71) %/ }).waitFor();
  }, 240_000);
});

describe('questions', () => {
  it('to the stock are answered before anything is decided, and nothing of them is kept', async () => {
    await page.getByRole('heading', { name: 'What if?' }).click();
    const form = page.locator('.what-if');
    await form.getByLabel('lot').selectOption('SB-0702');
    await form.getByRole('button', { name: 'Ask' }).click();
    await form.getByText(/would lose \d.* nobody would gain/).waitFor({ timeout: 60_000 });
    await planState('Plan is current').waitFor();
  });

  it('to a trip: another leaving hour is drawn, and no plan is touched', async () => {
    await page.goto(`${dashboard.address}#/days`);
    const later = page.getByRole('button', { name: 'leave a quarter of an hour later' });
    await later.focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press('Enter');
    await page.getByText(/Dashed, left at \d\d:\d\d: hottest/).waitFor({ timeout: 60_000 });
    expect(await page.locator('.packs-tried').count()).toBe(1);
    await planState('Plan is current').waitFor();
  });

  it('to past seasons: the worst are told, the unknowns are ranked beside the page or called off, another plan is compared', async () => {
    await page.getByRole('link', { name: 'Coverage' }).click();
    const told = page.locator('.replay-worst li');
    await told.first().waitFor();
    expect(await told.count()).toBe(3);
    const rank = page.getByRole('button', { name: 'Work it out' });
    await rank.click();
    await page.locator('.replay-rank').getByRole('button', { name: 'Cancel' }).click();
    await rank.click();
    await page.locator('.unknowns tbody tr').first().waitFor({ timeout: 120_000 });
    expect(await page.locator('.replay-rank').textContent()).toMatch(/Most of the spread comes of .*: \d+.% of it/);
    await page.getByRole('button', { name: 'Compare with holding for rain' }).click();
    await page.locator('.compared tbody tr').first().waitFor();
    const file = { name: 'other.json', mimeType: 'application/json', buffer: Buffer.from('{"format":"x"}') };
    await page.locator('.replay-compare input').setInputFiles(file);
    await page.getByText('other.json does not hold').waitFor();
    await page.locator('.replay-compare input').setInputFiles({ ...file, buffer: Buffer.from('plan') });
    await page.getByText('other.json is not JSON').waitFor();
  });

  it('to the days: a vehicle is away, the days are planned again from the plan, and the changes are told', async () => {
    await page.goto(`${dashboard.address}#/days`);
    await page
      .getByRole('button', { name: /^Away: / })
      .first()
      .click();
    await page.getByRole('button', { name: 'Plan the days again' }).click();
    await page.getByRole('heading', { name: 'What changes' }).waitFor({ timeout: 120_000 });
    await page.getByText(/Every day that was told is kept|on another day than told/).waitFor();
    await planState('Plan is current').waitFor();
    expect(await page.getByText(/Check found/).count()).toBe(0);
  });
});

const openMenu = () => page.getByRole('banner').getByRole('button').first().click();

/** What the page saves under a name of its menu. */
async function savedFromPage(name: string): Promise<string> {
  await openMenu();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: new RegExp(`${name.replace('.', '\\.')}$`) }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

const TABLES = [
  'needs.csv',
  'allocation.csv',
  'orders.csv',
  'deliveries.csv',
  'zones.csv',
  'zones.geojson',
  'routes.geojson',
];

describe('numbers', () => {
  it('are those of the command line: the plan npm start made, and one made in the page without a vehicle', async () => {
    const work = mkdtempSync(join(tmpdir(), 'nodulary-numbers-'));
    const commandLine = (folder: string) => {
      const out = mkdtempSync(join(work, 'out-'));
      const ran = spawnSync(process.execPath, [command, 'plan', folder, '--out', out], { encoding: 'utf8' });
      expect(ran.status, ran.stderr).toBe(0);
      return { printed: ran.stdout, table: (name: string) => readFileSync(join(out, name), 'utf8') };
    };

    const asStarted = commandLine(demo);
    for (const name of [...TABLES, 'problems.csv', 'plan.json']) {
      expect(await savedFromPage(name), name).toBe(asStarted.table(name));
    }

    await page.goto(`${dashboard.address}#/days`);
    await page
      .getByRole('button', { name: /^Away: / })
      .first()
      .click();
    await planState(/changed/).waitFor();
    await replan();
    const decisions = await savedFromPage('decisions.json');
    expect(decisions).toContain('vehicle-away');
    const folder = join(work, 'demo');
    cpSync(demo, folder, { recursive: true });
    const document = JSON.parse(readFileSync(join(folder, 'scenario.json'), 'utf8'));
    document.files.decisions = 'decisions.json';
    writeFileSync(join(folder, 'scenario.json'), JSON.stringify(document));
    writeFileSync(join(folder, 'decisions.json'), decisions);
    const without = commandLine(folder);
    expect(without.table('deliveries.csv')).not.toBe(asStarted.table('deliveries.csv'));
    for (const name of TABLES) expect(await savedFromPage(name), name).toBe(without.table(name));

    await page.goto(`${dashboard.address}#/coverage`);
    const digits = (text: string | null | undefined) => (text ?? '').replace(/\D/g, '');
    const alive = /alive and in time, hectares +([\d\s]+\.\d)/.exec(without.printed)?.[1];
    const aliveHa = Math.round(Number((alive ?? '').replace(/\s/g, '')));
    await page.getByText('Hectares expected').first().waitFor();
    expect(digits(await answer().textContent())).toContain(String(aliveHa));
    rmSync(work, { recursive: true });
  }, 240_000);
});

describe('files', () => {
  it('says what is wrong with a broken file, and takes the mended one', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'nodulary-broken-'));
    const lots = readFileSync(join(demo, 'lots.csv'), 'utf8');
    writeFileSync(join(folder, 'lots.csv'), lots.replace('2026-12-18', '18/12/2026'));
    const replace = page.locator('input[type=file]').nth(2);
    await openMenu();
    await replace.setInputFiles(join(folder, 'lots.csv'));
    await page.goto(`${page.url().replace(/#.*/, '')}#/problems`);
    await page.getByText('18/12/2026').first().waitFor();
    expect(await page.getByRole('main').textContent()).toContain('set aside');
    writeFileSync(join(folder, 'lots.csv'), lots);
    await openMenu();
    await page.locator('input[type=file]').nth(2).setInputFiles(join(folder, 'lots.csv'));
    await page.getByText('18/12/2026').first().waitFor({ state: 'detached' });
    rmSync(folder, { recursive: true });
  });

  it.skipIf(sharedFolder === null)(
    `opens and plans the scenarios on open layers${sharedFolder === null ? ` (${SHARED_ABSENT})` : ''}`,
    async () => {
      for (const name of ['south-malawi-roads', 'sahel-east', 'rwanda-sectors'] as const) {
        const folder = `${sharedFolder}/scenarios/${name}`;
        const files = readdirSync(folder).filter((file) => existsSync(join(folder, file)) && !file.endsWith('.md'));
        expect(files.length).toBeGreaterThan(8);
        await openMenu();
        await page.locator('input[type=file]').nth(0).setInputFiles(folder);
        const title = { 'south-malawi-roads': 'South Malawi', 'sahel-east': 'Sahel east', 'rwanda-sectors': 'Rwanda' }[
          name
        ];
        await page.getByRole('banner').getByRole('button', { name: title }).waitFor({ timeout: 60_000 });
        await planState(/Plan is current/).waitFor({ timeout: 280_000 });
      }
    },
    900_000,
  );
});

describe('the theme', () => {
  it('changes as fast as it is pressed, and the map asks for nothing it does not get', async () => {
    for (const view of ['stock', 'days', 'coverage']) {
      await page.goto(`${dashboard.address}#/${view}`);
      await answer().waitFor();
      for (const [i, theme] of ['Dark', 'Light', 'Dark', 'Light', 'Dark', 'Light'].entries()) {
        await page.getByRole('button', { name: theme }).click();
        await page.waitForTimeout(40 * i);
      }
    }
    await page.waitForTimeout(500);
  });
});

describe('accessibility', () => {
  const axe = readFileSync(fileURLToPath(new URL('../../node_modules/axe-core/axe.min.js', import.meta.url)), 'utf8');

  it.each(['stock', 'days', 'coverage', 'problems'])(
    'axe finds nothing in the view %s, light and dark',
    async (view) => {
      await page.goto(`${dashboard.address}#/${view}`);
      await answer().waitFor();
      for (const theme of ['Dark', 'Light']) {
        await page.getByRole('button', { name: theme }).click();
        await page.waitForTimeout(300);
        await page.evaluate(axe);
        const found = await page.evaluate(async () => {
          const { violations } = await (window as unknown as { axe: Axe }).axe.run();
          return violations.map(({ id, nodes }) => `${id}: ${JSON.stringify(nodes.slice(0, 3).map((n) => n.target))}`);
        });
        expect(found).toEqual([]);
      }
    },
  );
});
