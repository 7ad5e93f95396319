import type { Delivery } from '../../../../src/engine/index.ts';
import { type OwnTrip, ownTrip } from './own-trip.ts';
import type { ConsignmentSpec, NetworkSpec } from './small-network.ts';

/** Every plan of a tiny network, by enumeration; costs by the second opinion of own-trip.ts. Ice and packs are unpriced. */

type Trips = readonly (readonly number[])[];

const VEHICLE = {
  payloadKg: 1000,
  coolLitres: 50,
  coolUaWPerK: 0.6,
  iceKg: 9.6,
  maxHours: 9,
  costPerKm: 1,
  costPerDay: 20,
};

const vehicleOf = (spec: NetworkSpec, vehicle: number): typeof VEHICLE => ({
  ...VEHICLE,
  ...(spec.vehicles[vehicle] as Partial<typeof VEHICLE>),
});

/** Loads that carry the training of their community: each community has one dry and one inoculant load at most here. */
function trainersOf(spec: NetworkSpec): ReadonlySet<number> {
  return new Set(
    spec.consignments.flatMap((c, load) =>
      c.group !== 'dry' || !spec.consignments.some((o) => o.place === c.place && o.group !== 'dry') ? [load] : [],
    ),
  );
}

function reach(c: ConsignmentSpec, day: number, loss: number): number {
  return (c.reachByDay?.[day] ?? 1) * (1 - (c.group === 'dry' ? 0 : 0.3) * Math.min(loss, 3));
}

/** What a trip of a vehicle-day costs: kilometres, days and, unless told to leave it out, heat; null where it breaks a rule. */
function costOfTrip(
  spec: NetworkSpec,
  vehicle: number,
  day: number,
  loads: readonly number[],
  trip: OwnTrip,
  withHeat = true,
): number | null {
  if (trip.tooHot && withHeat) return null;
  let cost = trip.kilometres * vehicleOf(spec, vehicle).costPerKm;
  for (const load of loads) {
    const c = spec.consignments[load] as ConsignmentSpec;
    if (day < (c.earliest ?? 0) || day > (c.latest ?? 99)) return null;
    cost += (c.worth ?? 500) * (1 - reach(c, day, withHeat ? (trip.log10Loss.get(load) ?? 0) : 0));
  }
  return cost;
}

const carries = (spec: NetworkSpec, loads: readonly number[]): boolean =>
  loads.some((load) => (spec.consignments[load]?.sachets ?? 0) > 0);

/** Cost of one vehicle-day whose trips leave when told; null where it breaks a rule. */
export function costOfDay(
  spec: NetworkSpec,
  vehicle: number,
  day: number,
  trips: Trips,
  ice: readonly number[],
  leaves: readonly number[],
): number | null {
  const kind = vehicleOf(spec, vehicle);
  let cost = trips.length > 0 ? kind.costPerDay : 0;
  let [ready, driven] = [0, 0];
  for (const [i, loads] of trips.entries()) {
    const trip = ownTrip(spec, kind, loads, ready, ice[i] as number, trainersOf(spec), leaves[i] as number, driven);
    const ofTrip = trip && costOfTrip(spec, vehicle, day, loads, trip);
    if (trip === null || ofTrip === null) return null;
    cost += ofTrip;
    ready = trip.returnMinute;
    driven = trip.driven;
  }
  return cost;
}

const QUARTER = 15;
/** Trips of a network that were driven before: they are the same on every day. */
const driven = new WeakMap<NetworkSpec, Map<string, OwnTrip | null>>();

