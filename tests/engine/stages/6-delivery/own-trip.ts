import type { ConsignmentSpec, NetworkSpec, PlaceSpec } from './small-network.ts';
import { KM_PER_MINUTE } from './small-network.ts';

/**
 * A second opinion on one trip, written from the modelling agreements and sharing no code with the stage: the clock by plain
 * arithmetic, heat by explicit steps of twenty seconds. Loads are the consignments of a network spec, one load each, depot 0.
 */
export interface OwnTrip {
  readonly leaveMinute: number;
  readonly returnMinute: number;
  /** Driving since the crew's last rest. */
  readonly driven: number;
  readonly kilometres: number;
  /** Value lost on the road by log10 loss, by load. */
  readonly log10Loss: ReadonlyMap<number, number>;
  readonly packC: ReadonlyMap<number, number>;
  /** The hot band reached 40 °C with packs aboard: not allowed at this hour. */
  readonly tooHot: boolean;
}

export interface OwnVehicle {
  readonly payloadKg: number;
  readonly coolLitres: number;
  readonly coolUaWPerK: number;
  readonly iceKg: number;
  readonly maxHours: number;
}

const OPENS = 360;
const SHIFT = 360;
const CLOSES = 1080;
const SUNSET = 1110;

export const kgOf = (c: ConsignmentSpec) => (c.seedPacks ?? 0) * (c.packKg ?? 25) + (c.sachets ?? 0) * 0.1;

/**
 * Null where the hours, the weight or the volume forbid the trip.
 *
 * @param leaveMinute when it leaves; null: as early as allowed
 */
export function ownTrip(
  spec: NetworkSpec,
  vehicle: OwnVehicle,
  loads: readonly number[],
  readyMinute: number,
  iceKg: number,
  trains: ReadonlySet<number>,
  leaveMinute: number | null,
  drivenBefore = 0,
): OwnTrip | null {
  const goods = loads.map((load) => spec.consignments[load] as ConsignmentSpec);
  const kg = goods.reduce((sum, c) => sum + kgOf(c), 0);
  const litres = goods.reduce((sum, c) => sum + (c.sachets ?? 0) * 0.2, 0);
  if (kg > vehicle.payloadKg + 1e-6 || litres > vehicle.coolLitres + 1e-6) return null;
  const placeOf = (load: number) => spec.places[spec.consignments[load]?.place ?? -1] as PlaceSpec;
  const km = (a: PlaceSpec, b: PlaceSpec) => Math.hypot(a.x - b.x, a.y - b.y);
  const depot = { x: 0, y: 0 };
  let minute = Math.max(SHIFT, OPENS, 345, Math.max(readyMinute, OPENS, SHIFT) + kg * 0.03);
  const first = placeOf(loads[0] as number);
  const { restAfterHours = 4.5, restMinutes = 0 } = spec.policy ?? {};
  const mostDriving = restMinutes > 0 ? restAfterHours * 60 + 1e-6 : Number.POSITIVE_INFINITY;
  const toFirst = km(depot, first) / KM_PER_MINUTE;
  let driven = drivenBefore;
  if (driven > 0 && driven + toFirst > mostDriving) {
    minute = Math.max(SHIFT, OPENS, 345, Math.max(readyMinute, OPENS, SHIFT) + restMinutes + kg * 0.03);
    driven = 0;
  }
  if (leaveMinute === null) minute = Math.max(minute, (first.opens ?? 0) - km(depot, first) / KM_PER_MINUTE);
  else if (leaveMinute < minute - 1e-6) return null;
  else minute = leaveMinute;
  const leave = minute;
  const heat = new OwnHeat(
    spec,
    vehicle,
    goods.reduce((sum, c) => sum + (c.sachets ?? 0) * 0.1, 0),
    iceKg,
  );
  const [log10Loss, packC] = [new Map<number, number>(), new Map<number, number>()];
  let tooHot = false;
  let at: PlaceSpec = depot;
  let kilometres = 0;
  for (let i = 0; i < loads.length; ) {
    const place = placeOf(loads[i] as number);
    const arrive = minute + km(at, place) / KM_PER_MINUTE;
    kilometres += km(at, place);
    heat.run(minute, arrive, true);
    if (arrive - minute > mostDriving) return null;
    driven += arrive - minute;
    const here: number[] = [];
    const beyond = loads.slice(i).find((load) => placeOf(load) !== place);
    const onward = km(place, beyond === undefined ? depot : placeOf(beyond)) / KM_PER_MINUTE;
    const rests = driven > 0 && driven + onward > mostDriving;
    if (rests) driven = 0;
    let depart = Math.max(arrive + (rests ? restMinutes : 0), place.opens ?? 0) + 20;
    for (; i < loads.length && placeOf(loads[i] as number) === place; i++) {
      const load = loads[i] as number;
      here.push(load);
      depart += (spec.consignments[load]?.seedPacks ?? 0) * (spec.consignments[load]?.packKg ?? 25) * 0.01;
      if (trains.has(load)) depart += 30;
    }
    if (depart > (place.closes ?? 1440) + 1e-6) return null;
    heat.run(arrive, depart, false);
    for (const load of here) {
      const sachets = spec.consignments[load]?.sachets ?? 0;
      if (sachets === 0) continue;
      log10Loss.set(load, heat.log10Loss);
      packC.set(load, heat.celsius);
    }
    if (heat.packsKg > 0 && heat.hottest >= 40) tooHot = true;
    for (const load of here) heat.take((spec.consignments[load]?.sachets ?? 0) * 0.1);
    minute = depart;
    at = place;
  }
  kilometres += km(at, depot);
  driven += km(at, depot) / KM_PER_MINUTE;
  if (km(at, depot) / KM_PER_MINUTE > mostDriving) return null;
  const returnMinute = minute + km(at, depot) / KM_PER_MINUTE;
  if (returnMinute > Math.min(SHIFT + vehicle.maxHours * 60, CLOSES, SUNSET) + 1e-6) return null;
  return { leaveMinute: leave, returnMinute, driven, kilometres, log10Loss, packC, tooHot };
}

