import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { CDPSession, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Dashboard, openDashboard } from './open-dashboard.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** The first price has the plan laid out beside the page. */
const FIRST_PRICE = 120_000;
/** A day on which vehicles of one depot have room for each other's stops. */
const DAY = '2026-11-20';
const PRICE = /dearer in all|cheaper in all|Neither dearer nor cheaper/;

let dashboard: Dashboard;
beforeAll(async () => {
  dashboard = await openDashboard();
}, 240_000);
afterAll(() => dashboard?.close());

async function openDays(options: Parameters<Dashboard['browser']['newPage']>[0]) {
  const page = await dashboard.browser.newPage(options);
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(`${dashboard.address}#/days?day=${DAY}`);
  await page.locator('.stop-grip').first().waitFor();
  // The check of the plan and the worth of its days come first.
  await page.getByText('Arrows move through the calendar').waitFor({ timeout: 60_000 });
  return { page, complaints };
}

async function middleOf(locator: Locator) {
  const box = await locator.boundingBox();
  if (!box) throw new Error('not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

const board = (page: Page) => page.locator('.move-board');
const form = (page: Page) => page.locator('.move-stop');
const allPriced = (page: Page) =>
  page.waitForFunction(
    () => {
      const costs = [...document.querySelectorAll('.move-cell b')];
      return costs.length > 0 && costs.every(({ textContent }) => textContent !== '…');
    },
    undefined,
    { timeout: FIRST_PRICE },
  );

async function takeUp(page: Page, grip: Locator) {
  const { x, y } = await middleOf(grip);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 12, y, { steps: 3 });
  await board(page).waitFor();
}

async function moveOnto(page: Page, target: Locator) {
  const { x, y } = await middleOf(target);
  await page.mouse.move(x, y, { steps: 4 });
}

const POSSIBLE = '.move-cell:not(.is-barred, .is-here)';

/** Takes up the first stop of the day that another vehicle on the road that day could bring, and tells which. */
async function takeUpForVehicle(page: Page): Promise<string> {
  const rows = page.locator('.vehicles tbody tr');
  for (let row = 0; row < (await rows.count()); row++) {
    await rows.nth(row).getByRole('button').first().click();
    const grips = page.locator('.stop-grip');
    for (let stop = 0; stop < (await grips.count()); stop++) {
      await scrollTo(page, '.vehicles', 40);
      await takeUp(page, grips.nth(stop));
      await allPriced(page);
      for (const cell of await page.locator(`.move-vehicles ${POSSIBLE}`).all()) {
        const vehicle = (await cell.getAttribute('data-vehicle')) ?? '';
        if ((await page.locator(`.vehicles [data-vehicle="${vehicle}"]`).count()) > 0) return vehicle;
      }
      await page.keyboard.press('Escape');
      await page.mouse.up();
    }
  }
  throw new Error('no stop of the day can go with another vehicle');
}

/** Brings the upper edge of something to a height on the screen. */
const scrollTo = (page: Page, selector: string, top: number) =>
  page.locator(selector).evaluate((element, at) => scrollBy(0, element.getBoundingClientRect().top - at), top);

async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: readonly { id: string; nodes: readonly { html: string }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
  });
}

