import { placeMatrix, type RoutingProblem } from './routing-problem.ts';

/**
 * A routing problem as published sets state one: one depot, one day, no heat. Lengths, times and costs are in the file's own
 * units after its own rounding.
 */
export interface RoutingInstance {
  readonly name: string;
  /** Depot and customers; the depot is place 0. */
  readonly places: number;
  /** Row by row, [from * places + to]. */
  readonly lengths: Float64Array;
  readonly minutes: Float64Array;
  readonly demand: Float64Array;
  /** Service begins within these; at the depot, the hours of every trip. */
  readonly opens: Float64Array;
  readonly closes: Float64Array;
  readonly service: Float64Array;
  /** Goods are at the depot no sooner. */
  readonly release: Float64Array;
  readonly vehicleTypes: readonly InstanceVehicles[];
  readonly mayReload: boolean;
  /** Whether hours, releases or longest journeys bind anything. */
  readonly timed: boolean;
  /** Units of cost in one unit of what the set reports. */
  readonly costUnits: number;
}

/** Vehicles that are the same but for their name. */
export interface InstanceVehicles {
  /** Number of each vehicle as the file counts them, from 1. */
  readonly numbers: readonly number[];
  readonly capacity: number;
  readonly fixedCost: number;
  readonly costPerLength: number;
  readonly mostMinutes: number;
  /** Per place, 1 where it may go; null: everywhere. */
  readonly mayVisit: Uint8Array | null;
}

export interface PosedInstance {
  readonly problem: RoutingProblem;
  /** Number and type of the vehicle of each slot, as the file counts them. */
  readonly vehicles: readonly { readonly vehicle: number; readonly vehicleType: number }[];
}

/** Writes an instance down for the search: a slot a vehicle, a shelf for all that may go to the same places. */
export function posePublished(instance: RoutingInstance): PosedInstance {
  const customers = instance.places - 1;
  const types = sortByClients(instance.vehicleTypes);
  const slotTypes = types.flatMap((type, group) =>
    type.numbers.slice(0, customers).map((vehicle) => ({ type, group, vehicle })),
  );
  const column = (value: (type: InstanceVehicles) => number) => Float64Array.from(slotTypes, ({ type }) => value(type));
  const each = (value: (place: number) => number) => Float64Array.from({ length: customers }, (_, i) => value(i + 1));
  const at = (values: Float64Array) => (place: number) => values[place] as number;
  const shelves = shelvesOf(types);
  const shelfStart = new Int32Array(shelves.length + 1);
  shelves.forEach(({ types: alike }, s) => {
    const slots = alike.reduce((sum, { numbers }) => sum + Math.min(numbers.length, customers), 0);
    shelfStart[s + 1] = (shelfStart[s] as number) + slots;
  });
  const shelfCost = new Float64Array(customers * shelves.length);
  for (let i = 0; i < customers; i++) {
    shelves.forEach(({ mayVisit }, s) => {
      if (mayVisit && mayVisit[i + 1] !== 1) shelfCost[i * shelves.length + s] = Number.POSITIVE_INFINITY;
    });
  }
  // A place closes when service ends there: the file tells until when it may begin.
  const closes = instance.closes.map((until, place) => until + (instance.service[place] as number));
  const problem: RoutingProblem = {
    visits: {
      count: customers,
      place: Int32Array.from({ length: customers }, (_, i) => i + 1),
      kg: each(at(instance.demand)),
      litres: new Float64Array(customers),
      minutes: each(at(instance.service)),
      releaseMinute: each(at(instance.release)),
      unservedCost: each((place) => costOfLeavingBehind(instance, place)),
      shelfFrom: new Int32Array(customers),
      shelfTo: new Int32Array(customers).fill(shelves.length),
      shelfCost,
    },
    slots: {
      count: slotTypes.length,
      matrix: new Int32Array(slotTypes.length),
      group: Int32Array.from(slotTypes, ({ group }) => group),
      payloadKg: column((type) => type.capacity),
      coolLitres: column(() => Number.POSITIVE_INFINITY),
      dayCost: column((type) => type.fixedCost),
      kmCost: column((type) => type.costPerLength),
      loadsFrom: column(() => instance.opens[0] as number),
      earliestLeave: column(() => instance.opens[0] as number),
      latestBack: column(() => instance.closes[0] as number),
      mostMinutes: column((type) => type.mostMinutes),
      loadingMinutesPerKg: column(() => 0),
    },
    matrices: [placeMatrix(instance.places, instance.lengths, instance.minutes, instance.opens, closes)],
    shelfStart,
    reloads: instance.mayReload,
    rest: null,
    grows: shelves.some(({ types }) => types.length > 1),
    timed: instance.timed,
    mostLoads: customers,
    ties: null,
    judge: null,
    orders: null,
  };
  const vehicles = slotTypes.map(({ type, vehicle }) => ({
    vehicle,
    vehicleType: instance.vehicleTypes.indexOf(type) + 1,
  }));
  return { problem, vehicles };
}

/** Vehicles that may go to the same places together; in the order of the file otherwise. */
function sortByClients(types: readonly InstanceVehicles[]): InstanceVehicles[] {
  const keys = new Map(types.map((type) => [type, String(type.mayVisit ?? '')]));
  const order = [...new Set(keys.values())];
  const rank = (type: InstanceVehicles) => order.indexOf(keys.get(type) as string);
  return [...types].sort((a, b) => rank(a) - rank(b));
}

function shelvesOf(types: readonly InstanceVehicles[]) {
  const shelves: { readonly mayVisit: Uint8Array | null; readonly types: InstanceVehicles[] }[] = [];
  for (const type of types) {
    const last = shelves.at(-1);
    if (last && String(last.mayVisit) === String(type.mayVisit)) last.types.push(type);
    else shelves.push({ mayVisit: type.mayVisit, types: [type] });
  }
  return shelves;
}

/**
 * A journey of its own on the dearest vehicle and more, by weight: so that everybody is served, and light loads give way to
 * heavy ones while not everybody can be.
 */
function costOfLeavingBehind({ lengths, places, vehicleTypes, demand }: RoutingInstance, place: number): number {
  const thereAndBack = (lengths[place] as number) + (lengths[place * places] as number);
  // Where there is no way, the search needs a number all the same: one that is not would spoil every sum.
  const journey = Number.isFinite(thereAndBack) ? thereAndBack : 2 * longestOf(lengths);
  const dearest = Math.max(...vehicleTypes.map(({ fixedCost, costPerLength }) => fixedCost + journey * costPerLength));
  const heaviest = demand.reduce((most, kg) => Math.max(most, kg), 0);
  return (1 + dearest) * (1.1 + (heaviest > 0 ? (4 * (demand[place] as number)) / heaviest : 0));
}

function longestOf(lengths: Float64Array): number {
  return lengths.reduce((most, length) => (Number.isFinite(length) && length > most ? length : most), 0);
}
