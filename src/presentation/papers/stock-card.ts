import { isoDate, type Lot } from '../../engine/index.ts';
import { dateText } from '../views/frame-view.ts';
import { productText } from './goods-text.ts';
import type { Block, Page, Row } from './page.ts';
import { dayText, footOf, number, type PaperCase } from './paper-case.ts';

const SPARE_ROWS = 4;

interface Issue {
  readonly date: string;
  readonly vehicleId: string;
  readonly packs: number;
}

/** The cards of one depot, lot by lot: what the plan expects to leave, and room for what really moves. */
export function stockCards(c: PaperCase, depot: PaperCase['scenario']['depots'][number]): Page {
  const { store } = c.said;
  const lots = c.scenario.lots.filter(({ depotId }) => depotId === depot.id);
  return {
    title: store.cardTitle(depot.name),
    about: [store.cardAbout],
    blocks: lots.map((lot) => card(c, lot)),
    foot: footOf(c),
  };
}

function card(c: PaperCase, lot: Lot): Block {
  const { store } = c.said;
  const { cardHeads } = store;
  return {
    kind: 'section',
    title: titleOf(c, lot),
    blocks: [
      ...notesOf(c, lot),
      {
        kind: 'table',
        name: `card ${lot.id}`,
        columns: [
          { head: cardHeads.date },
          { head: cardHeads.to, width: 18 },
          { head: cardHeads.expectedOut, align: 'right' },
          { head: cardHeads.expectedLeft, align: 'right' },
          ...[cardHeads.out, cardHeads.back, cardHeads.hold, cardHeads.left, cardHeads.initials].map((head) => ({
            head,
            blank: true,
          })),
        ],
        rows: rowsOf(c, lot),
      },
    ],
  };
}

function titleOf(c: PaperCase, lot: Lot): string {
  const product = c.scenario.products.find(({ id }) => id === lot.productId);
  const goods = product ? productText(c, product) : lot.productId;
  return c.said.store.cardLot(lot.id, goods, dateText(isoDate(lot.expires), c.words));
}

function notesOf(c: PaperCase, lot: Lot): Block[] {
  const { store } = c.said;
  const row = c.plan.ids.lots.indexOf(lot.id);
  const reasons = c.plan.allocation.lots.reasons[row] ?? [];
  const reserved = c.plan.allocation.lots.packsReserved[row] ?? 0;
  const parts = [
    ...(lot.testedCountPerG !== null && lot.testedOn !== null
      ? [store.cardTested(number(c, lot.testedCountPerG), dateText(isoDate(lot.testedOn), c.words))]
      : []),
    ...(lot.germinationPercent === null ? [] : [store.cardGermination(number(c, lot.germinationPercent))]),
    ...(reserved > 0 ? [`${store.cardKept(number(c, reserved))}.`] : []),
    ...reasons.map((reason) => store.cardHeld(c.words.reasons.LOT_REASON_WORDING[reason])),
  ];
  return parts.length === 0 ? [] : [{ kind: 'text', text: parts.join(' '), look: 'note' }];
}

function rowsOf(c: PaperCase, lot: Lot): Row[] {
  let left = lot.packs;
  const opening: Row = {
    cells: [dateText(c.plan.scenario.asOf, c.words, false), c.said.store.cardOpening, '', number(c, left)],
  };
  const issues = issuesOf(c, lot.id).map(({ date, vehicleId, packs }): Row => {
    left -= packs;
    return { cells: [dayText(c, date).replace(/ \d{4}$/, ''), vehicleId, number(c, packs), number(c, left)] };
  });
  return [opening, ...issues, ...Array.from({ length: SPARE_ROWS }, (): Row => ({ cells: [] }))];
}

/** Packs of the lot that each vehicle takes, day by day. */
function issuesOf({ plan }: PaperCase, lotId: string): Issue[] {
  const { delivery, allocation, ids } = plan;
  const sums = new Map<string, Issue>();
  delivery.stops.trip.forEach((trip, stop) => {
    for (const load of delivery.stops.loads[stop] ?? []) {
      delivery.loads.grants[load]?.forEach((grant, i) => {
        if (ids.lots[allocation.grants.lot[grant] ?? -1] !== lotId) return;
        const date = delivery.trips.date[trip] ?? '';
        const vehicleId = ids.vehicles[delivery.trips.vehicle[trip] ?? -1] ?? '';
        const key = `${date} ${vehicleId}`;
        const packs = (sums.get(key)?.packs ?? 0) + (delivery.loads.packs[load]?.[i] ?? 0);
        sums.set(key, { date, vehicleId, packs });
      });
    }
  });
  return [...sums.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, issue]) => issue);
}
