import { describe, expect, it } from 'vitest';
import { cellsOf, holdCell, holdsOf, stepsToRelease } from '../../../src/presentation/views/stock-cells.ts';
import { previewFix } from '../../../src/presentation/views/stock-fix.ts';
import { landShare } from '../../../src/presentation/views/stock-land.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { stockCase } from './stock-case.ts';

const SHARE = 0.9;
const before = stockCase('demo-district');
const row = before.stock.grid.zones[3];
const cell = row?.cells[0];
if (!row || !cell) throw new Error('the demonstration district has a fourth zone with soybean');
const decisions = holdCell(cell, 'inoculant', 'fix', SHARE);

describe('a share fixed by hand', () => {
  it('is one decision for each community of the zone that plans the crop', () => {
    const planning = before.scenario.communities.filter(
      ({ zoneId, crops }) => zoneId === row.zoneId && crops.some((c) => c.crop === 'soybean' && c.plannedHa > 0),
    );
    expect(new Set(decisions.map((d) => ('communityId' in d ? d.communityId : '')))).toEqual(
      new Set(planning.map(({ id }) => id)),
    );
    expect(decisions[0]).toMatchObject({ kind: 'fix', crop: 'soybean', commodity: 'inoculant', share: SHARE });
  });

  it('shows as held before the next plan, and the later decision on a cell wins', () => {
    const fixedOf = (list: typeof decisions) => cellsOf(before.plan, before.stock.parts, holdsOf(list))[0]?.fixed;
    const own = before.stock.parts.filter(({ zone }) => before.plan.ids.zones[zone] === row.zoneId);
    const held = (list: typeof decisions) => cellsOf(before.plan, own, holdsOf(list))[0]?.fixed;
    expect(held(decisions)).toEqual([{ commodity: 'inoculant', share: SHARE }]);
    expect(held(decisions.slice(1))).toEqual([{ commodity: 'inoculant', share: null }]);
    expect(held([...decisions, ...holdCell(cell, 'inoculant', 'fix', 0.4)])).toEqual([
      { commodity: 'inoculant', share: 0.4 },
    ]);
    expect(fixedOf(decisions)).toEqual([{ commodity: 'inoculant', share: null }]);
    expect(held([])).toEqual([]);
  });

  it('is released by undo where nothing was decided after it', () => {
    const away = { kind: 'vehicle-away', vehicleId: 'V', from: '2026-11-20', to: '2026-11-20' } as const;
    expect(stepsToRelease(decisions, cell)).toBe(decisions.length);
    expect(stepsToRelease([away, ...decisions], cell)).toBe(decisions.length);
    expect(stepsToRelease([...decisions, away], cell)).toBe(0);
  });

  it('costs what the next plan takes, and others fall about as far as was told', () => {
    const told = previewFix(before.plan, before.scenario, cell, 'inoculant', SHARE, english);
    const after = stockCase('demo-district', decisions);
    const now = after.stock.grid.zones.find(({ zoneId }) => zoneId === row.zoneId);
    // Whole packs: each of the communities may miss the share by less than one pack.
    expect(now?.cells[0]?.share).toBeGreaterThan(SHARE - 0.03);
    expect(now?.cells[0]?.share).toBeLessThan(SHARE + 0.03);
    expect(now?.cells[0]?.fixed).toEqual([{ commodity: 'inoculant', share: SHARE }]);
    const [packs] = told.takes.match(/\d+/) ?? [];
    const taken = (now?.packsGiven ?? 0) - row.packsGiven;
    expect(Math.abs(taken - Number(packs))).toBeLessThan(decisions.length);
    const fallsTo = Number(/to about (\d+)/.exec(told.others)?.[1]);
    const others = after.stock.grid.zones.filter(({ zoneId }) => zoneId !== row.zoneId).map(({ cells }) => cells[0]);
    const [planned, inoculated] = others.reduce(
      ([p, i], one) => [p + (one?.land.plannedHa ?? 0), i + (one?.land.inoculatedHa ?? 0)],
      [0, 0],
    );
    expect(Math.abs((100 * inoculated) / planned - fallsTo)).toBeLessThan(1.5);
  });

  it('says so where there will not be seed enough to coat, and what a lower share frees', () => {
    const cowpea = row.cells[2];
    if (!cowpea) throw new Error('cowpea is planned there');
    const share = landShare(cowpea.land, 'seed');
    expect(previewFix(before.plan, before.scenario, cowpea, 'inoculant', 1, english).limit).toContain(
      `Only ${Math.floor(share * 100)}`,
    );
    expect(previewFix(before.plan, before.scenario, cell, 'inoculant', 0.1, english)).toMatchObject({
      takes: expect.stringMatching(/^Frees about \d+\u00a0packs\.$/),
      others: '',
    });
  });
});
