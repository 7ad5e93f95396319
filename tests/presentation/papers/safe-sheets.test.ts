import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, type Lot, type Plan, type Product, type Scenario } from '../../../src/engine/index.ts';
import { paperCase } from '../../../src/presentation/papers/paper-case.ts';
import { type DAY_PAPERS, papersOf } from '../../../src/presentation/papers/paper-sets.ts';
import { renderPages } from '../../../src/presentation/papers/render-page.ts';
import { HANDOVER_WORDING } from '../../../src/presentation/wording/english/handover.ts';
import { COMMUNITY_PAPERS } from '../../../src/presentation/wording/english/papers-community.ts';
import { ROAD_PAPERS } from '../../../src/presentation/wording/english/papers-road.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { projectRoot } from '../../architecture/source-files.ts';
import { planFiles, readFolderFiles } from '../../plan-files.ts';
import { figureOf, papersIn, tablesOf, textOf } from './read-paper.ts';

/**
 * No sheet tells a person to coat treated seed without the label's leave, to exceed a dose, to use an expired, held or heated
 * pack, or to wet coated seed again: tried on plans whose lots and products have changed since, as they do between planning
 * and printing.
 */
const { plan, scenario } = planFiles(readFolderFiles(join(projectRoot, 'scenarios', 'tiny-district')), 500);
const days = [...new Set(plan.delivery.trips.date)];

interface Spoil {
  readonly lot?: (lot: Lot) => Lot;
  readonly product?: (product: Product) => Product;
  readonly packMaxC?: number;
}

function sheets(
  { lot = (one) => one, product = (one) => one, packMaxC }: Spoil,
  paper: (typeof DAY_PAPERS)[number] = 'handover',
) {
  const changed: Scenario = { ...scenario, lots: scenario.lots.map(lot), products: scenario.products.map(product) };
  const stops = { ...plan.delivery.stops };
  const hot = stops.packMaxC.map((celsius) => (packMaxC !== undefined && celsius !== null ? packMaxC : celsius));
  const heated: Plan = { ...plan, delivery: { ...plan.delivery, stops: { ...stops, packMaxC: hot } } };
  const c = paperCase(heated, changed, [], english);
  return days.flatMap((day) => papersIn(renderPages(papersOf(c, paper, day))));
}

const ladders = (all: readonly string[]) =>
  all.flatMap((sheet) => tablesOf(sheet).filter(({ name }) => name === 'ladder'));
const inoculant = (change: Partial<Lot>) => (lot: Lot) => (lot.id === 'LOT-INO' ? { ...lot, ...change } : lot);

describe('a pack that may not be used', () => {
  it('is coated with where it may: the sheets of the plan as it is have amounts', () => {
    expect(ladders(sheets({})).length).toBeGreaterThan(0);
  });

  it.each([
    ['on hold', { lot: inoculant({ status: 'on_hold' }) }, 'on hold'],
    ['awaiting its test', { lot: inoculant({ status: 'awaiting' }) }, 'on hold'],
    ['past its last day', { lot: inoculant({ expires: dayNumber(20_000) }) }, 'past its'],
    ['heated to 40 °C', { packMaxC: 40 }, 'met heat'],
  ] as const)(
    'because it is %s is marked on every paper, and no amount, no share and no step speaks of it',
    (_, spoil, said) => {
      const handovers = sheets(spoil);
      expect(ladders(handovers)).toEqual([]);
      for (const sheet of handovers) {
        expect(tablesOf(sheet).some(({ name }) => name === 'sharing')).toBe(false);
        expect(textOf(sheet)).not.toContain(COMMUNITY_PAPERS.stepsTitle);
      }
      expect(handovers.some((sheet) => new RegExp(`DO NOT USE: (it )?${said}`).test(textOf(sheet)))).toBe(true);
      for (const paper of ['route', 'waybill', 'pick'] as const) {
        const text = sheets(spoil, paper).map(textOf).join(' ');
        expect(text, paper).toMatch(new RegExp(`DO NOT HAND OVER: ${said}`));
        expect(text, paper).not.toMatch(/\d packs? soybean/);
      }
    },
  );
});

