import { join } from 'node:path';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { calendarText } from '../../../src/presentation/exports/calendar-text.ts';
import { paperCase } from '../../../src/presentation/papers/paper-case.ts';
import { paperFiles } from '../../../src/presentation/papers/paper-files.ts';
import { planTables } from '../../../src/presentation/tables.ts';
import { pseudoWords } from '../../../src/presentation/wording/pseudo.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { projectRoot } from '../../architecture/source-files.ts';
import { type Planned, planFiles, readFolderFiles } from '../../plan-files.ts';
import { figureOf, papersIn, tablesOf, textOf, titleOf } from './read-paper.ts';

/**
 * The papers of the demonstration district, read as their readers read them. Amounts are reckoned anew from the files that
 * were sent: nothing here calls what the sheets call. Doses and caps are made to differ by crop, so that a sheet that took
 * one product's for another's would be found.
 */
const DOSES: Readonly<Record<string, readonly [dose: string, cap: string, water: string]>> = {
  'INO-SOY-100G': ['4', '4.5', '15'],
  'INO-GNUT-100G': ['10', '2.9', '12'],
  'INO-COWP-100G': ['5', '4.5', '15'],
  'INO-BEAN-100G': ['5', '4.5', '15'],
};

let planned: Planned;
let files: ReadonlyMap<string, () => string>;
let sent: Record<'products' | 'lots' | 'communities' | 'points', Record<string, string>[]>;
let deliveries: Record<string, string>[];

beforeAll(() => {
  const folder = readFolderFiles(join(projectRoot, 'scenarios', 'demo-district'));
  const text = (name: string) => new TextDecoder().decode(folder.get(name));
  const products = text('products.csv')
    .split('\n')
    .map((line) => {
      const cells = line.split(',');
      const [dose, cap, water] = DOSES[cells[0] ?? ''] ?? [];
      return dose === undefined
        ? line
        : cells
            .with(7, dose)
            .with(12, cap ?? '')
            .with(11, water ?? '')
            .join(',');
    })
    .join('\n');
  folder.set('products.csv', new TextEncoder().encode(products));
  planned = planFiles(folder, 300);
  sent = {
    products: csv(products),
    lots: csv(text('lots.csv')),
    points: csv(text('handover-points.csv')),
    communities: JSON.parse(text('communities.geojson')).features.map(
      (feature: { properties: Record<string, string> }) => feature.properties,
    ),
  };
  files = paperFiles(paperCase(planned.plan, planned.scenario, planned.decisions.decisions, english), 'A4');
  deliveries = csv(planTables(planned.plan, planned.scenario)['deliveries.csv']?.() ?? '');
}, 240_000);

function csv(text: string): Record<string, string>[] {
  const [heads = [], ...rows] = text
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(','));
  return rows.map((cells) => Object.fromEntries(heads.map((head, i) => [head, cells[i] ?? ''])));
}

const lotOf = (id: string) => sent.lots.find(({ lot_id }) => lot_id === id) ?? {};
const productOf = (lot: string) =>
  sent.products.find(({ product_id }) => product_id === lotOf(lot)['product_id']) ?? {};
const file = (path: string) => files.get(path)?.() ?? '';
const days = () => [...new Set(deliveries.map(({ date }) => date ?? ''))].sort();
const sumOf = (rows: readonly Record<string, string>[]) => rows.reduce((sum, { packs }) => sum + Number(packs), 0);

/** Packs by lot, of rows that hold lot and packs. */
function byLot(pairs: readonly (readonly [lot: string, packs: number])[]): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const [lot, packs] of pairs) sums[lot] = (sums[lot] ?? 0) + packs;
  return sums;
}

const delivered = (rows: readonly Record<string, string>[]) =>
  byLot(rows.map(({ lot_id = '', packs }) => [lot_id, Number(packs)]));

/** Lines of goods with their lots, `12 packs soybean SB-0702`. */
const goodsLines = (cell: string): (readonly [string, number])[] =>
  cell.split('|').flatMap((line) => {
    const found = /^(\d[\d ]*) .* (\S+)$/.exec(line.trim());
    return found ? [[found[2] ?? '', figureOf(found[1] ?? '')] as const] : [];
  });

const handovers = () => days().flatMap((day) => papersIn(file(`${day}/handover-sheets.html`)));

