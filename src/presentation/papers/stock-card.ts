import { isoDate, type Lot } from '../../engine/index.ts';
import { dateText } from '../views/frame-view.ts';
import { type LotMove, lotMoves } from '../views/stock-moves.ts';
import { productText } from './goods-text.ts';
import type { Block, Page, Row } from './page.ts';
import { dayText, footOf, number, type PaperCase } from './paper-case.ts';

const SPARE_ROWS = 4;

/** The cards of one depot, lot by lot: what the plan expects to leave, and room for what really moves. */
export function stockCards(c: PaperCase, depot: PaperCase['scenario']['depots'][number]): Page {
  const { store } = c.said;
  const moves = lotMoves(c.plan, c.scenario);
  return {
    title: store.cardTitle(depot.name),
    about: [store.cardAbout],
    blocks: c.scenario.lots.flatMap((lot, row) =>
      lot.depotId === depot.id
        ? [
            card(
              c,
              lot,
              moves.filter((move) => move.lot === row),
            ),
          ]
        : [],
    ),
    foot: footOf(c),
  };
}

function card(c: PaperCase, lot: Lot, moves: readonly LotMove[]): Block {
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
        rows: rowsOf(c, moves),
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

/** The lot as it stands or arrives, then what each vehicle takes of it, day by day. */
function rowsOf(c: PaperCase, moves: readonly LotMove[]): Row[] {
  const { cardOpening, cardArrival } = c.said.store;
  let left = 0;
  const rows = byVehicle(moves).map(({ kind, why, date, vehicleId, packs }): Row => {
    left += kind === 'in' ? packs : -packs;
    return kind === 'in'
      ? {
          cells: [dateText(date, c.words, false), why === 'arrival' ? cardArrival : cardOpening, '', number(c, left)],
        }
      : { cells: [dayText(c, date).replace(/ \d{4}$/, ''), vehicleId, number(c, packs), number(c, left)] };
  });
  return [...rows, ...Array.from({ length: SPARE_ROWS }, (): Row => ({ cells: [] }))];
}

/** A storekeeper hands a vehicle what all its communities get of the lot, at once. */
function byVehicle(moves: readonly LotMove[]): LotMove[] {
  const sums = new Map<string, LotMove>();
  for (const move of moves) {
    const key = `${move.date} ${move.kind} ${move.vehicleId}`;
    sums.set(key, { ...move, packs: (sums.get(key)?.packs ?? 0) + move.packs });
  }
  return [...sums.values()];
}
