import { describe, expect, it } from 'vitest';
import { plainTold } from '../../../src/presentation/views/stock-told.ts';
import { stockView } from '../../../src/presentation/views/stock-view.ts';
import { pseudoWords } from '../../../src/presentation/wording/pseudo.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { stockCase } from './stock-case.ts';

const demo = stockCase('demo-district');
const tiny = stockCase('tiny-district');
const { plan, scenario, stock } = demo;

describe('the answer', () => {
  it('says the share of land with seed rounded down, and what is missing worst', () => {
    const { plannedHa, seedHa } = plan.outcomes.headline;
    const said = plainTold(stock.headline);
    expect(said).toContain(`Enough seed for ${Math.floor((100 * seedHa) / plannedHa)}\u00a0% of planned land.`);
    expect(said).toMatch(/Soybean inoculant is [\d\u00a0]+\u00a0packs short; .+ get \d+(\sto\s\d+)?\u00a0%\.$/);
  });

  it('opens every figure that it names', () => {
    const known = new Set(plan.provenance.map(({ figure }) => figure));
    for (const { path } of stock.headline.figures) expect(known.has(path), path).toBe(true);
    expect(stock.headline.text.match(/\{\d\}/g)).toHaveLength(stock.headline.figures.length);
  });

  it('keeps the places of its figures in another language', () => {
    const { headline } = stockView(plan, scenario, [], pseudoWords());
    expect(headline.text).not.toBe(stock.headline.text);
    expect(headline.text.match(/\{\d\}/g)).toEqual(stock.headline.text.match(/\{\d\}/g));
  });
});

describe('what runs out', () => {
  it.each([
    ['demo-district', demo],
    ['tiny-district', tiny],
  ] as const)('adds up to the planned land that does not get both: %s', (_, of) => {
    const { plannedHa, seedHa, inoculatedHa } = of.plan.outcomes.headline;
    const sum = (lack: string) =>
      of.stock.shortages.filter((row) => row.lack === lack).reduce((total, { hectares }) => total + hectares, 0);
    expect(of.stock.shortages.reduce((total, { hectares }) => total + hectares, 0)).toBeCloseTo(
      plannedHa - inoculatedHa,
      0,
    );
    expect(sum('not-inoculated')).toBeCloseTo(seedHa - inoculatedHa, 0);
  });

  it('never mixes land without seed with land whose seed is not inoculated, and counts none twice', () => {
    for (const { commodity, lack } of stock.shortages) {
      expect(lack).toBe(commodity === 'seed' ? 'without-seed' : 'not-inoculated');
    }
    expect(stock.shortages.map(({ key }) => key)).toHaveLength(new Set(stock.shortages.map(({ key }) => key)).size);
    expect(stock.shortages.some(({ key }) => key.includes('no-seed-to-inoculate'))).toBe(false);
  });

  it('tells land that is cut off, and goods left at depots, in rows of their own', () => {
    const { shortfalls, shares } = plan.allocation;
    const worst = shortfalls.hectares.indexOf(Math.max(...shortfalls.hectares));
    const retold = (reason: 'not-reachable' | 'not-delivered') => {
      const reasons = shortfalls.reason.map((said, i) => (i === worst ? reason : said));
      const changed = { ...plan, allocation: { ...plan.allocation, shortfalls: { ...shortfalls, reason: reasons } } };
      return stockView(changed, scenario, [], english);
    };
    const cut = retold('not-reachable');
    expect(cut.shortages.find(({ lack }) => lack === 'cut-off')).toMatchObject({
      hectares: shortfalls.hectares[worst],
      name: 'Cut-off communities',
      where: { text: '1 community' },
    });
    expect(cut.cutOff).toBe(1);
    const community = scenario.communities[shares.community[shortfalls.shareRow[worst] ?? -1] ?? -1];
    expect(cut.grid.zones.filter(({ cutOff }) => cutOff > 0).map(({ zoneId }) => zoneId)).toEqual([community?.zoneId]);
    const left = retold('not-delivered').shortages.find(({ key }) => key.endsWith('unserved'));
    expect(left?.hectares).toBeCloseTo(shortfalls.hectares[worst] ?? -1, 3);
    expect(left?.why).toBe('Could not be delivered.');
  });

  it('says after what is short in stock what holds back more land than that', () => {
    const { shortfalls } = plan.allocation;
    const reason = shortfalls.reason.map((said, i) =>
      shortfalls.commodity[i] === 'inoculant' ? 'not-reachable' : said,
    );
    const changed = { ...plan, allocation: { ...plan.allocation, shortfalls: { ...shortfalls, reason } } };
    expect(plainTold(stockView(changed, scenario, [], english).headline)).toMatch(
      /Cowpea seed is \d+\sbags\s\(.*\) short; .* Cut-off communities: [\d.]+\sha get less than planned\.$/,
    );
  });

  it('stands in the order of hectares', () => {
    const hectares = stock.shortages.map((row) => row.hectares);
    expect(hectares).toEqual([...hectares].sort((a, b) => b - a));
  });

  it('says what is short in packs and in bags with kilograms', () => {
    const [soybean, cowpea] = ['Soybean inoculant', 'Cowpea seed'].map((name) =>
      stock.shortages.find((row) => row.name === name),
    );
    // 100 g packs at 5 g per kg coat 20 kg; what is missing is the need less what is coated, over all communities.
    const { shares } = plan.allocation;
    const missingKg = shares.community.reduce(
      (sum, __, row) =>
        shares.crop[row] === plan.ids.crops.indexOf('soybean')
          ? sum + (shares.inoculantNeedSeedKg[row] ?? 0) - (shares.inoculantGivenSeedKg[row] ?? 0)
          : sum,
      0,
    );
    expect(soybean?.shortBy).toBe(`${Math.ceil(missingKg / 20 - 1e-9)}\u00a0packs`);
    expect(cowpea?.shortBy).toMatch(/^\d+\u00a0bags$/);
    expect(cowpea?.bagSize).toBe('5\u00a0kg');
    expect(cowpea?.shortKg).toMatch(/^1\u00a0\d{3}\u00a0kg$/);
  });

  it('gives lots kept back as the reason, with the figure that decides', () => {
    const why = (name: string) => stock.shortages.find((row) => row.name === name)?.why;
    expect(why('Soybean inoculant')).toContain('Lot SB-0671 (513\u00a0packs): on hold');
    expect(why('Cowpea seed')).toContain('(58\u00a0% germinate, 75\u00a0% is the least)');
  });

  it('names remedies by what they serve, never a retest and never goods that come too late', () => {
    const lastDay = plan.scenario.planningTo;
    for (const { remedies } of stock.shortages) {
      expect(remedies.length).toBeLessThanOrEqual(2);
      for (const { what } of remedies) expect(what).not.toMatch(/retest|test again/i);
    }
    const [first] = stock.shortages[0]?.remedies ?? [];
    const arrives = Date.parse(plan.scenario.asOf) / 864e5 + (scenario.products[0]?.leadDays ?? 0);
    expect(arrives).toBeLessThanOrEqual(Date.parse(lastDay) / 864e5);
    expect(first?.what).toMatch(/^Order [\d\u00a0]+\u00a0packs, there by 3\u00a0Dec$/);
  });
});