describe('a stop dragged by mouse', () => {
  it('tells the price over a row and a column, stays on Escape, and moves to a vehicle and a day once accepted', async () => {
    const { page, complaints } = await openDays({ viewport: { width: 1366, height: 768 } });
    const state = page.getByRole('banner').getByText(/Plan is current|changed/);

    // A press that does not go anywhere opens the menu, as its button does.
    await page.locator('.stop-grip').first().click();
    await form(page).waitFor();
    expect(await board(page).count()).toBe(0);
    await page.getByRole('button', { name: 'Leave it' }).click();

    // Over a row of another depot's vehicle: why not, beside the pointer. Escape: nothing of it is left.
    await scrollTo(page, '.vehicles', 40);
    await takeUp(page, page.locator('.stop-grip').first());
    await allPriced(page);
    const onBoard = await page
      .locator('.move-vehicles .move-cell')
      .evaluateAll((cells) => cells.map((cell) => cell.getAttribute('data-vehicle')));
    const rows = page.locator('.vehicles tbody tr');
    const stranger = await rows.evaluateAll(
      (all, known) => all.findIndex((row) => !known.includes(row.getAttribute('data-vehicle'))),
      onBoard,
    );
    await moveOnto(page, rows.nth(stranger));
    await page.locator('.move-tag').getByText('it leaves from another depot').waitFor();
    await page.locator('.move-frame.is-barred').waitFor();
    await page.keyboard.press('Escape');
    expect(await board(page).count()).toBe(0);
    await page.mouse.up();
    expect(await form(page).count()).toBe(0);
    expect(await state.textContent()).toContain('Plan is current');

    // Onto another vehicle.
    const vehicle = await takeUpForVehicle(page);
    await moveOnto(page, page.locator(`.vehicles [data-vehicle="${vehicle}"]`));
    await page.locator('.move-tag').getByText(PRICE).waitFor();
    expect(await page.locator('.move-told').textContent()).toMatch(PRICE);
    expect(await axeFaults(page)).toEqual([]);
    await page.mouse.up();
    expect(await form(page).getByLabel('vehicle').inputValue()).toBe(vehicle);
    await form(page).getByText(PRICE).waitFor();
    expect(await state.textContent()).toContain('Plan is current');
    await page.keyboard.press('Enter');
    await page.getByText(`Moves to ${vehicle}`).waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Move');
    expect(await state.textContent()).toContain('changed');

    // Onto another day, over the calendar's column; left once, it stays where it was.
    const grip = page.locator('tr:not(:has(.moves-to)) > td > .stop-grip').first();
    await scrollTo(page, '.day-calendar tbody tr:last-child', 60);
    await takeUp(page, grip);
    await allPriced(page);
    const day = (await page.locator(`.move-days ${POSSIBLE}`).last().getAttribute('data-day')) ?? '';
    const column = page.locator(`.day-calendar tbody tr:last-child [data-day="${day}"]`);
    await moveOnto(page, column);
    await page.locator('.move-tag').getByText(PRICE).waitFor();
    const [frame, cell] = [await page.locator('.move-frame').boundingBox(), await column.boundingBox()];
    expect(frame?.x).toBeCloseTo(cell?.x ?? Number.NaN, 0);
    await page.mouse.up();
    await form(page).getByText(PRICE).waitFor();
    await form(page).getByRole('button', { name: 'Leave it' }).click();
    expect(await page.locator('.moves-to').count()).toBe(1);
    await takeUp(page, grip);
    await moveOnto(page, column);
    await page.mouse.up();
    expect(await form(page).getByLabel('day').inputValue()).toBe(day);
    await form(page).getByRole('button', { name: 'Move it' }).click();
    await expect.poll(() => page.locator('.moves-to').count()).toBe(2);

    // Planned again, what was moved is listed.
    const places = await page.locator('tr:has(.moves-to) > th').allInnerTexts();
    await page.getByRole('button', { name: 'Plan the days again' }).click();
    const changes = page.locator('.replan-days');
    await changes.getByRole('heading', { name: 'What changes' }).waitFor({ timeout: 120_000 });
    const told = await changes.textContent();
    expect(told).toContain(`with ${vehicle}, not`);
    for (const place of places) {
      const [, community = ''] = / for ([^\n,]+)/.exec(place) ?? [];
      expect(told).toContain(community);
    }
    expect(await page.getByText(/Check found/).count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.close();
  }, 400_000);
});

describe('a stop dragged by finger', () => {
  it('is taken by its number; beside the number the page scrolls; a touch that is lost leaves it', async () => {
    const { page, complaints } = await openDays({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      colorScheme: 'dark',
    });
    const touch = await page.context().newCDPSession(page);
    const grip = page.locator('.stop-grip').nth(1);
    await grip.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    const { width = 0, height = 0 } = (await grip.boundingBox()) ?? {};
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(44);

    const scrolled = () => page.evaluate(() => scrollY);
    const before = await scrolled();
    const beside = await middleOf(page.locator('.stop-table .goods').nth(1));
    await swipe(touch, beside, { x: beside.x, y: beside.y - 200 });
    await lift(touch);
    await expect.poll(scrolled).toBeGreaterThan(before);
    // A swipe lets the page run on for a while.
    await page.waitForTimeout(1500);

    await grip.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    const still = await scrolled();
    const from = await middleOf(grip);
    await swipe(touch, from, { x: from.x + 40, y: from.y - 60 });
    await board(page).waitFor();
    await allPriced(page);
    const cell = page.locator(`.move-days ${POSSIBLE}`).first();
    const day = (await cell.getAttribute('data-day')) ?? '';
    await reach(touch, await middleOf(cell));
    await page.locator('.move-told').getByText(PRICE).waitFor();
    expect(await scrolled()).toBe(still);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await axeFaults(page)).toEqual([]);
    await lift(touch);
    expect(await form(page).getByLabel('day').inputValue()).toBe(day);
    await form(page).getByText(PRICE).waitFor();
    await form(page).getByRole('button', { name: 'Leave it' }).tap();

    await swipe(touch, await middleOf(grip), { x: 200, y: 200 });
    await board(page).waitFor();
    await touch.send('Input.dispatchTouchEvent', { type: 'touchCancel', touchPoints: [] });
    await board(page).waitFor({ state: 'detached' });
    expect(await form(page).count()).toBe(0);
    expect(complaints).toEqual([]);
    await page.close();
  }, 240_000);
});

interface Point {
  readonly x: number;
  readonly y: number;
}

async function swipe(touch: CDPSession, from: Point, to: Point): Promise<void> {
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [from] });
  for (let step = 1; step <= 6; step++) {
    const part = step / 6;
    await reach(touch, { x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part });
  }
}

async function reach(touch: CDPSession, at: Point): Promise<void> {
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [at] });
}

async function lift(touch: CDPSession): Promise<void> {
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}
