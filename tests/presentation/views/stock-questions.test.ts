import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { recordsFromFiles } from '../../../src/adapters/scenario-files/record-files.ts';
import { loadPlanningTools } from '../../../src/adapters/tools/load-planning-tools.ts';
import {
  compareAllocations,
  dayNumber,
  openStockDesk,
  planSeason,
  readScenario,
  type StockDesk,
  type Told,
} from '../../../src/engine/index.ts';
import { paperCase } from '../../../src/presentation/papers/paper-case.ts';
import { papersOf } from '../../../src/presentation/papers/paper-sets.ts';
import { renderPages } from '../../../src/presentation/papers/render-page.ts';
import { differencesView } from '../../../src/presentation/views/allocation-differences.ts';
import { growerShares, growerSharesText } from '../../../src/presentation/views/grower-shares.ts';
import { orderList } from '../../../src/presentation/views/order-list.ts';
import { smallestChangeText } from '../../../src/presentation/views/smallest-change.ts';
import { lotMoves } from '../../../src/presentation/views/stock-moves.ts';
import { transferText } from '../../../src/presentation/views/transfer-text.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { readFolderFiles } from '../../plan-files.ts';
import { tablesOf } from '../papers/read-paper.ts';

const folder = fileURLToPath(new URL('../../../scenarios/demo-district/', import.meta.url));
const tools = await loadPlanningTools();
const { scenario, decisions } = readScenario(recordsFromFiles(readFolderFiles(folder)));
if (!scenario) throw new Error('the demo is blocked');
const settings = { seed: 1, iterations: 300, stop: null, progress: null };
const { plan, stages } = planSeason(scenario, decisions, null, settings, tools);
const desk: StockDesk = openStockDesk(scenario, decisions, stages, tools);
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('asked before it is done', () => {
  const { shortfalls, shares } = plan.allocation;
  /** The row that is shortest of soybean inoculant for want of stock. */
  const shortest = shortfalls.hectares.reduce((worst, hectares, i) => {
    const isSoybean = plan.ids.crops[shares.crop[shortfalls.shareRow[i] ?? -1] ?? -1] === 'soybean';
    const isShort = shortfalls.commodity[i] === 'inoculant' && shortfalls.reason[i] === 'stock-short' && isSoybean;
    return isShort && hectares > (shortfalls.hectares[worst] ?? 0) ? i : worst;
  }, -1);
  const shareRow = shortfalls.shareRow[shortest] ?? -1;
  const communityId = plan.ids.communities[shares.community[shareRow] ?? -1] ?? '';
  const cell = { communityId, crop: 'soybean', commodity: 'inoculant' } as const;

  it('the price elsewhere of a fixed share: what the one gains the others lose, in whole packs', () => {
    const { difference } = desk.ask({ kind: 'decide', decision: { kind: 'fix', ...cell, share: 1 } });
    const gained = difference.cells.filter((one) => one.hectaresAfter > one.hectaresBefore);
    expect(gained.some(({ communityId }) => communityId === cell.communityId)).toBe(true);
    const packs = difference.lots.reduce((sum, lot) => sum + lot.packsAfter - lot.packsBefore, 0);
    expect(Math.abs(packs)).toBeLessThanOrEqual(gained.length);
    expect(plain(differencesView(difference, scenario, english).price)).toMatch(
      /^\d+ communit(y|ies) would gain [\d.]+ ha; \d+ communit(y|ies) would lose [\d.]+ ha$/,
    );
  });

  it('a lot that fails its test is given to nobody, and nobody gains inoculant by it', () => {
    const { difference, after } = desk.ask({ kind: 'lot-fails', lotId: 'SB-0702' });
    expect(difference.lots.find(({ lotId }) => lotId === 'SB-0702')).toMatchObject({ packsAfter: 0 });
    const soybean = difference.commodities.find(
      ({ crop, commodity }) => crop === 'soybean' && commodity === 'inoculant',
    );
    expect(soybean?.hectaresAfter).toBeLessThan((soybean?.hectaresBefore ?? 0) * 0.75);
    const same: Told = after;
    expect(compareAllocations(after, same)).toMatchObject({ cells: [], lots: [], commodities: [] });
    const view = differencesView(difference, scenario, english);
    expect(view.goods.map(plain)).toContainEqual(
      expect.stringMatching(/^Soybean inoculant: [\d.]+ ha less, the smallest share goes from \d+ % to \d+ %$/),
    );
    expect(view.lots.map(plain)).toContainEqual(
      expect.stringMatching(/^Lot SB-0702: [\d ]+ packs given before, 0 after$/),
    );
  });

  it('nothing changed, nothing differs', () => {
    const { difference } = desk.ask({ kind: 'lot-fails', lotId: 'no such lot' });
    expect(differencesView(difference, scenario, english).price).toBe(english.stock.differences.none);
  });

  it('the smallest change of a soybean shortage, as a sentence', () => {
    const change = desk.smallestChange(shareRow, 'inoculant');
    expect(plain(smallestChangeText(change, scenario, [], english))).toMatch(
      /^[\d ]+ packs \(INO-SOY-100G\) more at (Central|East) store by 3 Dec 2026 would serve it in full, shared by the rule so that others gain too; one fewer would not. They cost [\d ]+ USD$/,
    );
  });
});