describe('zones by crops', () => {
  it('says of each zone what the plan says of it', () => {
    const { zones } = plan.outcomes;
    expect(stock.grid.zones).toHaveLength(zones.zone.length);
    stock.grid.zones.forEach((row, i) => {
      expect(row.zoneId).toBe(plan.ids.zones[zones.zone[i] ?? -1]);
      expect(row.plannedHa).toBeCloseTo(zones.plannedHa[i] ?? -1, 4);
      expect(row.share).toBeCloseTo(zones.shareMet[i] ?? -1, 4);
    });
  });

  it('sums to all: places once, packs as granted', () => {
    const { all, zones, scarce } = stock.grid;
    expect(zones.reduce((sum, { communities }) => sum + communities, 0)).toBe(all.communities);
    expect(all.communities).toBe(plan.outcomes.headline.communities);
    expect(scarce).toBe('soybean');
    const crop = plan.ids.crops.indexOf('soybean');
    const { grants } = plan.allocation;
    const granted = grants.packs.reduce((sum, packs, row) => {
      const product = scenario.products.find(({ id }) => id === scenario.lots[grants.lot[row] ?? -1]?.productId);
      return grants.crop[row] === crop && product?.kind === 'inoculant' ? sum + packs : sum;
    }, 0);
    expect(all.packsGiven).toBeCloseTo(granted, 6);
    expect(zones.reduce((sum, { packsGiven }) => sum + packsGiven, 0)).toBeCloseTo(granted, 6);
  });

  it('leaves a crop that is not planned without a share', () => {
    const without = {
      ...plan,
      needs: { ...plan.needs, plannedHa: plan.needs.plannedHa.map((ha, i) => (plan.needs.crop[i] === 2 ? 0 : ha)) },
    };
    const { grid } = stockView(without, scenario, [], english);
    expect(grid.zones.every(({ cells }) => cells[2]?.share === null && cells[0]?.share !== null)).toBe(true);
  });
});