describe('goods on the papers of a day', () => {
  it('are, on route sheet, waybill, hold note and pick list, what deliveries.csv says of the day, lot by lot', () => {
    expect(days().length).toBeGreaterThan(10);
    for (const day of days()) {
      const due = delivered(deliveries.filter(({ date }) => date === day));
      const tables = (name: string) => papersIn(file(`${day}/${name}.html`)).flatMap(tablesOf);
      const named = (paper: string, table: string) => tables(paper).filter(({ name }) => name === table);
      const cells = (paper: string, table: string) => named(paper, table).flatMap(({ rows }) => rows);
      expect(byLot(cells('route-sheets', 'stops').flatMap((row) => goodsLines(row[4] ?? ''))), day).toEqual(due);
      expect(byLot(cells('waybills', 'received').flatMap((row) => goodsLines(row[2] ?? ''))), day).toEqual(due);
      const columns = (paper: string, table: string, packs: number) =>
        byLot(
          cells(paper, table).flatMap((row) =>
            lotOf(row[0] ?? '')['lot_id'] ? [[row[0] ?? '', figureOf(row[packs] ?? '')] as const] : [],
          ),
        );
      expect(columns('waybills', 'goods-out', 3), day).toEqual(due);
      expect(columns('hold-notes', 'held', 2), day).toEqual(due);
      expect(columns('pick-lists', 'picked', 3), day).toEqual(due);
      expect(columns('pick-lists', 'sum', 3), day).toEqual(due);
    }
  });

  it('leave on every stock card what the opening stock less all deliveries leaves', () => {
    const cards = tablesOf(file('stock-cards.html'));
    expect(cards.length).toBe(sent.lots.length);
    for (const { name, rows } of cards) {
      const lot = name.replace('card ', '');
      const left = rows.map((row) => row[3] ?? '').filter((text) => text !== '');
      const gone = sumOf(deliveries.filter(({ lot_id }) => lot_id === lot));
      expect(figureOf(left.at(-1) ?? ''), lot).toBe(Number(lotOf(lot)['packs']) - gone);
    }
  });
});

