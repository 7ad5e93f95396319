import { boxUaWPerK } from '../../science/box.ts';
import { type EffectiveAir, tabulateEffectiveAir } from '../../science/effective-air.ts';
import { packStartCelsius, serviceMinutesOf, tripHours } from '../../science/trip-hours.ts';
import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Vehicle } from '../../vocabulary/fleet.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Consignment } from '../../vocabulary/stage-results/allocation.ts';
import type { Places } from '../../vocabulary/stage-results/places.ts';
import type { SeasonOutlook } from '../../vocabulary/stage-results/season.ts';
import { type DrivingRest, restOf } from './rules/driving-rest.ts';
import { type Legs, legsBetween } from './rules/road-access.ts';
import { isVehicleThere } from './rules/vehicle-there.ts';

/** The places that one depot serves. Local number 0 is the depot itself. */
export interface DepotRound {
  readonly depot: number;
  /** Site of each local number. */
  readonly sites: readonly number[];
  /** Local number of each hand-over place; absent where the depot sends nothing there. */
  readonly localOfPlace: ReadonlyMap<number, number>;
  readonly opensMinute: Float64Array;
  readonly closesMinute: Float64Array;
  /** Weather place of each local number. */
  readonly station: Int32Array;
  readonly iceKgPerDay: number;
}

/** One vehicle on one day on which it may run: all that bounds and prices its trips. */
export interface Slot {
  readonly vehicle: number;
  readonly day: number;
  readonly depot: number;
  /** Vehicles of one group are the same but for their name. */
  readonly group: number;
  readonly round: DepotRound;
  readonly legs: Legs;
  readonly air: EffectiveAir;
  readonly shadeAirC: Float32Array;
  /** Planning days, to find a quarter hour in `air` and `shadeAirC`. */
  readonly planningDays: number;
  readonly payloadKg: number;
  /** 0: no box. */
  readonly coolLitres: number;
  readonly uaWPerK: number;
  readonly boxIceKg: number;
  /** Temperature of its packs of water; above 0 °C they melt nothing. */
  readonly coolantC: number;
  /** Temperature of packs as they leave; NaN: as warm as the shade at the depot. */
  readonly packStartC: number;
  /** When the first trip's loading may begin: depot open, crew on shift. */
  readonly loadsFrom: number;
  readonly earliestLeave: number;
  readonly latestBack: number;
  readonly loadingMinutesPerKg: number;
  readonly serviceMinutes: number;
  readonly rest: DrivingRest;
  /** Vehicle and crew for the day, and each kilometre, in the scenario's currency. */
  readonly dayCost: number;
  readonly kmCost: number;
  readonly icePerKg: number;
}

/** Every vehicle-day that may be used, sorted by depot, day, group and vehicle. Vehicles of an unknown depot have none. */
export function listSlots(
  scenario: Scenario,
  decisions: Decisions,
  places: Places,
  season: SeasonOutlook,
  consignments: readonly Consignment[],
): { readonly slots: readonly Slot[]; readonly rounds: readonly DepotRound[] } {
  const rounds = scenario.depots.map((_, depot) => roundOfDepot(scenario, places, season, consignments, depot));
  const depotIndex = new Map(scenario.depots.map((depot, i) => [depot.id, i]));
  const groups = groupVehicles(scenario.vehicles);
  const legs = cachedLegs(places, rounds);
  const air = cachedAir(season);
  const slots: Slot[] = [];
  scenario.vehicles.forEach((vehicle, index) => {
    const depot = depotIndex.get(vehicle.depotId);
    if (depot === undefined) return;
    for (let day = 0; day < season.planningDays; day++) {
      if (season.workday[day] !== 1 || !isVehicleThere(vehicle, season.firstDay + day, decisions)) continue;
      slots.push({
        ...boundsOfSlot(scenario, season, vehicle, depot, day),
        vehicle: index,
        group: groups[index] as number,
        round: rounds[depot] as DepotRound,
        legs: legs(depot, places.travel.vehicleClass[index] as number, day, season.roadState[day] as number),
        air: air(vehicle),
        shadeAirC: season.airC,
      });
    }
  });
  slots.sort((a, b) => a.depot - b.depot || a.day - b.day || a.group - b.group || a.vehicle - b.vehicle);
  return { slots, rounds };
}

