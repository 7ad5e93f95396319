import type { Product } from '../../engine/index.ts';
import { placeName } from '../place-name.ts';
import { hourText } from '../views/days-axis.ts';
import type { DayStop, VehicleDay } from '../views/days-fleet.ts';
import { dateText } from '../views/frame-view.ts';
import { asCounted, type CarriedGoods, countPacks, goodsOfStop, hasInoculant, isTreated } from './carried-goods.ts';
import { communityName, contactOf, zoneNames } from './case-names.ts';
import { goodsText } from './goods-text.ts';
import type { Block, Cell, Page, Row, Text } from './page.ts';
import { strong } from './page.ts';
import {
  capital,
  dayBefore,
  daysBetween,
  dayText,
  footOf,
  leaveByText,
  number,
  type PaperCase,
  shortNumber,
} from './paper-case.ts';
import { roadRules } from './road-rules.ts';
import { routeMap } from './route-map.ts';

/** A day of one vehicle, with all that its papers ask of it. */
export interface VehicleTask {
  readonly date: string;
  readonly vehicle: VehicleDay;
  readonly about: PaperCase['scenario']['vehicles'][number];
  readonly depot: PaperCase['scenario']['depots'][number];
  readonly goods: readonly CarriedGoods[];
  /** What it carries beside any fertiliser; `fertiliser` where that is all. */
  readonly load: 'seed' | 'inoculant' | 'both' | 'fertiliser';
}

/** Null where the scenario does not know the vehicle or its depot. */
export function vehicleTask(c: PaperCase, vehicle: VehicleDay, date: string): VehicleTask | null {
  const about = c.scenario.vehicles[vehicle.vehicle];
  const depot = c.scenario.depots.find(({ id }) => id === about?.depotId);
  if (about === undefined || depot === undefined) return null;
  const goods = vehicle.trips.flatMap(({ stops }) => stops.flatMap(({ row }) => goodsOfStop(c, row)));
  const has = (kind: Product['kind']) => goods.some(({ product }) => product.kind === kind);
  const hasDry = has('seed') || has('sticker');
  const load = has('inoculant')
    ? hasDry
      ? 'both'
      : 'inoculant'
    : hasDry || goods.length === 0
      ? 'seed'
      : 'fertiliser';
  return { date, vehicle, about, depot, goods, load };
}

/** What a driver takes along: when to leave, where to go, what to hand over, and what to do when it goes otherwise. */
export function routeSheet(c: PaperCase, task: VehicleTask): Page {
  const { road } = c.said;
  const { vehicle, date } = task;
  const first = vehicle.trips[0];
  const latest = leaveByText(c, first?.row ?? -1);
  return {
    title: road.routeTitle(`${vehicle.mark.letter}, ${vehicle.id}`, dayText(c, date)),
    about: aboutLines(c, task),
    corner: {
      above: road.leaveAt(hourText(vehicle.leaveMinute)),
      big: latest,
      below: road.backAbout(hourText(vehicle.returnMinute)),
    },
    blocks: [
      { kind: 'fields', labels: [road.registration, road.driver, road.officer, road.phone] },
      { kind: 'beside', parts: [mapPart(c, task), loadingPart(c, task)], shares: [1.2, 1] },
      stopsTable(c, task),
      ...roadRules(c, task, latest),
      { kind: 'signatures', labels: [road.signs.keeper, road.signs.driver, road.signs.back] },
    ],
    foot: footOf(c),
  };
}

function loadName(c: PaperCase, { load, goods }: VehicleTask): string {
  const { road } = c.said;
  const isMixed = load !== 'fertiliser' && goods.some(({ product }) => product.kind === 'fertiliser');
  // A load of dry goods may hold neither seed nor fertiliser: stickers alone.
  const name = load === 'seed' && countPacks(goods, 'seed') === 0 && !isMixed ? road.loadOther : road.load[load];
  return isMixed ? road.loadWithFertiliser(name) : name;
}

function aboutLines(c: PaperCase, task: VehicleTask): Text[] {
  const { road } = c.said;
  const { vehicle, about, depot, goods, date } = task;
  const carriage = c.words.days.carriages[about.carriage];
  const lines: Text[] = [
    [
      strong(`${road.loadCarries(loadName(c, task))} `),
      road.routeAbout(capital(about.kind), carriage, depot.name, zoneNames(c, vehicle.zones)),
    ],
    [
      road.carries(
        number(c, vehicle.stopCount),
        number(c, vehicle.kilometres),
        countedText(c, goods, road.carriesBags, road.carriesPacks).join(', '),
      ),
      vehicle.trips.length > 1 ? ` ${road.trips(number(c, vehicle.trips.length))}` : '',
    ],
  ];
  if (daysBetween(c.plan.scenario.asOf, date) > REPRINT_DAYS) {
    lines.push([strong(road.reprint(dateText(dayBefore(date, REPRINT_DAYS), c.words)))]);
  }
  return lines;
}