/** Sterile peat, slow growers: one log10 in 28 days at 40 °C, ten times as fast for 18 K. */
const lossPerDay = (celsius: number) => 10 ** ((celsius - 40) / 18) / 28;

/** A light box in the open by quarter hours; straight lines in between. */
function feltAir(spec: NetworkSpec) {
  const sunLoad = spec.sun ?? (() => 0);
  const air = spec.airC ?? (() => 25);
  const felt = (q: number, moving: boolean) => {
    const sun = sunLoad(q * 15);
    return air(q * 15) + Math.max(0, 0.45 * (moving ? 9.5 * sun - 1.4 : 26.4 * sun - 3.9));
  };
  const day = (moving: boolean) => Float64Array.from({ length: 98 }, (_, q) => felt(q, moving));
  return { moving: day(true), parked: day(false) };
}
const feltBySpec = new WeakMap<NetworkSpec, ReturnType<typeof feltAir>>();

class OwnHeat {
  celsius: number;
  hottest = 8;
  log10Loss = 0;
  packsKg: number;
  private hot: { celsius: number; ice: number; water: number };
  private cool: { celsius: number; ice: number; water: number };
  private readonly felt: ReturnType<typeof feltAir>;
  private readonly ua: number;

  constructor(spec: NetworkSpec, vehicle: OwnVehicle, packsKg: number, iceKg: number) {
    this.felt = feltBySpec.get(spec) ?? feltAir(spec);
    feltBySpec.set(spec, this.felt);
    this.ua = vehicle.coolUaWPerK;
    this.packsKg = packsKg;
    const melted = Math.min(iceKg, ((packsKg * 2700 + 1500) * 8) / 333_550);
    const left = ((packsKg * 2700 + 1500) * 8 - melted * 333_550) / (packsKg * 2700 + 1500 + melted * 4186);
    this.cool = { celsius: left, ice: iceKg - melted, water: melted };
    this.hot = { ...this.cool };
    this.celsius = left;
  }

  take(kg: number): void {
    this.packsKg = this.packsKg - kg < 1e-9 ? 0 : this.packsKg - kg;
  }

  run(from: number, to: number, moving: boolean): void {
    if (this.packsKg <= 0) return;
    const steps = Math.max(1, Math.ceil((to - from) * 3));
    const seconds = ((to - from) * 60) / steps;
    for (let i = 0; i < steps; i++) {
      const air = this.airAt(from + ((i + 0.5) * seconds) / 60, moving);
      this.step(this.cool, air, seconds);
      this.step(this.hot, air + 2, seconds);
      this.log10Loss += (seconds / 86400) * lossPerDay(this.cool.celsius);
      this.hottest = Math.max(this.hottest, this.hot.celsius);
    }
    this.celsius = this.cool.celsius;
  }

  private airAt(minute: number, moving: boolean): number {
    const felt = moving ? this.felt.moving : this.felt.parked;
    const quarter = Math.floor(minute / 15);
    const share = minute / 15 - quarter;
    return (felt[quarter] as number) * (1 - share) + (felt[quarter + 1] as number) * share;
  }

  private step(state: { celsius: number; ice: number; water: number }, air: number, seconds: number): void {
    if (state.ice > 0) {
      const melted = Math.min(state.ice, (this.ua * Math.max(0, air) * seconds) / 333_550);
      state.ice -= melted;
      state.water += melted;
      return;
    }
    const capacity = state.water * 4186 + this.packsKg * 2700 + 1500;
    state.celsius += ((this.ua * (air - state.celsius)) / capacity) * seconds;
  }
}
