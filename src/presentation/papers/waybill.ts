import { placeName } from '../place-name.ts';
import { dateText } from '../views/frame-view.ts';
import { byLot, byLotAndCrop, goodsOfStop } from './carried-goods.ts';
import { goodsText, productText } from './goods-text.ts';
import type { Page, Row } from './page.ts';
import { dayText, footOf, number, type PaperCase, shortNumber } from './paper-case.ts';
import type { VehicleTask } from './route-sheet.ts';

/** What leaves the store on a vehicle, lot by lot, and what each place receives of it. */
export function waybill(c: PaperCase, task: VehicleTask): Page {
  const { road } = c.said;
  const { goodsOutHeads, receivedHeads } = road;
  const { vehicle, depot, about, date } = task;
  return {
    title: road.waybillTitle(vehicle.id, dayText(c, date)),
    about: [road.waybillAbout(depot.name, about.kind)],
    blocks: [
      { kind: 'fields', labels: [road.waybillNumber, road.registration, road.driver, road.seal, road.thermometer] },
      {
        kind: 'section',
        title: road.goodsOut,
        blocks: [
          {
            kind: 'table',
            name: 'goods-out',
            columns: [
              { head: goodsOutHeads.lot, whole: true },
              { head: goodsOutHeads.goods, width: 36 },
              { head: goodsOutHeads.expires, whole: true },
              { head: goodsOutHeads.packs, align: 'right' },
              { head: goodsOutHeads.kg, align: 'right' },
              { head: goodsOutHeads.loaded, blank: true },
              { head: goodsOutHeads.condition, blank: true, width: 13 },
            ],
            rows: outRows(c, task),
          },
        ],
      },
      {
        kind: 'section',
        title: road.received,
        blocks: [
          {
            kind: 'table',
            name: 'received',
            columns: [
              { head: receivedHeads.stop },
              { head: receivedHeads.place },
              { head: receivedHeads.goods, width: 34 },
              { head: receivedHeads.good, blank: true },
              { head: receivedHeads.bad, blank: true },
              { head: receivedHeads.celsius, blank: true },
              { head: receivedHeads.signs, blank: true, width: 20 },
            ],
            rows: receivedRows(c, task),
          },
          { kind: 'text', text: road.receivedNote, look: 'note' },
        ],
      },
      { kind: 'signatures', labels: [road.signs.keeper, road.signs.driver, road.signs.back] },
    ],
    foot: footOf(c),
  };
}

function outRows(c: PaperCase, { vehicle, goods }: VehicleTask): Row[] {
  const several = vehicle.trips.length > 1;
  const rows = vehicle.trips.flatMap((trip): Row[] => {
    const own = byLot(trip.stops.flatMap(({ row }) => goodsOfStop(c, row)));
    const lots = own.map(
      (one): Row => ({
        cells: [
          one.lot.id,
          one.withheld ? c.said.road.withheld[one.withheld] : productText(c, one.product),
          dateText(one.expires, c.words),
          number(c, one.packs),
          shortNumber(c, one.kg),
        ],
      }),
    );
    return [
      ...(several ? [{ role: 'group', cells: [c.said.road.trip(number(c, trip.number))] } as const] : []),
      ...lots,
    ];
  });
  const kg = goods.reduce((sum, one) => sum + one.kg, 0);
  const packs = goods.reduce((sum, one) => sum + one.packs, 0);
  return [...rows, { role: 'sum', cells: ['', '', '', number(c, packs), shortNumber(c, kg)] }];
}

function receivedRows(c: PaperCase, { vehicle }: VehicleTask): Row[] {
  return vehicle.trips.flatMap(({ stops }) =>
    stops.map((stop): Row => {
      const goods = byLotAndCrop(goodsOfStop(c, stop.row));
      return {
        cells: [
          { big: number(c, stop.number) },
          placeName(c.plan, c.scenario, stop.place),
          {
            pairs: goods.map(
              (one) => [one.withheld ? c.said.road.withheld[one.withheld] : goodsText(c, one), one.lot.id] as const,
            ),
          },
        ],
      };
    }),
  );
}
