import { text } from 'node:stream/consumers';
import { createElement } from 'react';
import { prerenderToNodeStream } from 'react-dom/static';
import { describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { SeasonState } from '../../src/app/state/season-state.ts';
import { StoresContext } from '../../src/app/state/use-stores.ts';
import type { ViewState } from '../../src/app/state/view-store.ts';
import { VIEWS } from '../../src/app/views.ts';
import type { Lot, Product } from '../../src/engine/index.ts';
import { stockCase } from '../presentation/views/stock-case.ts';

/** What a phone beside the basin shows of lots and products that have changed since the plan was made. */
const { plan, scenario } = stockCase('tiny-district');
const [grant] = plan.allocation.grants.lot.flatMap((lot, row) => (plan.ids.lots[lot] === 'LOT-INO' ? [row] : []));
const community = plan.ids.communities[plan.allocation.grants.community[grant ?? -1] ?? -1] ?? '';

interface Change {
  readonly lot?: (lot: Lot) => Lot;
  readonly product?: (product: Product) => Product;
}

async function shown({ lot = (one) => one, product = (one) => one }: Change = {}): Promise<string> {
  const changed = { ...scenario, lots: scenario.lots.map(lot), products: scenario.products.map(product) };
  const season = createStore(() => ({ plan, scenario: changed, decisions: [] }) as unknown as SeasonState);
  const view = createStore(() => ({ community, language: 'english', view: 'handover' }) as unknown as ViewState);
  const { Answer, Panel, Chart } = VIEWS.handover;
  const parts = [Answer, Panel, Chart].map((part, key) => createElement(part, { key }));
  // The parts are loaded when asked for, and waited for here.
  const { prelude } = await prerenderToNodeStream(createElement(StoresContext, { value: { season, view } }, parts));
  return (await text(prelude)).replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
}

const held = { lot: (lot: Lot): Lot => (lot.id === 'LOT-INO' ? { ...lot, status: 'on_hold' } : lot) };
const treated = (inoculantAllowed: boolean) => ({
  product: (one: Product): Product => (one.kind === 'seed' ? { ...one, treatedSeed: true, inoculantAllowed } : one),
});

describe('the handover on a phone', () => {
  it('tells amounts and steps for packs in order', async () => {
    const page = await shown();
    expect(page).toMatch(/gets [\d\s]+ packs? of inoculant/);
    expect(page).toContain('level caps of powder');
    expect(page).toContain('Coat on the morning you sow');
  });

  it('tells no amount, no share and no step of packs on hold, and has them given back', async () => {
    const page = await shown(held);
    expect(page).not.toMatch(/packs? of inoculant/);
    expect(page).not.toContain('level caps of powder');
    expect(page).not.toContain('Coat on the morning you sow');
    expect(page).toContain('DO NOT USE: on hold. Give it back.');
  });

  it('has treated seed coated by its label alone, with gloves', async () => {
    expect(await shown(treated(false))).toContain('Treated and poisonous. Do NOT coat it.');
    expect(await shown(treated(true))).toContain(
      'Its label allows coating: gloves, and let the dressing dry fully first.',
    );
  });

  it('measures a liquid in caps of millilitres', async () => {
    const page = await shown({
      product: (one) => (one.kind === 'inoculant' ? { ...one, packUnit: 'mL' } : one),
    });
    expect(page).toContain('caps of inoculant');
    expect(page).toContain('Shake the bottle');
    expect(page).not.toContain('powder');
  });
});
