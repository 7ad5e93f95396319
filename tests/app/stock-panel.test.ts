import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { SeasonState } from '../../src/app/state/season-state.ts';
import { StoresContext } from '../../src/app/state/use-stores.ts';
import { createViewStore } from '../../src/app/state/view-store.ts';
import { VIEWS } from '../../src/app/views.ts';
import type { Decision } from '../../src/engine/index.ts';
import { stockCase } from '../presentation/views/stock-case.ts';

const { plan, scenario, stock } = stockCase('tiny-district');
const STOCK = VIEWS.stock;

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

/** The view's parts as markup, as they stand when the page is first drawn. */
function markup(
  part: 'Answer' | 'Panel' | 'Chart' | 'Legend',
  place = {},
  decisions: readonly Decision[] = [],
): string {
  const nowhere = { view: 'stock', zone: null, community: null, day: null, hour: null, paper: null } as const;
  const planned = { files: new Map(), decisions: [] };
  const state = { plan, scenario, decisions, files: planned.files, plannedFrom: planned };
  const season = createStore(() => state as unknown as SeasonState);
  const stores = { season, view: createViewStore(kept, false, { ...nowhere, ...place }) };
  return renderToStaticMarkup(createElement(StoresContext, { value: stores }, createElement(STOCK[part])));
}

const count = (text: string, pattern: RegExp) => (text.match(pattern) ?? []).length;

describe('the stock panel', () => {
  it('is a grid with one tab stop, a row for each zone and one for all', () => {
    const html = markup('Panel');
    const cells = html.match(/<[^>]*data-cell="[^>]*>/g) ?? [];
    expect(cells.length).toBeGreaterThan(10);
    expect(cells.filter((cell) => cell.includes('tabindex="0"'))).toHaveLength(1);
    expect(new Set(cells.map((cell) => /data-cell="([^"]*)"/.exec(cell)?.[1])).size).toBe(cells.length);
    for (const { name } of stock.grid.zones) expect(html).toContain(name);
    expect(count(html, /class="is-sum"/g)).toBe(1);
  });

  it('marks the chosen zone, and shows the chosen community below its zone', () => {
    const zone = plan.ids.zones[0] ?? null;
    const community = scenario.communities[stock.parts.find((part) => part.zone === 0)?.community ?? -1];
    expect(count(markup('Panel', { zone }), /aria-selected="true"/g)).toBe(1);
    const html = markup('Panel', { zone, community: community?.id ?? null });
    expect(count(html, /class="is-community"/g)).toBe(1);
    expect(html).toContain(community?.name);
  });

  it('says in the cell that a share is fixed, and loses the weight of what rests on it', () => {
    const [row] = stock.grid.zones;
    const fixes = (row?.cells[0]?.communityIds ?? []).map(
      (communityId): Decision => ({
        kind: 'fix',
        communityId,
        crop: plan.ids.crops[0] ?? 'soybean',
        commodity: 'inoculant',
        share: 0.15,
      }),
    );
    expect(markup('Panel')).not.toContain('fixed-mark');
    const html = markup('Panel', {}, fixes);
    expect(html).toMatch(/class="fixed-mark">fixed 15</);
    expect(html).toContain('is-stale');
  });

  it('has a bar and an expiry date for each lot shown', () => {
    const html = markup('Chart');
    expect(count(html, /lots-bar/g)).toBe(Math.min(7, scenario.lots.length));
    expect(count(html, /Expires/g)).toBe(Math.min(7, scenario.lots.length));
  });

  it('opens every figure in the answer, and draws no map before there is a plan', () => {
    expect(count(markup('Answer'), /class="figure/g)).toBe(stock.headline.figures.length);
    const none = { plan: null, scenario: null } as unknown as SeasonState;
    expect(STOCK.picture(none, {} as never, {} as never).fills).toEqual([]);
  });
});
