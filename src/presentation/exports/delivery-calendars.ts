import { isoDate, type Plan, parseIsoDate } from '../../engine/index.ts';
import { type CarriedGoods, goodsOfStop } from '../papers/carried-goods.ts';
import { communityName, zoneNames, zoneOfCommunity } from '../papers/case-names.ts';
import { goodsText } from '../papers/goods-text.ts';
import { daysOfPlan, leaveByText, number, type PaperCase, vehicleDays } from '../papers/paper-case.ts';
import { placeName } from '../place-name.ts';
import { hourText } from '../views/days-axis.ts';
import type { VehicleDay } from '../views/days-fleet.ts';
import { type CalendarEvent, calendarText } from './calendar-text.ts';

/** Calendars by vehicle id and by zone id, as iCalendar. No names of people, no phones: places and goods alone. */
export interface DeliveryCalendars {
  readonly vehicles: ReadonlyMap<string, string>;
  readonly zones: ReadonlyMap<string, string>;
}

export function deliveryCalendars(c: PaperCase): DeliveryCalendars {
  const stamp = `${compact(c.plan.scenario.asOf)}T000000Z`;
  const named = (name: string) => c.said.store.icsName(name);
  const vehicles = new Map<string, CalendarEvent[]>();
  for (const date of daysOfPlan(c)) {
    for (const vehicle of vehicleDays(c, date)) {
      vehicles.set(vehicle.id, [...(vehicles.get(vehicle.id) ?? []), vehicleEvent(c, vehicle, date)]);
    }
  }
  const zones = new Map(
    c.scenario.zones.flatMap(({ id, name }) => {
      const events = zoneEvents(c, id);
      return events.length === 0 ? [] : [[id, calendarText(named(name), stamp, events)] as const];
    }),
  );
  return {
    zones,
    vehicles: new Map([...vehicles].map(([id, events]) => [id, calendarText(named(id), stamp, events)])),
  };
}

/** One event a day on which the vehicle runs. */
function vehicleEvent(c: PaperCase, vehicle: VehicleDay, date: string): CalendarEvent {
  const { store } = c.said;
  const latest = leaveByText(c, vehicle.trips[0]?.row ?? -1);
  const stops = vehicle.trips.flatMap((trip) => trip.stops);
  const lines = stops.map(({ row, number: nth, place, arriveMinute }) => {
    const goods = goodsOfStop(c, row).filter(({ withheld }) => withheld === null);
    return store.icsStop(number(c, nth), hourText(arriveMinute), nameOf(c, place), goodsList(c, goods));
  });
  return {
    uid: uidOf(c.plan, `vehicle-${vehicle.id}-${date}`),
    from: utc(c, date, vehicle.leaveMinute),
    to: utc(c, date, vehicle.returnMinute),
    isAllDay: false,
    summary: store.icsVehicle(vehicle.id, zoneNames(c, vehicle.zones)),
    description: [store.icsLeave(hourText(vehicle.leaveMinute), latest), ...lines].join('\n'),
    place: c.scenario.depots.find(({ id }) => id === c.scenario.vehicles[vehicle.vehicle]?.depotId)?.name ?? '',
  };
}

type GoodsGroup = Plan['allocation']['consignments']['group'][number];

