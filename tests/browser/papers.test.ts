import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PaperSize } from '../../src/presentation/papers/page-style.ts';
import { type PaperCase, paperCase } from '../../src/presentation/papers/paper-case.ts';
import { PAPERS, papersOf } from '../../src/presentation/papers/paper-sets.ts';
import { renderDocument } from '../../src/presentation/papers/render-page.ts';
import { pseudoWords } from '../../src/presentation/wording/pseudo.ts';
import { english } from '../../src/presentation/wording/words.ts';
import { projectRoot } from '../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../plan-files.ts';
import { findChromium, LAUNCH_ARGUMENTS } from './find-chromium.mjs';

/** Every paper of the busiest day of the demonstration district, on both sizes, in English and in words a third longer. */
let browser: Browser;
let cases: Readonly<Record<string, PaperCase>>;
let day: string;

beforeAll(async () => {
  const executablePath = await findChromium();
  if (!executablePath) throw new Error('No Chromium found, fetched or installed: browser tests cannot run.');
  browser = await chromium.launch({ executablePath, args: LAUNCH_ARGUMENTS });
  const { plan, scenario } = planFiles(readFolderFiles(join(projectRoot, 'scenarios', 'demo-district')), 300);
  cases = { english: paperCase(plan, scenario, [], english), pseudo: paperCase(plan, scenario, [], pseudoWords()) };
  const { date } = plan.delivery.trips;
  const count = (of: string) => date.filter((one) => one === of).length;
  day = [...new Set(date)].sort((a, b) => count(b) - count(a))[0] ?? '';
}, 240_000);
afterAll(() => browser?.close());

interface Faults {
  readonly sheets: number;
  readonly beyondTheEdge: readonly string[];
  readonly tooSmall: readonly string[];
  readonly coloured: readonly string[];
}

/** What leaves its sheet or its cell, type below 8.5 points, and anything that is not black, white or grey. */
async function faultsOf(page: Page): Promise<Faults> {
  return page.evaluate(() => {
    const sheets = [...document.querySelectorAll<HTMLElement>('.paper')];
    const told = (element: Element) => `${element.tagName} ${element.className}: ${element.textContent?.slice(0, 60)}`;
    const found = {
      sheets: sheets.length,
      beyondTheEdge: [] as string[],
      tooSmall: [] as string[],
      coloured: [] as string[],
    };
    for (const sheet of sheets) {
      const edge = sheet.getBoundingClientRect();
      for (const element of sheet.querySelectorAll<HTMLElement>('*:not(svg *)')) {
        const box = element.getBoundingClientRect();
        if (box.right > edge.right + 1 || box.left < edge.left - 1) found.beyondTheEdge.push(told(element));
        const cell = element.matches('td, th, .corner, li') && element.scrollWidth > element.clientWidth + 2;
        if (cell) found.beyondTheEdge.push(`in its cell: ${told(element)}`);
        const style = getComputedStyle(element);
        if (
          element.childElementCount === 0 &&
          element.textContent &&
          Number.parseFloat(style.fontSize) < (8.5 * 96) / 72 - 0.01
        )
          found.tooSmall.push(`${style.fontSize} ${told(element)}`);
        for (const colour of [style.color, style.borderBottomColor, style.backgroundColor]) {
          const [red, green, blue] = colour.match(/[\d.]+/g) ?? [];
          if (red !== green || green !== blue) found.coloured.push(`${colour} ${told(element)}`);
        }
      }
    }
    return found;
  });
}

async function opened(language: string, size: PaperSize, paper: (typeof PAPERS)[number]): Promise<Page> {
  const c = cases[language] as PaperCase;
  const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
  await page.setContent(
    renderDocument(papersOf(c, paper, day), { title: paper, language: c.words.language.code, size }),
  );
  return page;
}

describe.each([
  ['english', 'A4'],
  ['english', 'Letter'],
  ['pseudo', 'A4'],
  ['pseudo', 'Letter'],
] as const)('papers in %s on %s', (language, size) => {
  it.each(PAPERS)(
    '%s: nothing leaves its sheet, no type is below 8.5 points, and all is black on white',
    async (paper) => {
      const page = await opened(language, size, paper);
      const { sheets, ...faults } = await faultsOf(page);
      expect(sheets).toBeGreaterThan(0);
      expect(faults).toEqual({ beyondTheEdge: [], tooSmall: [], coloured: [] });
      await page.close();
    },
  );
});

describe('printed', () => {
  it.each([
    ['A4', /MediaBox \[0 0 59[45][\d.]* 84[12][\d.]*\]/],
    ['Letter', /MediaBox \[0 0 612 792\]/],
  ] as const)(
    'on %s every route sheet has two pages, front and back, or three where the day is long',
    async (size, box) => {
      const page = await opened('english', size, 'route');
      const sheets = await page.locator('.paper').count();
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect(pdf).toMatch(box);
      const pages = pdf.match(/\/Type \/Page\b/g)?.length ?? 0;
      expect(pages).toBeGreaterThanOrEqual(sheets);
      expect(pages).toBeLessThanOrEqual(3 * sheets);
      await page.close();
    },
  );

  it('a handover sheet takes two pages at most', async () => {
    const page = await opened('english', 'A4', 'handover');
    const sheets = await page.locator('.paper').count();
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type \/Page\b/g)?.length ?? 0).toBeLessThanOrEqual(2 * sheets);
    await page.close();
  });
});

describe('on a phone', () => {
  it('a handover sheet is one column, and its amounts need no scroll to the side', async () => {
    const page = await opened('english', 'A4', 'handover');
    await page.setViewportSize({ width: 390, height: 844 });
    const sideways = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(sideways).toBeLessThanOrEqual(0);
    expect(await page.locator('.signatures:visible').count()).toBe(0);
    await page.close();
  });
});
