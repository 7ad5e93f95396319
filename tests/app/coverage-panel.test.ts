import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { SeasonState } from '../../src/app/state/season-state.ts';
import { StoresContext } from '../../src/app/state/use-stores.ts';
import { createViewStore } from '../../src/app/state/view-store.ts';
import { VIEWS } from '../../src/app/views.ts';
import type { Language } from '../../src/presentation/wording/words.ts';
import { tinyWithFertiliser } from '../fertiliser-files.ts';
import { planFiles } from '../plan-files.ts';
import { stockCase } from '../presentation/views/stock-case.ts';

const { plan, scenario } = stockCase('tiny-district');
const COVERAGE = VIEWS.coverage;

interface Shown {
  readonly zone?: string | null;
  readonly language?: Language;
  readonly season?: Partial<SeasonState>;
}

/** A part of the view as markup, as it stands when the page is first drawn. */
function markup(part: 'Answer' | 'Panel' | 'Chart' | 'Legend', shown: Shown = {}): string {
  const kept = {
    decisionsFor: () => null,
    keepDecisions: () => undefined,
    recordsFor: () => ({ handovers: null, entries: [], events: [] }),
    keepRecords: () => undefined,
    theme: () => 'light' as const,
    keepTheme: () => undefined,
    language: () => shown.language ?? ('english' as const),
    keepLanguage: () => undefined,
  };
  const planned = { files: new Map(), decisions: [] };
  const state = { plan, scenario, decisions: [], files: planned.files, plannedFrom: planned, ...shown.season };
  const season = createStore(() => state as unknown as SeasonState);
  const place = {
    view: 'coverage',
    zone: shown.zone ?? null,
    community: null,
    day: null,
    hour: null,
    paper: null,
  } as const;
  const stores = { season, view: createViewStore(kept, false, place) };
  return renderToStaticMarkup(createElement(StoresContext, { value: stores }, createElement(COVERAGE[part])));
}

const count = (text: string, pattern: RegExp) => (text.match(pattern) ?? []).length;

describe('the coverage panel', () => {
  it('is a grid with one tab stop, a row for each zone and one for the district', () => {
    const html = markup('Panel');
    const cells = html.match(/<[^>]*data-cell="[^>]*>/g) ?? [];
    expect(cells.filter((cell) => cell.includes('tabindex="0"'))).toHaveLength(1);
    expect(new Set(cells.map((cell) => /data-cell="([^"]*)"/.exec(cell)?.[1])).size).toBe(cells.length);
    expect(count(html, /class="row-name"/g)).toBe(scenario.zones.length + 1);
    for (const { name } of scenario.zones) expect(html).toContain(name);
  });

  it('marks the chosen zone', () => {
    expect(count(markup('Panel', { zone: plan.ids.zones[0] ?? null }), /aria-selected="true"/g)).toBe(1);
    expect(count(markup('Panel'), /aria-selected="true"/g)).toBe(0);
  });

  it('says that nothing is signed for until something is', () => {
    expect(count(markup('Panel'), /nothing yet/g)).toBe(2);
    const handover = {
      date: 0,
      communityId: '',
      lotId: '',
      packs: 0,
      kg: null,
      boxC: null,
      returnedPacks: 0,
      sownOn: null,
    };
    const signed = { ...scenario, handovers: [handover] } as unknown as typeof scenario;
    expect(markup('Panel', { season: { scenario: signed } })).not.toContain('nothing yet');
  });

  it('tells what the phosphorus of fertiliser adds where it goes along, and nothing where none does', () => {
    expect(markup('Panel')).not.toContain('By phosphorus');
    const fertilised = planFiles(tinyWithFertiliser(40));
    const html = markup('Panel', { season: { plan: fertilised.plan, scenario: fertilised.scenario } });
    expect(html).toMatch(/By phosphorus.*Fertiliser for .*; grain/);
    expect(html).not.toMatch(/NaN|undefined/);
  });

  it('names the price that is missing, and prices nothing without it', () => {
    const { headline } = plan.outcomes;
    const prices = { ...scenario.prices, nitrogenPerKg: null };
    const unpriced = { ...plan, outcomes: { ...plan.outcomes, headline: { ...headline, residualWorth: null } } };
    const html = markup('Panel', { season: { plan: unpriced, scenario: { ...scenario, prices } } });
    expect(html).toContain('scenario.json gives no price of nitrogen');
    expect(html).not.toContain('worth <');
  });

  it('speaks of what is expected, never of what was reached', () => {
    for (const part of ['Answer', 'Panel', 'Chart', 'Legend'] as const)
      expect(markup(part).replaceAll(/title="[^"]*"/g, '')).not.toMatch(/\breached\b/);
  });

  it('has every word from the dictionary', () => {
    // Names, files and the reasons of the evidence stay as they are; the words of the page are lengthened.
    expect(markup('Answer', { language: 'pseudo' })).not.toContain('expected');
    expect(markup('Chart', { language: 'pseudo' }).replaceAll(/<[^>]*>/g, ' ')).not.toContain('planned');
  });

  it('waits for a plan', () => {
    expect(markup('Panel', { season: { plan: null, read: null, planning: null } })).toBe('');
  });
});