describe('handover sheets', () => {
  it('name every pack and bag that comes to the community, by lot, and its last day', () => {
    const seen = new Set<string>();
    for (const sheet of handovers()) {
      const name = titleOf(sheet).replace('Handover sheet, ', '');
      const id = sent.communities.find((one) => one['name'] === name)?.['community_id'];
      const table = tablesOf(sheet).find((one) => one.name === 'receive');
      const rows = (table?.rows ?? []).filter((row) => row.length > 1);
      const due = delivered(deliveries.filter(({ community_id }) => community_id === id));
      expect(byLot(rows.map((row) => [row[2] ?? '', figureOf(row[1] ?? '')])), name).toEqual(due);
      for (const row of rows) {
        const [year, , day] = (lotOf(row[2] ?? '')['expires'] ?? '').split('-');
        expect(row[3]).toMatch(new RegExp(`^${Number(day)} [A-Z][a-z]{2} ${year}$`));
      }
      seen.add(id ?? '');
    }
    expect(seen).toEqual(new Set(deliveries.map(({ community_id }) => community_id)));
  });

  it('tell for each batch the grams that the label’s dose asks, caps that never exceed it, and water by the label', () => {
    let batches = 0;
    for (const sheet of handovers()) {
      const receive = tablesOf(sheet).find(({ name }) => name === 'receive');
      const ladders = tablesOf(sheet).filter(({ name }) => name === 'ladder');
      const leads = [...sheet.matchAll(/<p class="plain"><b>([^<]*), pack of/g)].map(([, crops]) =>
        textOf(crops ?? ''),
      );
      expect(leads.length).toBe(ladders.length);
      ladders.forEach((ladder, i) => {
        for (const crop of (leads[i] ?? '').toLowerCase().split(', ')) {
          const row = receive?.rows.find((cells) => cells[0]?.toLowerCase().startsWith(`${crop} inoculant`));
          const product = productOf(row?.[2] ?? '');
          const own = ladder.heads.map((head, column) => ({ head, column })).slice(1);
          for (const { head, column } of own) {
            const ladderKg = /^(\S+) kg of seed$/.exec(head)?.[1];
            const eachKg = /^(.*), each grower: (\S+) kg$/.exec(head);
            if (eachKg && eachKg[1] !== crop) continue;
            checkBatch(
              product,
              figureOf(ladderKg ?? eachKg?.[2] ?? ''),
              ladder.rows.map((cells) => cells[column] ?? ''),
            );
            batches += 1;
          }
          expect(own.slice(0, 4).map(({ head }) => head)).toEqual(
            ['1', '2', '5', '10'].map((kg) => `${kg} kg of seed`),
          );
        }
      });
    }
    expect(batches).toBeGreaterThan(1000);
  });

  function checkBatch(product: Record<string, string>, kg: number, [caps = '', waterCaps, grams, water]: string[]) {
    const dose = Number(product['dose_g_per_kg']);
    const cap = Number(product['grams_per_level_cap']);
    expect(dose * cap).toBeGreaterThan(0);
    expect(Math.abs(figureOf(grams ?? '') - dose * kg)).toBeLessThanOrEqual(0.05 + 1e-9);
    expect(figureOf(caps) * cap).toBeLessThanOrEqual(dose * kg + 1e-9);
    expect(figureOf(caps) * cap).toBeGreaterThan(dose * kg - cap / 2);
    expect(Math.abs(figureOf(water ?? '') - Number(product['water_ml_per_kg']) * kg)).toBeLessThanOrEqual(0.5 + 1e-9);
    // A level cap of water holds 5 mL (common practice, no source).
    expect(Math.abs(figureOf(waterCaps ?? '') * 5 - Number(product['water_ml_per_kg']) * kg)).toBeLessThanOrEqual(
      2.5 + 1e-9,
    );
  }

  it('say how many caps one pack of this product fills', () => {
    const said = new Set(
      handovers().flatMap((sheet) =>
        [...sheet.matchAll(/fills about (\d+) level caps of ([\d.]+) g/g)].map(([, caps, grams]) => `${caps} ${grams}`),
      ),
    );
    // 100 g by 4.5 g are 22 whole caps, by 2.9 g are 34.
    expect(said).toEqual(new Set(['22 4.5', '34 2.9']));
  });

  it('have growers coat no more than the packs that come coat by the label', () => {
    for (const sheet of handovers()) {
      const receive = tablesOf(sheet).find(({ name }) => name === 'receive')?.rows ?? [];
      for (const [crop = '', , told = ''] of tablesOf(sheet).find(({ name }) => name === 'sharing')?.rows ?? []) {
        const each = /Each coats about (\S+) kg/.exec(told)?.[1];
        const growers = /(\d+) growers/.exec(crop)?.[1];
        const name = (crop.split('|')[0] ?? '').toLowerCase();
        const packs = receive.filter((row) => row[0]?.toLowerCase().startsWith(`${name} inoculant`));
        const coatsKg = packs.reduce(
          (sum, row) => sum + (figureOf(row[1] ?? '') * 100) / Number(productOf(row[2] ?? '')['dose_g_per_kg']),
          0,
        );
        // Half a kilogram is the least that is told.
        if (!each || !growers || figureOf(each) <= 0.5) continue;
        expect(figureOf(each) * Number(growers), crop).toBeLessThanOrEqual(coatsKg + 1e-6);
      }
    }
  });
});

describe('the driver’s own sheet', () => {
  it('names at each stop who receives and the phone, arrival and leaving; and says what to do when it goes otherwise', () => {
    for (const day of days()) {
      for (const sheet of papersIn(file(`${day}/route-sheets.html`))) {
        const text = textOf(sheet);
        for (const words of [
          'Already sown',
          'on the hold note',
          'The evening before',
          'Vehicle registration',
          'override this sheet',
        ])
          expect(text).toContain(words);
        expect(text).toMatch(/(Seed load|Inoculant load|Seed and inoculant load)\./);
        for (const row of tablesOf(sheet).find(({ name }) => name === 'stops')?.rows ?? []) {
          if (!/^\d+$/.test(row[0] ?? '')) continue;
          const [place = '', ...contact] = (row[1] ?? '').split('|').filter((part) => part !== '');
          const point = sent.points.find(({ name }) => name === place);
          expect(contact.join('; ')).toBe(point?.['contact']);
          expect(row[2]).toMatch(/^\d\d:\d\d\|(rest 45 min\|)?\d\d:\d\d/);
        }
      }
    }
  });

  it('asks for a new print within 48 h of leaving where the day was planned longer ahead', () => {
    const asOf = Date.parse(planned.plan.scenario.asOf);
    for (const day of days()) {
      const ahead = (Date.parse(day) - asOf) / 86_400_000;
      expect(file(`${day}/route-sheets.html`).includes('Reprint within 48 h'), day).toBe(ahead > 2);
    }
  });
});