describe('idle packs', () => {
  it('the demo has none that would serve anyone elsewhere; one that would is told with its cost and worth', () => {
    expect(desk.transfers()).toEqual([]);
    const idea = { lot: 0, product: 0, depot: 1, packs: 20, hectares: 12.3, cost: 80, worth: 900 };
    const told = plain(transferText(idea, { ...scenario, currency: 'USD' }, english));
    expect(told).toMatch(
      /^Carry 20 packs of lot \S+ to .+: they serve 12\.3 ha more there; the trip costs about 80 USD, the land is worth about 900 USD$/,
    );
    expect(plain(transferText({ ...idea, cost: null }, scenario, english))).not.toContain('trip');
  });
});

describe('papers of the store', () => {
  it('every pack that leaves is taken from its lot, and the balance falls to what no trip takes', () => {
    const picked = new Map<number, number>();
    const left = new Map<number, number>();
    for (const { kind, lot, packs, balance } of lotMoves(plan, scenario)) {
      if (kind === 'in') continue;
      picked.set(lot, (picked.get(lot) ?? 0) + packs);
      left.set(lot, balance);
    }
    for (const [lot, packs] of picked) {
      expect(packs + (left.get(lot) ?? 0)).toBe(scenario.lots[lot]?.packs);
      const given = plan.allocation.grants.lot.reduce(
        (sum, of, row) => (of === lot ? sum + (plan.allocation.grants.packs[row] ?? 0) : sum),
        0,
      );
      expect(packs).toBeLessThanOrEqual(given);
    }
    expect(picked.size).toBeGreaterThan(10);
  });

  it('a stock card: as it stands, then out day by day, each line with what is left and room to sign', () => {
    const c = paperCase(plan, scenario, decisions.decisions, english);
    const cards = tablesOf(renderPages(papersOf(c, 'card', '')));
    const card = cards.find(({ name }) => name === 'card SB-0688');
    expect(card?.heads.at(-1)).toBe('initials');
    const [opening, ...rest] = (card?.rows ?? []).filter(([date]) => date !== '');
    expect(opening?.slice(1, 4)).toEqual(['opening', '', '410']);
    const out = rest.reduce((sum, [, , packs = '']) => sum + Number(packs), 0);
    expect(out).toBeGreaterThan(0);
    expect(Number(rest.at(-1)?.[3])).toBe(410 - out);
  });

  it('a lot that is still to come stands on its card from the day it arrives', () => {
    const isLate = ({ id }: { readonly id: string }) => id === 'SB-0688';
    const availableFrom = dayNumber(scenario.asOf + 7);
    const lots = scenario.lots.map((lot) => (isLate(lot) ? { ...lot, availableFrom } : lot));
    const c = paperCase(plan, { ...scenario, lots }, decisions.decisions, english);
    const cards = tablesOf(renderPages(papersOf(c, 'card', '')));
    const [first] = cards.find(({ name }) => name === 'card SB-0688')?.rows ?? [];
    expect(first?.slice(0, 4)).toEqual(['19 Nov', 'arrives', '', '410']);
  });

  it('the order list reads as sentences, with its total', () => {
    const { lines, total } = orderList(plan, scenario, english);
    expect(lines.length).toBeGreaterThan(0);
    expect(plain(lines[0]?.text ?? '')).toMatch(/^Order at once: the day to order by was \d+ \w+ 2026: /);
    expect(plain(total)).toMatch(/^Together [\d ]+ USD, for [\d. ]+ ha of seed or inoculant\.$/);
  });
});

describe('shares as growers meet them', () => {
  it('the mean over growers, women and small plots beside it, each by hand from the plan', () => {
    const { shares } = plan.allocation;
    let [sum, growers, womenSum, women] = [0, 0, 0, 0];
    shares.community.forEach((community, row) => {
      const place = scenario.communities[community];
      const own = place?.crops.find(({ crop }) => crop === plan.ids.crops[shares.crop[row] ?? -1])?.growers;
      const count = own ?? place?.farmers ?? 0;
      const part = place?.farmers && place.farmersWomen !== null ? place.farmersWomen / place.farmers : 0;
      sum += count * (shares.inoculantShare[row] ?? 0);
      growers += count;
      womenSum += count * part * (shares.inoculantShare[row] ?? 0);
      women += count * part;
    });
    const told = growerShares(plan, scenario, 'inoculant');
    expect(told.all).toBeCloseTo(sum / growers, 9);
    if (women > 0) expect(told.women).toBeCloseTo(womenSum / women, 9);
    expect(plain(growerSharesText(plan, scenario, 'inoculant', english) ?? '')).toMatch(/^Growers \d+ %/);
  });
});

describe('whole packs of the demo', () => {
  it('serve within a tenth of a percent of what any sharing out could, and leave nobody a pack below the share', () => {
    const { shares, proofs } = plan.allocation;
    for (const commodity of ['seed', 'inoculant'] as const) {
      const kg = commodity === 'seed' ? shares.seedGivenKg : shares.inoculantGivenSeedKg;
      const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
      let [most, given] = [0, 0];
      for (const proof of proofs.filter((one) => one.commodity === commodity)) {
        most += Math.min(sum(proof.offeredKg) + sum(proof.keptKg), sum(proof.needKg));
        given += sum(proof.shareRows.map((row) => kg[row] ?? 0));
        proof.shareRows.forEach((row, i) => {
          const due = proof.leastShare * (proof.needKg[i] ?? 0);
          expect(due - (kg[row] ?? 0)).toBeLessThan(proof.roundingKg);
        });
      }
      expect(given).toBeGreaterThan(most * 0.999);
    }
  });
});
