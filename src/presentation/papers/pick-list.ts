import { hourText } from '../views/days-axis.ts';
import { dateText } from '../views/frame-view.ts';
import { byLot, type CarriedGoods, goodsOfStop } from './carried-goods.ts';
import { productText } from './goods-text.ts';
import type { Block, Page, Row, Table } from './page.ts';
import { dayText, footOf, number, type PaperCase, shortNumber } from './paper-case.ts';
import type { VehicleTask } from './route-sheet.ts';

/** What a storekeeper takes off the shelf on one day, trip by trip, and what stays on it. */
export function pickList(c: PaperCase, depot: VehicleTask['depot'], date: string, tasks: readonly VehicleTask[]): Page {
  const { store } = c.said;
  return {
    title: store.pickTitle(depot.name, dayText(c, date)),
    about: [store.pickAbout],
    blocks: [
      goodsTable(c, 'picked', tripRows(c, tasks)),
      {
        kind: 'section',
        title: store.pickSum,
        blocks: [
          goodsTable(
            c,
            'sum',
            byLot(tasks.flatMap(({ goods }) => goods)).map((one) => goodsRow(c, one)),
          ),
        ],
      },
      ...heldPart(c, depot.id),
      { kind: 'signatures', labels: [store.pickSigns.keeper, store.pickSigns.second, store.pickSigns.time] },
    ],
    foot: footOf(c),
  };
}

function goodsTable(c: PaperCase, name: string, rows: readonly Row[]): Table {
  const { pickHeads } = c.said.store;
  return {
    kind: 'table',
    name,
    columns: [
      { head: pickHeads.lot, whole: true },
      { head: pickHeads.goods, width: 38 },
      { head: pickHeads.expires, whole: true },
      { head: pickHeads.count, align: 'right' },
      { head: pickHeads.kg, align: 'right' },
      { head: pickHeads.picked, blank: true },
      { head: pickHeads.checked, blank: true },
    ],
    rows,
  };
}

/** Trips in the order they leave. */
function tripRows(c: PaperCase, tasks: readonly VehicleTask[]): Row[] {
  const { store } = c.said;
  const trips = tasks.flatMap(({ vehicle }) => vehicle.trips.map((trip) => ({ vehicle, trip })));
  return trips
    .sort((a, b) => a.trip.leaveMinute - b.trip.leaveMinute)
    .flatMap(({ vehicle, trip }): Row[] => {
      const heading = store.pickTrip(vehicle.id, number(c, trip.number), hourText(trip.leaveMinute));
      const ice = trip.iceKg > 0 ? store.pickIce(shortNumber(c, trip.iceKg)) : store.pickNoIce;
      const goods = byLot(trip.stops.flatMap(({ row }) => goodsOfStop(c, row)));
      const cool = goods.some(({ product }) => product.kind === 'inoculant');
      return [
        { role: 'group', cells: [cool ? `${heading}. ${ice}` : heading] },
        ...goods.map((one) => goodsRow(c, one)),
      ];
    });
}

function goodsRow(c: PaperCase, one: CarriedGoods): Row {
  const goods = one.withheld ? c.said.road.withheld[one.withheld] : productText(c, one.product);
  return { cells: [one.lot.id, goods, dateText(one.expires, c.words), number(c, one.packs), shortNumber(c, one.kg)] };
}

/** Lots of the depot that may not be given, so that nobody reaches for them when another runs short. */
function heldPart(c: PaperCase, depotId: string): Block[] {
  const { store } = c.said;
  const held = c.scenario.lots.flatMap((lot) => {
    const [reason] = c.plan.allocation.lots.reasons[c.plan.ids.lots.indexOf(lot.id)] ?? [];
    return lot.depotId === depotId && reason !== undefined
      ? [store.pickHeldLine(lot.id, c.words.reasons.LOT_REASON_WORDING[reason])]
      : [];
  });
  if (held.length === 0) return [];
  const texts = held.map((line): Block => ({ kind: 'text', text: line }));
  return [{ kind: 'section', title: store.pickHeld, look: 'care', blocks: texts }];
}