describe('names and phones', () => {
  it('stand in no calendar, no route, no wall calendar and no table for donors', () => {
    const tables = Object.values(planTables(planned.plan, planned.scenario)).map((make) => make());
    const open = [...files].filter(([path]) => /\.(ics|gpx)$|wall-calendars/.test(path)).map(([, make]) => make());
    expect(open.length).toBeGreaterThan(20);
    for (const { contact = '' } of sent.points) {
      const [name = '', phone = ''] = contact.split('; ');
      expect(name.length * phone.length).toBeGreaterThan(0);
      for (const text of [...tables, ...open]) {
        expect(text.includes(phone)).toBe(false);
        expect(text.includes(name)).toBe(false);
      }
    }
  });
});

describe('calendars, read back by an independent parser of iCalendar (RFC 5545)', () => {
  const events = (text: string) =>
    new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
  const ics = (kind: string) =>
    [...files].filter(([path]) => path.startsWith(`calendars/${kind}-`)).map(([, make]) => make());

  it('hold one event for each day of each vehicle, from leaving to return', () => {
    const { trips } = planned.plan.delivery;
    const due = new Set(
      trips.date.map((date, row) => `${planned.plan.ids.vehicles[trips.vehicle[row] ?? -1]} ${date}`),
    );
    const read = ics('vehicle').flatMap(events);
    expect(read.length).toBe(due.size);
    const starts = trips.date.map((date, row) => {
      const minute = Math.round(trips.leaveMinute[row] ?? 0) - planned.scenario.utcOffsetMinutes;
      return Date.parse(`${date}T00:00:00Z`) + minute * 60_000;
    });
    for (const event of read) {
      expect(starts).toContain(event.startDate.toJSDate().getTime());
      expect(event.endDate.toJSDate().getTime()).toBeGreaterThan(event.startDate.toJSDate().getTime());
    }
  });

  it('hold one whole-day event a handover of each zone, that ends on the day after it (section 3.6.1)', () => {
    const read = ics('zone').flatMap(events);
    const due = new Set(
      deliveries.map(({ date, vehicle_id, trip, stop, community_id }) =>
        [date, vehicle_id, trip, stop, community_id].join(' '),
      ),
    );
    expect(read.length).toBe(due.size);
    for (const event of read) {
      expect(event.startDate.isDate && event.endDate.isDate).toBe(true);
      expect(event.duration.toSeconds()).toBe(86_400);
    }
  });

  it('give every event a UID of its own, that holds nothing of the plan and stays in another plan of the season', () => {
    const uids = [...ics('vehicle'), ...ics('zone')].flatMap(events).map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(uids.length);
    const moved = structuredClone(planned.plan) as unknown as { delivery: { trips: { date: string[] } }; seed: number };
    moved.seed = 99;
    moved.delivery.trips.date = moved.delivery.trips.date.map((date) => (date === days()[0] ? '2026-11-17' : date));
    const c = paperCase(moved as never, planned.scenario, [], english);
    const again = [...paperFiles(c, 'A4')]
      .filter(([path]) => path.startsWith('calendars/zone-'))
      .flatMap(([, make]) => events(make()));
    expect(new Set(again.map(({ uid }) => uid))).toEqual(
      new Set(
        ics('zone')
          .flatMap(events)
          .map(({ uid }) => uid),
      ),
    );
  });

  it('give back text with commas, semicolons, backslashes and line ends as it was (section 3.3.11)', () => {
    const said = 'seed, packs; C:\\new\nsecond line';
    const event = {
      uid: 'u',
      from: '20260605',
      to: '20260606',
      isAllDay: true,
      summary: said,
      description: said,
      place: 'Ñandú',
    };
    const [read] = events(calendarText('x', '20260601T000000Z', [event]));
    expect(read?.summary).toBe(said);
    expect(read?.description).toBe(said);
    expect(read?.location).toBe('Ñandú');
  });
});

describe('in a language a third longer', () => {
  it('papers hold the same figures and lots', () => {
    const c = paperCase(planned.plan, planned.scenario, planned.decisions.decisions, pseudoWords());
    const longer = paperFiles(c, 'Letter');
    const [day = ''] = days();
    const figures = (html: string) =>
      tablesOf(html)
        .filter(({ name }) => name === 'goods-out')
        .flatMap(({ rows }) => rows.map((row) => [row[0], row[3], row[4]].join(' ')));
    const path = `${day}/waybills.html`;
    const plain = figures(file(path)).filter((row) => !row.startsWith('Trip'));
    expect(figures(longer.get(path)?.() ?? '').filter((row) => !/^Tr/.test(row))).toEqual(plain);
    expect(longer.get(path)?.()).toContain('size: Letter');
  });
});
