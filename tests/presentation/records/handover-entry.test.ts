import { describe, expect, it } from 'vitest';
import { parseTable } from '../../../src/adapters/scenario-files/parse-table.ts';
import { visitsOfDay } from '../../../src/presentation/records/day-visits.ts';
import { addEntries, type HandoverEntry, judgeEntry } from '../../../src/presentation/records/handover-entry.ts';
import { stockCase } from '../views/stock-case.ts';

const { plan, scenario } = stockCase('demo-district');
const today = plan.scenario.planningFrom;
const visits = visitsOfDay(plan, scenario, today);
const [visit] = visits;
const entry = (change: Partial<HandoverEntry> = {}): HandoverEntry => ({
  date: today,
  communityId: visit?.communityId ?? '',
  vehicleId: visit?.vehicleId ?? '',
  lotId: visit?.goods[0]?.lotId ?? '',
  packs: visit?.goods[0]?.packs ?? 0,
  returnedPacks: 0,
  kg: null,
  boxC: null,
  sownOn: null,
  growers: null,
  growersWomen: null,
  reason: null,
  ...change,
});
const codes = (one: HandoverEntry, entered: readonly HandoverEntry[] = []) =>
  judgeEntry(one, { plan, scenario, today, entered }).map(({ code, weight }) => `${code} ${weight}`);

describe('the visits of a day', () => {
  it('are those of the plan, to the pack', () => {
    const served = plan.delivery.stops.loads
      .flatMap((loads, stop) => (plan.delivery.trips.date[plan.delivery.stops.trip[stop] ?? -1] === today ? loads : []))
      .flatMap((load) => plan.delivery.loads.packs[load] ?? [])
      .reduce((sum, packs) => sum + packs, 0);
    expect(visits.flatMap(({ goods }) => goods).reduce((sum, { packs }) => sum + packs, 0)).toBe(served);
  });
});

describe('an entry that does not hold is told by its code', () => {
  it('takes what was carried', () => expect(codes(entry())).toEqual([]));
  it('more than was carried is said, and more than came back than was handed over is not taken', () => {
    expect(codes(entry({ packs: 500 }))).toContain('E1965 noted');
    expect(codes(entry({ returnedPacks: 501 }))).toEqual(['E1302 set aside']);
    expect(codes(entry({ packs: 1.5 }))).toContain('E1302 set aside');
  });
  it('a lot that never existed, a community nobody knows', () => {
    expect(codes(entry({ lotId: 'SB-9999' }))).toContain('E1308 set aside');
    expect(codes(entry({ communityId: 'nowhere' }))).toContain('E1308 set aside');
  });
  it('the same record twice is not taken; one that differs is said', () => {
    expect(codes(entry(), [entry()])).toEqual(['E1961 set aside']);
    expect(codes(entry({ packs: 1 }), [entry()])).toEqual(['E1962 noted']);
  });
  it('a day that has not come, a sowing that has not happened', () => {
    expect(codes(entry({ date: '2027-01-01' }))).toContain('E1960 set aside');
    expect(codes(entry({ sownOn: '2027-01-01' }))).toContain('E1960 set aside');
  });
  it('more of a lot than it came with', () => {
    const lot = scenario.lots.find(({ id }) => id === entry().lotId);
    expect(codes(entry({ packs: (lot?.packs ?? 0) + 1 }))).toContain('E1963 noted');
  });
});

describe('rows added to handovers.csv', () => {
  const rows = (text: string) => {
    const { table } = parseTable('handovers.csv', text);
    return table?.rows.map(({ cells }) => Object.fromEntries(table.columns.map((name, i) => [name, cells[i]])));
  };
  const sent = entry({ reason: 'torn, "wet"', returnedPacks: 1 });

  it('read back as they were entered', () => {
    expect(rows(addEntries(null, [sent]))?.[0]).toMatchObject({
      date: today,
      community_id: sent.communityId,
      lot_id: sent.lotId,
      packs: String(sent.packs),
      returned_packs: '1',
      reason: 'torn, "wet"',
    });
  });

  it('keep what stands there, in its own order of columns, and add the columns it lacks', () => {
    const before = 'lot_id,packs,date,community_id,note\r\nSB-0702,3,2026-11-10,C001,"a, b"\r\n';
    const after = rows(addEntries(before, [sent]));
    expect(after?.[0]).toMatchObject({ lot_id: 'SB-0702', packs: '3', community_id: 'C001', note: 'a, b', reason: '' });
    expect(after?.[1]).toMatchObject({
      lot_id: sent.lotId,
      packs: String(sent.packs),
      note: '',
      reason: 'torn, "wet"',
    });
  });

  it('leave a cell with a line end in it whole', () => {
    const before = 'date,community_id,lot_id,packs,note\n2026-11-10,C001,SB-0702,3,"two\nlines"\n';
    expect(rows(addEntries(before, [sent]))).toMatchObject([
      { note: 'two\nlines', reason: '' },
      { lot_id: sent.lotId },
    ]);
  });

  it('never change a row that stands there, however often the table is added to', () => {
    const once = addEntries(null, [sent]);
    const twice = addEntries(once, [entry({ packs: 2 })]);
    expect(rows(twice)?.[0]).toEqual(rows(once)?.[0]);
    expect(rows(twice)).toHaveLength(2);
  });
});
