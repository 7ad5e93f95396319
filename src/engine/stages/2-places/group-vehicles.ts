import { ROAD_CLASSES } from '../../vocabulary/places.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { VehicleClass } from '../../vocabulary/stage-results/places.ts';

/** A vehicle is a motorcycle where its kind says so in any language that begins the word with moto. */
const MOTORCYCLE_WORD = 'moto';

/** Vehicles that may use the same roads at the same speeds, in the order of their first vehicle; and the class of each. */
export function groupVehicles({ vehicles }: Scenario): {
  readonly classes: readonly VehicleClass[];
  readonly vehicleClass: Int32Array;
} {
  const found = new Map<string, number>();
  const vehicleClass = Int32Array.from(vehicles, (vehicle) => {
    const key = classKey(roadsOf(vehicle.roadsAllowed), isMotorcycle(vehicle.kind));
    const index = found.get(key) ?? found.size;
    found.set(key, index);
    return index;
  });
  const classes = [...found.values()].map((index) => {
    const members = vehicles.flatMap((vehicle, v) => (vehicleClass[v] === index ? [{ vehicle, v }] : []));
    return {
      roadsAllowed: roadsOf(members[0]?.vehicle.roadsAllowed ?? []),
      motorcycle: isMotorcycle(members[0]?.vehicle.kind ?? ''),
      vehicles: members.map(({ v }) => v),
    };
  });
  return { classes, vehicleClass };
}

function roadsOf(allowed: VehicleClass['roadsAllowed']): VehicleClass['roadsAllowed'] {
  return ROAD_CLASSES.filter((roadClass) => allowed.includes(roadClass));
}

function isMotorcycle(kind: string): boolean {
  return kind.toLowerCase().includes(MOTORCYCLE_WORD);
}

function classKey(roadsAllowed: VehicleClass['roadsAllowed'], motorcycle: boolean): string {
  return `${roadsAllowed.join(' ')} ${motorcycle}`;
}