/** One whole-day event a community and kind of goods, the nth time it comes: another day in another plan moves the event. */
function zoneEvents(c: PaperCase, zoneId: string): CalendarEvent[] {
  const { delivery, allocation, ids } = c.plan;
  const order = delivery.stops.trip
    .map((_, stop) => stop)
    .sort((a, b) => timeOf(c.plan, a) - timeOf(c.plan, b) || a - b);
  const counts = new Map<string, number>();
  return order.flatMap((stop): CalendarEvent[] => {
    const groups = new Map<string, Set<string>>();
    for (const load of delivery.stops.loads[stop] ?? []) {
      const consignment = delivery.loads.consignment[load] ?? -1;
      const community = ids.communities[allocation.consignments.community[consignment] ?? -1] ?? '';
      const group = allocation.consignments.group[consignment] ?? 'dry';
      groups.set(community, (groups.get(community) ?? new Set()).add(group));
    }
    return [...groups].flatMap(([communityId, kinds]) => {
      if (zoneOfCommunity(c, communityId) !== zoneId) return [];
      const goods = goodsOfStop(c, stop).filter((one) => one.communityId === communityId && one.withheld === null);
      const kind = kindOf(kinds);
      const nth = (counts.get(`${communityId} ${kind}`) ?? 0) + 1;
      counts.set(`${communityId} ${kind}`, nth);
      return [communityEvent(c, stop, communityId, kind, nth, goods)];
    });
  });
}

/** What an event is named by: fertiliser only where nothing else comes with it. */
function kindOf(kinds: ReadonlySet<string>): GoodsGroup {
  const [seed, inoculant] = [kinds.has('dry') || kinds.has('both'), kinds.has('inoculant') || kinds.has('both')];
  if (seed && inoculant) return 'both';
  return seed ? 'dry' : inoculant ? 'inoculant' : 'fertiliser';
}

function communityEvent(
  c: PaperCase,
  stop: number,
  communityId: string,
  kind: GoodsGroup,
  nth: number,
  goods: readonly CarriedGoods[],
): CalendarEvent {
  const { store } = c.said;
  const { stops, trips } = c.plan.delivery;
  const trip = stops.trip[stop] ?? -1;
  const date = trips.date[trip] ?? '';
  const place = nameOf(c, stops.place[stop] ?? -1);
  const vehicle = c.plan.ids.vehicles[trips.vehicle[trip] ?? -1] ?? '';
  const about = store.icsAbout(hourText(stops.startMinute[stop] ?? 0), place, vehicle);
  return {
    uid: uidOf(c.plan, `community-${communityId}-${kind}-${nth}`),
    from: compact(date),
    to: compact(nextDay(date)),
    isAllDay: true,
    summary: store.icsHandover(communityName(c, communityId), store.goods[kind]),
    description: [about, goodsList(c, goods)].join('\n'),
    place,
  };
}

const goodsList = (c: PaperCase, goods: readonly CarriedGoods[]): string =>
  goods.map((one) => goodsText(c, one)).join(', ');

const nameOf = (c: PaperCase, place: number): string => placeName(c.plan, c.scenario, place);

/** Planning day and minute of a stop as one number. */
function timeOf({ delivery: { stops, trips } }: Plan, stop: number): number {
  const day = parseIsoDate(trips.date[stops.trip[stop] ?? -1] ?? '') ?? 0;
  return day * 1440 + (stops.startMinute[stop] ?? 0);
}

const compact = (iso: string): string => iso.replaceAll('-', '');

function nextDay(iso: string): string {
  const day = parseIsoDate(iso);
  return day === null ? iso : isoDate((day + 1) as typeof day);
}

/** Local minutes of a day as UTC, by the scenario's offset. */
function utc({ scenario }: PaperCase, iso: string, localMinute: number): string {
  const minutes = Math.round(localMinute) - scenario.utcOffsetMinutes;
  const day = parseIsoDate(iso) ?? (0 as NonNullable<ReturnType<typeof parseIsoDate>>);
  const date = compact(isoDate((day + Math.floor(minutes / 1440)) as typeof day));
  const within = ((minutes % 1440) + 1440) % 1440;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date}T${two(Math.floor(within / 60))}${two(within % 60)}00Z`;
}

/** Of the season and the thing, never of the plan. Letters that an address does not take become their codes. */
const uidOf = ({ scenario }: Plan, thing: string): string =>
  `${encodeURIComponent(`${thing}-${scenario.name}-${scenario.seasonYear}`)}@nodulary.invalid`;
