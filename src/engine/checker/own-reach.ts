import type { Position } from '../vocabulary/places.ts';
import { at, type CheckedCase } from './checked-case.ts';
import {
  closedRoads,
  findWays,
  isMotorcycle,
  joinSites,
  type OwnNetwork,
  type OwnWays,
  openNetwork,
  placeOfJoin,
} from './own-roads.ts';

/** Who can drive where, found when asked for and kept. */
export interface OwnReach {
  /** Minutes there and back for a vehicle on a planning day, by the day's closures and road state. */
  readonly waysOf: (vehicle: number, day: number) => OwnWays;
  /** Does a vehicle get to a place and back on a day, or one after planning, in a road state? */
  readonly isServed: (vehicle: number, place: number, day: number, state: number) => boolean;
  /** Does any vehicle of a depot get to a place and back on passable roads, as closed on the first planning day? */
  readonly depotReaches: (depot: number, place: number) => boolean;
  /** Least minutes there and back over all planning days on passable roads, for a vehicle. */
  readonly roundTripMinutes: (vehicle: number, place: number) => number;
  /** Where a site joins the roads of a vehicle's class; null where it joins none. */
  readonly joinOf: (vehicle: number, site: number) => Position | null;
}

export function openReach(c: CheckedCase): OwnReach {
  let network: OwnNetwork | null = null;
  const sites: readonly Position[] = [
    ...c.scenario.depots.map(({ position }) => position),
    ...c.plan.ids.places.map((_, i): Position => [at(c.plan.places.placeLon, i), at(c.plan.places.placeLat, i)]),
  ];
  const classOf = c.scenario.vehicles.map(
    (vehicle) => `${[...vehicle.roadsAllowed].sort().join(' ')} ${isMotorcycle(vehicle)}`,
  );
  const joins = new Map<string, ReturnType<typeof joinSites>>();
  const known = new Map<string, OwnWays>();
  const closedOn = Array.from({ length: c.planningDays }, (_, day) => closedRoads(c, c.scenario.planning.from + day));
  const closureKeys = closedOn.map((closed) => [...closed].sort((a, b) => a - b).join(' '));
  const networkOf = (): OwnNetwork => {
    network ??= openNetwork(c.scenario);
    return network;
  };
  const joinsOf = (vehicle: number) => {
    const own = at(classOf, vehicle);
    const known = joins.get(own);
    if (known) return known;
    const depots = new Set(c.depotOfVehicle.filter((_, v) => classOf[v] === own));
    const made = joinSites(c, networkOf(), at(c.scenario.vehicles, vehicle).roadsAllowed, sites, depots);
    joins.set(own, made);
    return made;
  };
  const ways = (vehicle: number, day: number, state: number): OwnWays => {
    const own = at(classOf, vehicle);
    const depot = at(c.depotOfVehicle, vehicle);
    const key = `${own} | ${depot} | ${closureKeys[day]} | ${state}`;
    const found = known.get(key);
    if (found) return found;
    const made = findWays(
      c,
      networkOf(),
      joinsOf(vehicle),
      depot,
      at(c.scenario.vehicles, vehicle),
      at(closedOn, day),
      state,
    );
    known.set(key, made);
    return made;
  };
  const reached: boolean[] = [];
  const roundTrip = ({ out, back }: OwnWays, place: number) =>
    at(out, c.scenario.depots.length + place) + at(back, c.scenario.depots.length + place);
  return {
    joinOf: (vehicle, site) => {
      const join = joinsOf(vehicle)[site];
      return join ? placeOfJoin(c, join) : null;
    },
    isServed: (vehicle, place, day, state) =>
      roundTrip(ways(vehicle, Math.min(day, c.planningDays - 1), state), place) < Infinity,
    waysOf: (vehicle, day) => ways(vehicle, day, c.plan.season.roadState[day] ?? 0),
    depotReaches: (depot, place) => {
      const index = depot * c.plan.ids.places.length + place;
      const found = reached[index];
      if (found !== undefined) return found;
      const isReached = c.scenario.vehicles.some(
        ({ payloadKg }, vehicle) =>
          payloadKg > 0 && at(c.depotOfVehicle, vehicle) === depot && roundTrip(ways(vehicle, 0, 0), place) < Infinity,
      );
      reached[index] = isReached;
      return isReached;
    },
    roundTripMinutes: (vehicle, place) =>
      [...new Set(closureKeys)].reduce(
        (least, key) => Math.min(least, roundTrip(ways(vehicle, closureKeys.indexOf(key), 0), place)),
        Number.POSITIVE_INFINITY,
      ),
  };
}
