import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../../src/engine/index.ts';
import { headlineTable } from '../../../src/presentation/headline-table.ts';
import { paperCase } from '../../../src/presentation/papers/paper-case.ts';
import { paperFiles } from '../../../src/presentation/papers/paper-files.ts';
import { coverageFigures } from '../../../src/presentation/views/coverage-view.ts';
import { lotsView } from '../../../src/presentation/views/stock-lots.ts';
import { stockView } from '../../../src/presentation/views/stock-view.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { tinyWithFertiliser } from '../../fertiliser-files.ts';
import { planFiles } from '../../plan-files.ts';
import { papersIn, textOf, titleOf } from './read-paper.ts';

/** Bags of 25 kg at 100 kg a hectare for half of the land that has seed. */
const { scenario, decisions, plan } = planFiles(tinyWithFertiliser(52), 300);
const files = paperFiles(paperCase(plan, scenario, decisions.decisions, english), 'A4');
const papers = [...files].flatMap(([path, make]) =>
  papersIn(make()).map((paper) => ({ path, title: titleOf(paper), text: textOf(paper) })),
);
const titled = (start: string) => papers.filter(({ title }) => title.startsWith(start));

/** Bags that the plan hands over: five of 25 kg are 125 kg. */
const handed = plan.delivery.stops.loads.flat().reduce((sum, load) => {
  const group = plan.allocation.consignments.group[plan.delivery.loads.consignment[load] ?? -1];
  return group === 'fertiliser' ? sum + (plan.delivery.loads.kg[load] ?? 0) / 25 : sum;
}, 0);

describe('papers of a plan with fertiliser', () => {
  it('the plan holds and hands bags over', () => {
    expect(checkPlan(scenario, decisions, plan)).toEqual([]);
    expect(handed).toBeGreaterThan(20);
  });

  it('route sheets name the load and count the bags of each stop', () => {
    const sheets = titled('Route sheet');
    const text = sheets.map((sheet) => sheet.text).join('\n');
    expect(text).toMatch(/with fertiliser\./);
    expect(text).toMatch(/\d+ bags? of 25 kg, fertiliser for (soybean|groundnut)/);
    expect(text).toContain('never against packs of inoculant');
    // Each sheet once, by what its first lines say the vehicle carries.
    const carries = new Map(
      sheets.map((sheet) => [sheet.title, /(\d+) bags of fertiliser\./.exec(sheet.text)?.[1] ?? '0']),
    );
    const counted = [...carries.values()].reduce((sum, bags) => sum + Number(bags), 0);
    expect(counted).toBe(handed);
  });

  it('waybills and pick lists hold its lots, the first to expire before the other', () => {
    for (const name of ['Waybill', 'Pick list']) {
      const text = titled(name)
        .map((sheet) => sheet.text)
        .join('\n');
      expect(text, name).toContain('BAGS-SOON');
      expect(text, name).toMatch(/fertiliser/i);
    }
    // Grants of the lot that expires later come only where the other is used up.
    const packs = (id: string) =>
      plan.allocation.grants.packs.reduce(
        (sum, n, i) => (plan.ids.lots[plan.allocation.grants.lot[i] ?? -1] === id ? sum + n : sum),
        0,
      );
    expect([packs('BAGS-SOON'), packs('BAGS-LATE')]).toEqual([39, 13]);
  });

  it('handover sheets tell the rate, and keep it off coated seed: 100 kg a hectare is 1 kg on 10 by 10 m', () => {
    const sheets = titled('Handover sheet').filter(({ text }) => text.includes('ertiliser for'));
    expect(sheets.length).toBeGreaterThan(0);
    for (const { text } of sheets) {
      expect(text).toContain('100 kg on a hectare, 1 kg on 10 by 10 m');
      expect(text).toContain('coated seed and packs never touch it');
    }
    const coating = sheets.filter(({ text }) => text.includes('Sow at once'));
    expect(coating.length).toBeGreaterThan(0);
    for (const { text } of coating) expect(text).toContain('Not together with fertiliser.');
  });
});

describe('views of a plan with fertiliser', () => {
  it('the stock table shows its bags by what they are for', () => {
    const { shortages } = stockView(plan, scenario, decisions.decisions, english);
    const bags = lotsView(plan, scenario, shortages, true, english).rows.filter(({ id }) => id.startsWith('BAGS'));
    expect(bags.map(({ goods }) => goods)).toEqual(Array(2).fill('Soybean, groundnut fertiliser'));
    expect(bags.map(({ packs }) => packs.replaceAll('\u00a0', ' ')).sort()).toEqual(['13 × 25 kg', '39 × 25 kg']);
  });

  it('coverage shows what its phosphorus adds; the table of the command says on how many hectares', () => {
    expect(coverageFigures(plan, scenario).phosphorus?.hectares).toBe(plan.outcomes.headline.fertilisedHa);
    expect(headlineTable(plan)).toMatch(/of it by fertiliser on [\d.]+ ha, t/);
  });
});
