import { byLot } from './carried-goods.ts';
import { productText } from './goods-text.ts';
import type { Page, Row } from './page.ts';
import { dayText, footOf, number, type PaperCase } from './paper-case.ts';
import type { VehicleTask } from './route-sheet.ts';

const SPARE_ROWS = 2;
const CLEAR_ROWS = 3;

/** What comes back, why, and who says later whether it may be used. */
export function holdNote(c: PaperCase, { vehicle, goods, date }: VehicleTask): Page {
  const { road } = c.said;
  const { holdHeads, clearHeads, holdSigns } = road;
  const reasons = Object.entries(road.holdReasons);
  const rows = byLot(goods).map(
    (one): Row => ({ cells: [one.lot.id, productText(c, one.product), number(c, one.packs)] }),
  );
  return {
    title: road.holdTitle(vehicle.id, dayText(c, date)),
    about: [road.holdAbout],
    blocks: [
      { kind: 'fields', labels: [road.registration, road.driver, road.thermometer] },
      {
        kind: 'table',
        name: 'held',
        look: 'open',
        columns: [
          { head: holdHeads.lot, whole: true },
          { head: holdHeads.goods, width: 28 },
          { head: holdHeads.carried, align: 'right' },
          ...[
            holdHeads.back,
            holdHeads.why,
            holdHeads.stop,
            holdHeads.celsius,
            holdHeads.hours,
            holdHeads.initials,
          ].map((head) => ({ head, blank: true })),
        ],
        rows: [...rows, ...Array.from({ length: SPARE_ROWS }, (): Row => ({ cells: ['', road.holdOther] }))],
      },
      {
        kind: 'section',
        title: road.holdWhy,
        blocks: [
          {
            kind: 'beside',
            shares: [1, 1],
            parts: [reasons.slice(0, 4), reasons.slice(4)].map((items) => [{ kind: 'pairs', items }]),
          },
          { kind: 'text', text: road.holdStore },
        ],
      },
      {
        kind: 'section',
        title: road.clearTitle,
        blocks: [
          {
            kind: 'table',
            name: 'cleared',
            look: 'open',
            columns: [
              { head: clearHeads.lot, width: 14 },
              ...[clearHeads.packs, clearHeads.evidence, clearHeads.decided, clearHeads.name, clearHeads.date].map(
                (head) => ({ head, blank: true }),
              ),
            ],
            rows: Array.from({ length: CLEAR_ROWS }, (): Row => ({ cells: [''] })),
          },
          { kind: 'text', text: road.clearNote, look: 'note' },
        ],
      },
      { kind: 'signatures', labels: [holdSigns.driver, holdSigns.keeper, holdSigns.officer] },
    ],
    foot: footOf(c),
  };
}