function boundsOfSlot(
  scenario: Scenario,
  season: SeasonOutlook,
  vehicle: Vehicle,
  depotIndex: number,
  day: number,
): Omit<Slot, 'vehicle' | 'group' | 'round' | 'legs' | 'air' | 'shadeAirC'> {
  const depot = scenario.depots[depotIndex] as Scenario['depots'][number];
  const sun = (season.siteStation[depotIndex] as number) * season.planningDays + day;
  const rise = season.sunriseMinute[sun] as number;
  const hours = tripHours(vehicle, depot, rise, season.sunsetMinute[sun] as number, scenario.planning.roadHours);
  return {
    day,
    depot: depotIndex,
    planningDays: season.planningDays,
    payloadKg: vehicle.payloadKg,
    coolLitres: vehicle.coolLitres,
    uaWPerK: boxUaWPerK(vehicle.coolLitres, vehicle.coolUaWPerK),
    boxIceKg: vehicle.coolLitres > 0 ? vehicle.iceKg : 0,
    coolantC: vehicle.coolantC,
    packStartC: packStartCelsius(depot),
    loadsFrom: Math.max(depot.opens, vehicle.shiftStart),
    earliestLeave: hours.earliestLeave,
    latestBack: hours.latestBack,
    loadingMinutesPerKg: depot.loadingMinutesPerT / 1000,
    serviceMinutes: serviceMinutesOf(vehicle),
    rest: restOf(scenario.policy),
    dayCost: vehicle.costPerDay + vehicle.crew * vehicle.perDiem,
    kmCost: vehicle.costPerKm,
    icePerKg: scenario.prices.icePerKg ?? 0,
  };
}

function roundOfDepot(
  scenario: Scenario,
  places: Places,
  season: SeasonOutlook,
  consignments: readonly Consignment[],
  depot: number,
): DepotRound {
  const served = [...new Set(consignments.filter((c) => c.depot === depot).map((c) => c.place))].sort((a, b) => a - b);
  const depots = scenario.depots.length;
  const hours = served.map((place) => places.handoverPlaces[place]);
  return {
    depot,
    sites: [depot, ...served.map((place) => depots + place)],
    localOfPlace: new Map(served.map((place, i) => [place, i + 1])),
    opensMinute: Float64Array.from([0, ...hours.map((place) => place?.opensMinute ?? 0)]),
    closesMinute: Float64Array.from([1440, ...hours.map((place) => place?.closesMinute ?? 1440)]),
    station: Int32Array.from([depot, ...served.map((p) => depots + p)], (site) => season.siteStation[site] as number),
    iceKgPerDay: scenario.depots[depot]?.iceKgPerDay ?? 0,
  };
}

/** Group of each vehicle: equal in everything but the name, hence interchangeable while unused. */
function groupVehicles(vehicles: readonly Vehicle[]): number[] {
  const groups = new Map<string, number>();
  return vehicles.map(({ id: _, ...rest }) => {
    const content = JSON.stringify(rest);
    const group = groups.get(content) ?? groups.size;
    groups.set(content, group);
    return group;
  });
}

type LegsOf = (depot: number, vehicleClass: number, day: number, roadState: number) => Legs;

function cachedLegs(places: Places, rounds: readonly DepotRound[]): LegsOf {
  const known = new Map<string, Legs>();
  return (depot, vehicleClass, day, roadState) => {
    const closureSet = places.travel.dayClosureSet[day] as number;
    const key = `${depot} ${vehicleClass} ${closureSet} ${roadState}`;
    const found = known.get(key);
    if (found) return found;
    const table = places.travel.tables[vehicleClass]?.[closureSet]?.[roadState];
    if (!table)
      throw new RangeError(`no travel table for class ${vehicleClass}, closures ${closureSet}, state ${roadState}`);
    const legs = legsBetween(table, rounds[depot]?.sites ?? []);
    known.set(key, legs);
    return legs;
  };
}

function cachedAir(season: SeasonOutlook): (vehicle: Vehicle) => EffectiveAir {
  const known = new Map<string, EffectiveAir>();
  return ({ carriage, parksInShade }) => {
    const key = `${carriage} ${parksInShade}`;
    const air = known.get(key) ?? tabulateEffectiveAir(season, carriage, parksInShade);
    known.set(key, air);
    return air;
  };
}