/** Print again where a day was planned longer ahead than this. */
const REPRINT_DAYS = 2;

function mapPart(c: PaperCase, { vehicle, depot, date }: VehicleTask): Block[] {
  const { road } = c.said;
  const drawing = routeMap(c.plan, c.scenario, vehicle, date, {
    label: road.map(number(c, vehicle.stopCount)),
    depot: depot.name,
    north: road.north,
    scale: (km) => road.mapScale(number(c, km)),
    placeName: (place) => placeName(c.plan, c.scenario, place),
  });
  const day = daysBetween(c.plan.scenario.planningFrom, date);
  const state = c.plan.season.roadState[day] ?? 0;
  return [
    { kind: 'drawing', drawing },
    { kind: 'text', text: [strong(road.roads[state] ?? ''), ` ${road.mapNote}`], look: 'note' },
  ];
}

function loadingPart(c: PaperCase, task: VehicleTask): Block[] {
  const parts: Block[] = [];
  if (hasInoculant(task.goods)) {
    parts.push({
      kind: 'section',
      title: c.said.road.boxTitle,
      blocks: [{ kind: 'steps', columns: 1, items: boxSteps(c, task) }],
    });
  }
  if (task.goods.some(({ product }) => product.kind !== 'inoculant') || task.goods.length === 0) {
    parts.push({
      kind: 'section',
      title: c.said.road.seedTitle,
      blocks: [{ kind: 'steps', columns: 1, items: seedSteps(c, task) }],
    });
  }
  return parts;
}

function boxSteps(c: PaperCase, { depot, about, vehicle }: VehicleTask): string[] {
  const { road } = c.said;
  const [first, ...later] = vehicle.trips;
  const fromStore =
    depot.coolStoreLitres <= 0
      ? road.boxRoom
      : depot.coolStoreC === null
        ? road.boxStoreUnstated
        : road.boxStore(shortNumber(c, depot.coolStoreC));
  const ice = (first?.iceKg ?? 0) > 0 ? road.boxIce(shortNumber(c, first?.iceKg ?? 0)) : road.boxNoIce;
  return [
    fromStore,
    about.coolLitres > 0 ? ice : road.boxNone,
    road.boxOrder,
    `${road.boxClosed} ${road.boxShade}`,
    ...(later.length > 0 && about.coolLitres > 0
      ? [
          later
            .map(({ number: trip, iceKg }) =>
              iceKg > 0 ? road.nextTrip(number(c, trip), shortNumber(c, iceKg)) : road.nextTripDry(number(c, trip)),
            )
            .join(' '),
        ]
      : []),
    road.boxBack,
  ];
}

function seedSteps(c: PaperCase, { goods }: VehicleTask): string[] {
  const treated = [...new Set(goods.filter(isTreated).map(({ lot }) => lot.id))];
  const { road } = c.said;
  const hasFertiliser = goods.some(({ product }) => product.kind === 'fertiliser');
  return [
    hasFertiliser ? road.seedDry : `${road.seedDry} ${road.seedAlone}`,
    ...(hasFertiliser ? [road.fertiliserApart] : []),
    ...(treated.length > 0 ? [road.seedTreated(treated.join(', '))] : []),
    road.seedOrder,
  ];
}

function stopsTable(c: PaperCase, task: VehicleTask): Block {
  const { stopHeads } = c.said.road;
  const cool = hasInoculant(task.goods);
  const rows = task.vehicle.trips.flatMap((trip): Row[] => {
    const heading: Row = {
      role: 'group',
      cells: [
        c.said.road.tripHead(
          number(c, trip.number),
          hourText(trip.leaveMinute),
          leaveByText(c, trip.row),
          hourText(trip.returnMinute),
        ),
      ],
    };
    const driven = trip.stops.map((stop) => stopRow(c, stop, cool));
    return [
      ...(task.vehicle.trips.length > 1 ? [heading] : []),
      ...driven,
      homeRow(c, trip.row, trip.returnMinute, trip.stops, cool),
    ];
  });
  return {
    kind: 'table',
    name: 'stops',
    columns: [
      { head: '' },
      { head: stopHeads.stop, width: 22 },
      { head: stopHeads.hours, align: 'right' },
      { head: stopHeads.km, align: 'right' },
      { head: stopHeads.goods, width: 34 },
      ...(cool
        ? ([
            { head: stopHeads.expect, align: 'right' },
            { head: stopHeads.read, blank: true },
          ] as const)
        : []),
      { head: stopHeads.counted, blank: true },
      { head: stopHeads.signs, blank: true, width: 16 },
    ],
    rows,
  };
}