describe('treated seed', () => {
  const treated = (inoculantAllowed: boolean | null) => (product: Product) =>
    product.id === 'SEED-SOY' ? { ...product, treatedSeed: true, inoculantAllowed } : product;

  it('without the label’s leave is said to be sown as it is, and no more is coated than the growers’ own seed', () => {
    for (const leave of [false, null]) {
      const handovers = sheets({ product: treated(leave) });
      const text = handovers.map(textOf).join(' ');
      expect(text).toContain('Treated and poisonous. Do NOT coat it.');
      expect(text).not.toContain('Its label allows coating');
      for (const sheet of handovers) {
        const name = /Handover sheet, (\S+)/.exec(textOf(sheet))?.[1] ?? '';
        const community = scenario.communities.find((one) => name.startsWith(one.name));
        const ownKg = community?.crops.find(({ crop }) => crop === 'soybean')?.ownSeedKg ?? 0;
        if (ownKg === 0) expect(ladders([sheet]), name).toEqual([]);
      }
    }
  });

  it('with the label’s leave is coated, with gloves and after the dressing has dried', () => {
    const handovers = sheets({ product: treated(true) });
    expect(handovers.map(textOf).join(' ')).toContain(
      'Its label allows coating: gloves, and let the dressing dry fully first.',
    );
    expect(ladders(handovers).length).toBeGreaterThan(0);
  });

  it('is named as poison with its lots to whoever loads it', () => {
    expect(
      sheets({ product: treated(false) }, 'route')
        .map(textOf)
        .join(' '),
    ).toContain('Treated seed, poisonous: lots LOT-SOY');
  });
});

describe('the dose', () => {
  it('is guessed by nobody where the label states none', () => {
    const handovers = sheets({ product: (one) => (one.kind === 'inoculant' ? { ...one, doseGPerKg: null } : one) });
    expect(ladders(handovers)).toEqual([]);
    expect(handovers.map(textOf).join(' ')).toContain('Follow the label on the pack.');
  });

  it('is never exceeded in caps or grams, whatever dose, cap and pack', () => {
    const amounts = fc.record({
      doseGPerKg: fc.double({ min: 0.3, max: 20, noNaN: true }),
      gramsPerLevelCap: fc.double({ min: 0.7, max: 7, noNaN: true }),
      packG: fc.integer({ min: 50, max: 1000 }),
    });
    fc.assert(
      fc.property(amounts, (label) => {
        const handovers = sheets({ product: (one) => (one.kind === 'inoculant' ? { ...one, ...label } : one) });
        for (const { heads, rows } of ladders(handovers)) {
          heads.slice(1).forEach((head, i) => {
            const kg = figureOf(/([\d.]+) kg/.exec(head)?.[1] ?? '');
            const caps = rows[0]?.[i + 1] ?? '';
            const used = caps === 'weigh it' ? 0 : figureOf(caps) * label.gramsPerLevelCap;
            expect(used).toBeLessThanOrEqual(label.doseGPerKg * kg + 1e-6);
            expect(figureOf(rows[2]?.[i + 1] ?? '')).toBeLessThanOrEqual(label.doseGPerKg * kg + 0.05);
          });
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('the words', () => {
  it('speak of wetting or coating again only to forbid it', () => {
    const said = JSON.stringify([COMMUNITY_PAPERS, ROAD_PAPERS, HANDOVER_WORDING].map(spoken));
    const again = said
      .split(/[.:?!]/)
      .filter((sentence) => /\b(wet|wetted|coat|coated)\b[^.]*\bagain\b/i.test(sentence));
    expect(again.length).toBeGreaterThan(0);
    for (const sentence of again) expect(sentence).toMatch(/never/);
    expect(said).not.toMatch(/re-?wet/i);
  });

  it('keep packs out of freezers and of vaccine fridges, wherever a fridge is named', () => {
    const said = JSON.stringify([COMMUNITY_PAPERS, ROAD_PAPERS, HANDOVER_WORDING].map(spoken));
    expect(said).toContain('Never a freezer, never a vaccine fridge');
  });
});

/** Every sentence of a dictionary; functions are called with marks for their values. */
function spoken(part: unknown): unknown {
  if (typeof part === 'function') return String(part('x', 'x', 'x', 'x', 'x'));
  if (typeof part !== 'object' || part === null) return part;
  return Object.values(part).map(spoken);
}