function tripOf(
  spec: NetworkSpec,
  vehicle: number,
  loads: readonly number[],
  ready: number,
  iceKg: number,
  leave: number | null,
  drivenBefore: number,
): OwnTrip | null {
  const known = driven.get(spec) ?? new Map<string, OwnTrip | null>();
  driven.set(spec, known);
  const key = `${vehicle} ${loads} ${ready} ${iceKg} ${leave} ${drivenBefore}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const trip = ownTrip(spec, vehicleOf(spec, vehicle), loads, ready, iceKg, trainersOf(spec), leave, drivenBefore);
  known.set(key, trip);
  return trip;
}

/** Least cost of a day's trips, each leaving as early as allowed or on any quarter hour after that; Infinity where none is allowed. */
function leastOfDay(
  spec: NetworkSpec,
  vehicle: number,
  day: number,
  trips: Trips,
  ice: readonly number[],
  ready: number,
  driven: number,
  most: number,
): number {
  const [loads, ...rest] = trips;
  if (!loads) return 0;
  let least = most;
  for (let leave: number | null = null; ; ) {
    const trip: OwnTrip | null = tripOf(spec, vehicle, loads, ready, ice[0] as number, leave, driven);
    // Who comes too late now comes too late at every later hour; and no hour is better than one without heat.
    if (!trip) return least;
    const atBest = costOfTrip(spec, vehicle, day, loads, trip, false);
    if (atBest === null || atBest >= least) return least;
    const ofTrip = costOfTrip(spec, vehicle, day, loads, trip);
    if (ofTrip !== null && ofTrip < least) {
      const after = leastOfDay(spec, vehicle, day, rest, ice.slice(1), trip.returnMinute, trip.driven, least - ofTrip);
      least = Math.min(least, ofTrip + after);
    }
    // Later is of no use to goods that do not mind the heat.
    if (!carries(spec, loads)) return least;
    leave = (Math.floor(trip.leaveMinute / QUARTER + 1e-9) + 1) * QUARTER;
  }
}

/** Cost of leaving a load behind. */
function unservedCost(spec: NetworkSpec, load: number): number {
  const dearest = spec.vehicles.map((_, v) => {
    const { costPerDay, costPerKm } = vehicleOf(spec, v);
    return costPerDay + 2 * costPerKm * Math.max(...spec.places.map((p) => Math.hypot(p.x, p.y)));
  });
  return 1.01 * (spec.consignments[load]?.worth ?? 500) + 2 * Math.max(1, ...dearest);
}

/** The cost of a finished plan by the second opinion; null where it breaks a rule. */
export function costOfPlan(spec: NetworkSpec, delivery: Delivery): number | null {
  let cost = delivery.unserved.reduce((sum, { load }) => sum + unservedCost(spec, load), 0);
  for (const { vehicle, day, trips } of delivery.vehicleDays) {
    const loads = trips.map((trip) => trip.stops.flatMap((stop) => stop.loads));
    const ofDay = costOfDay(
      spec,
      vehicle,
      day,
      loads,
      trips.map((trip) => trip.iceKg),
      trips.map((trip) => trip.leaveMinute),
    );
    if (ofDay === null) return null;
    cost += ofDay;
  }
  return cost;
}

/** All orders of a set of loads, cut into trips in all ways. */
function* waysToDrive(loads: readonly number[]): Generator<number[][]> {
  if (loads.length === 0) {
    yield [];
    return;
  }
  for (let i = 0; i < loads.length; i++) {
    const first = loads[i] as number;
    for (const rest of waysToDrive([...loads.slice(0, i), ...loads.slice(i + 1)])) {
      yield [[first], ...rest];
      if (rest.length > 0) yield [[first, ...(rest[0] as number[])], ...rest.slice(1)];
    }
  }
}

/** Least cost of one vehicle-day with a set of loads, by the ice it draws: 0, 1, … fills of its box. */
function bestDays(spec: NetworkSpec, vehicle: number, day: number, loads: readonly number[]): number[] {
  const best: number[] = [];
  const { iceKg, costPerDay } = vehicleOf(spec, vehicle);
  for (const trips of waysToDrive(loads)) {
    const cold = trips.map((trip) => carries(spec, trip));
    for (let pick = 0; pick < 1 << trips.length; pick++) {
      const iced = cold.map((isCold, i) => isCold && ((pick >> i) & 1) === 1);
      if (cold.some((isCold, i) => !isCold && ((pick >> i) & 1) === 1)) continue;
      const ice = iced.map((has) => (has ? iceKg : 0));
      const fills = iced.filter(Boolean).length;
      const most = (best[fills] ?? Number.POSITIVE_INFINITY) - costPerDay;
      const cost = leastOfDay(spec, vehicle, day, trips, ice, 0, 0, most);
      if (cost < most) best[fills] = costPerDay + cost;
    }
  }
  return best;
}

/** Least cost over all plans. */
export function leastCost(spec: NetworkSpec): number {
  const days = spec.days ?? 3;
  const slots = spec.vehicles.flatMap((_, vehicle) => Array.from({ length: days }, (_, day) => ({ vehicle, day })));
  const known = new Map<string, number[]>();
  const daysOf = (slot: number, loads: readonly number[]) => {
    const key = `${slot}:${loads.join(',')}`;
    const { vehicle, day } = slots[slot] as (typeof slots)[number];
    const found = known.get(key) ?? bestDays(spec, vehicle, day, loads);
    known.set(key, found);
    return found;
  };
  let least = Number.POSITIVE_INFINITY;
  const place: number[] = [];
  const assign = (load: number) => {
    if (load === spec.consignments.length) {
      if (
        keepsSeedFirst(
          spec,
          place.map((slot) => slots[slot]?.day ?? -1),
        )
      )
        least = Math.min(least, costOf());
      return;
    }
    for (let slot = -1; slot < slots.length; slot++) {
      place[load] = slot;
      assign(load + 1);
    }
  };
  const costOf = () => {
    const left = place.reduce((sum, slot, load) => (slot < 0 ? sum + unservedCost(spec, load) : sum), 0);
    return withIce(0, left, new Array(days).fill(spec.depots?.[0]?.ice ?? 100));
  };
  const withIce = (slot: number, cost: number, stock: number[]): number => {
    if (slot === slots.length || cost >= least) return cost;
    const loads = place.flatMap((at, load) => (at === slot ? [load] : []));
    if (loads.length === 0) return withIce(slot + 1, cost, stock);
    const { vehicle, day } = slots[slot] as (typeof slots)[number];
    let best = Number.POSITIVE_INFINITY;
    for (const [fills, ofDay] of daysOf(slot, loads).entries()) {
      const drawn = fills * vehicleOf(spec, vehicle).iceKg;
      if (ofDay === undefined || drawn > (stock[day] as number)) continue;
      const left = stock.map((kg, d) => (d === day ? kg - drawn : kg));
      best = Math.min(best, withIce(slot + 1, cost + ofDay, left));
    }
    return best;
  };
  assign(0);
  return least;
}

/** Growers here hold no seed of their own. */
function keepsSeedFirst(spec: NetworkSpec, dayOf: readonly number[]): boolean {
  return spec.consignments.every((c, load) => {
    if (c.group !== 'inoculant' || (dayOf[load] as number) < 0) return true;
    const seed = spec.consignments.flatMap((o, i) => (o.place === c.place && o.group === 'dry' ? [i] : []));
    const served = seed.map((i) => dayOf[i] as number).filter((day) => day >= 0);
    return seed.length === 0 || (served.length > 0 && Math.max(...served) <= (dayOf[load] as number));
  });
}