function stopRow(c: PaperCase, stop: DayStop, cool: boolean): Row {
  const { road } = c.said;
  const { stops, legs } = c.plan.delivery;
  const goods = asCounted(goodsOfStop(c, stop.row));
  const communities = [...new Set(goods.map(({ communityId }) => communityId))];
  const place = placeName(c.plan, c.scenario, stop.place);
  const named = (id: string) => communities.length > 1 || communityName(c, id) !== place;
  const lines = communities.flatMap((id) => {
    const own = goods.filter(({ communityId }) => communityId === id);
    const heading =
      named(id) && communities.length > 1 ? [[[strong(road.forCommunity(communityName(c, id)))], ''] as const] : [];
    return [
      ...heading,
      ...own.map(
        (one) => [one.withheld ? [strong(road.withheld[one.withheld])] : goodsText(c, one), one.lot.id] as const,
      ),
    ];
  });
  const cells: Cell[] = [
    { big: number(c, stop.number) },
    { lines: [[strong(place)], ...receiverLines(c, stop.place)] },
    { lines: [[strong(hourText(stop.arriveMinute))], ...restLine(c, stop), hourText(stop.departMinute)] },
    number(c, legs[stops.leg[stop.row] ?? -1]?.kilometres ?? 0),
    { pairs: lines },
  ];
  return { cells: cool ? [...cells, celsiusText(c, stop)] : cells };
}

/** The crew's rest at a stop, where the driving rule asks for one. */
const restLine = (c: PaperCase, { restMinutes }: DayStop): string[] =>
  restMinutes > 0 ? [c.said.road.rest(number(c, restMinutes))] : [];

/** Who receives, and the phone; lines to write on where the files do not say. */
function receiverLines(c: PaperCase, place: number): readonly string[] {
  const contact = contactOf(c, place);
  return contact === null ? [c.said.road.noReceiver, c.said.road.noPhone] : contact.split(/[,;] */);
}

/** Bags and packs, those of which there are any. */
function countedText(
  c: PaperCase,
  goods: readonly CarriedGoods[],
  bagsSaid: (count: string) => string,
  packsSaid: (count: string) => string,
): string[] {
  const [bags, packs] = [countPacks(goods, 'seed'), countPacks(goods, 'inoculant')];
  const fertiliser = countPacks(goods, 'fertiliser');
  const others = countPacks(goods, 'sticker');
  return [
    ...(bags > 0 ? [bagsSaid(number(c, bags))] : []),
    ...(packs > 0 ? [packsSaid(number(c, packs))] : []),
    ...(fertiliser > 0 ? [c.said.road.carriesFertiliser(number(c, fertiliser))] : []),
    ...(others > 0 ? [c.said.road.otherGoods(number(c, others))] : []),
  ];
}

/** Warmest packs in air 2 °C hotter; one decimal within a degree of a limit, so that 39.6 is never printed as 40. */
function celsiusText(c: PaperCase, { hotBandMaxC }: DayStop): string {
  if (hotBandMaxC === null) return '';
  return number(c, hotBandMaxC, Math.abs(hotBandMaxC - 40) < 1 ? 1 : 0);
}

function homeRow(c: PaperCase, trip: number, returnMinute: number, stops: readonly DayStop[], cool: boolean): Row {
  const { road } = c.said;
  const { trips, legs } = c.plan.delivery;
  const goods = stops.flatMap(({ row }) => goodsOfStop(c, row));
  const cells: Cell[] = [
    '',
    road.wayHome(number(c, legs[trips.returnLeg[trip] ?? -1]?.kilometres ?? 0)),
    hourText(returnMinute),
    number(c, trips.kilometres[trip] ?? 0),
    { lines: countedText(c, goods, road.sumBags, road.sumPacks) },
  ];
  return { role: 'sum', cells: cool ? [...cells, ''] : cells };
}
