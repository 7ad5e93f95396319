import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { prerenderToNodeStream } from 'react-dom/static';
import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import { loadPlanningTools } from '../../src/adapters/tools/load-planning-tools.ts';
import type { SeasonState } from '../../src/app/state/season-state.ts';
import { StoresContext } from '../../src/app/state/use-stores.ts';
import { createViewStore } from '../../src/app/state/view-store.ts';
import { VIEWS } from '../../src/app/views.ts';
import { calendarOf, type Decision } from '../../src/engine/index.ts';
import { vehiclesOfDay } from '../../src/presentation/views/days-fleet.ts';
import { english } from '../../src/presentation/wording/words.ts';
import { stockCase } from '../presentation/views/stock-case.ts';

const { plan, scenario, decisions: planned } = stockCase('demo-district');
const { overlay } = await loadPlanningTools();
const worth = calendarOf(scenario, planned, null, overlay);
const DAYS = VIEWS.days;
const day = [...plan.delivery.trips.date].sort()[0] ?? '';
const vehicles = vehiclesOfDay(plan, scenario, day);

const kept = {
  decisionsFor: () => null,
  keepDecisions: () => undefined,
  recordsFor: () => ({ handovers: null, entries: [], events: [] }),
  keepRecords: () => undefined,
  theme: () => 'light' as const,
  keepTheme: () => undefined,
  language: () => 'english' as const,
  keepLanguage: () => undefined,
};

function stores(place = {}, decisions: readonly Decision[] = []) {
  const nowhere = { view: 'days', zone: null, community: null, day: null, hour: null, paper: null } as const;
  const from = { files: new Map(), decisions: [] };
  const state = { plan, scenario, decisions, files: from.files, plannedFrom: from, calendar: { of: plan, worth } };
  const season = createStore(() => state as unknown as SeasonState);
  return { season, view: createViewStore(kept, false, { ...nowhere, ...place }) };
}

const markup = (
  part: 'Answer' | 'Panel' | 'Chart' | 'Legend',
  place = {},
  decisions: readonly Decision[] = [],
): string =>
  renderToStaticMarkup(createElement(StoresContext, { value: stores(place, decisions) }, createElement(DAYS[part])));

/** The same with what is loaded a little later. */
async function wholeMarkup(part: 'Panel', place = {}): Promise<string> {
  const parts = createElement(StoresContext, { value: stores(place) }, createElement(DAYS[part]));
  const { prelude } = await prerenderToNodeStream(parts);
  let html = '';
  for await (const piece of prelude) html += piece;
  return html;
}

const count = (text: string, pattern: RegExp) => (text.match(pattern) ?? []).length;
const partOf = (html: string, className: string) =>
  new RegExp(`<table class="${className}[\\s\\S]*?</table>`).exec(html)?.[0] ?? '';

describe('days and routes', () => {
  it('answers with vehicle-days, days and hectares', () => {
    const text = markup('Answer').replace(/<[^>]*>/g, '');
    const vehicleDays = new Set(plan.delivery.trips.vehicle.map((v, row) => `${v} ${plan.delivery.trips.date[row]}`))
      .size;
    expect(text).toContain(`${vehicleDays} vehicle-days on ${new Set(plan.delivery.trips.date).size} days`);
  });

  it('has a calendar with one tab stop, a cell for each zone and working day, and the day shown as current', () => {
    const calendar = partOf(markup('Panel', { day }), 'day-table day-calendar');
    const cells = calendar.match(/<button[^>]*data-cell="[^>]*>/g) ?? [];
    const working = plan.season.workday.filter((works) => works === 1).length;
    expect(cells).toHaveLength(scenario.zones.length * (working + 2));
    expect(cells.filter((cell) => cell.includes('tabindex="0"'))).toHaveLength(1);
    expect(count(calendar, /aria-current="date"/g)).toBe(1);
    expect(count(calendar, /aria-pressed="true"/g)).toBe(scenario.zones.length);
    // A cell says in words what its bar and its frame say.
    const labels = cells
      .filter((cell) => cell.includes('day-cell'))
      .map((cell) => /aria-label="([^"]*)"/.exec(cell)?.[1]);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('tells of the chosen zone what takes its value, when to leave, and whether to hold for rain', async () => {
    const text = (await wholeMarkup('Panel', { day, zone: 'Z07' })).replace(/<[^>]*>/g, ' ');
    for (const part of [
      /Keeps\s+\d+/,
      'the day on the seed',
      /Leave by \d\d:\d\d/,
      'fall in three days?',
      'sown too late',
    ]) {
      expect(text).toMatch(part);
    }
    expect(await wholeMarkup('Panel', { day })).toContain('Choose a zone');
  });

  it('shows the cautions: label first, hold after heat, no freezer, no vaccine fridge, the crew’s own heat', () => {
    const text = markup('Panel', { day });
    for (const word of ['label', 'on hold', 'Never freeze', 'vaccine fridge never', 'crew'])
      expect(text).toContain(word);
  });

  it('gives strip and calendar the same columns', () => {
    const html = markup('Panel');
    const columns = (name: string) => partOf(html, name).match(/<colgroup>.*?<\/colgroup>/s)?.[0];
    expect(columns('day-table season-strip')).toBe(columns('day-table day-calendar'));
  });

  it('lists the vehicles of the day and the stops of the one whose packs get warmest', () => {
    const html = markup('Panel', { day });
    for (const { id } of vehicles) expect(partOf(html, 'ruled vehicles')).toContain(id);
    const [warmest] = [...vehicles].sort((a, b) => (b.packMaxC ?? -1) - (a.packMaxC ?? -1));
    const stops = partOf(html, 'ruled stop-table');
    expect(count(stops, /aria-label="Hold here: /g)).toBe(warmest?.stopCount);
  });

  it('says which vehicle a decision keeps away', () => {
    const [vehicle] = vehicles;
    const away: Decision = { kind: 'vehicle-away', vehicleId: vehicle?.id ?? '', from: day, to: day };
    const buttons = (html: string) => count(partOf(html, 'ruled vehicles'), /class="link decide"/g);
    expect(buttons(markup('Panel', { day }))).toBe(vehicles.length);
    expect(buttons(markup('Panel', { day }, [away]))).toBe(vehicles.length - 1);
  });

  it('has an hour slider over the chart, within the hours of the day', () => {
    const slider = /<input[^>]*type="range"[^>]*>/.exec(markup('Chart', { day, hour: 615 }))?.[0] ?? '';
    expect(slider).toContain('aria-valuetext="10:15"');
    expect(slider).toContain('step="5"');
    expect(markup('Chart', { day })).toContain(english.days.chartTable);
  });

  it('gives the map the same picture for the same hour, and the same routes for another', () => {
    const state = stores().season.getState();
    const at = (hour: number) => DAYS.picture(state, stores({ day, hour }).view.getState(), english);
    expect(at(600)).toBe(at(600));
    const [early, late] = [at(600), at(660)];
    expect(late).not.toBe(early);
    expect(late.lines).toBe(early.lines);
    expect(late.fills).toBe(early.fills);
    expect(new Set(early.lines.map(({ pattern, tone }) => `${pattern} ${tone}`)).size).toBe(vehicles.length);
  });
});
