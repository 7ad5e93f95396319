import { UNLOADING_MINUTES_PER_T } from '../../reference/service-times.ts';
import { serviceMinutesOf } from '../../science/trip-hours.ts';
import type { Vehicle } from '../../vocabulary/fleet.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Consignment } from '../../vocabulary/stage-results/allocation.ts';
import type { KnownAllocation, KnownDelivery } from '../../vocabulary/told-plan.ts';
import { carriesTraining } from './rules/training-once.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Where a load of an earlier round was served. */
export interface HeldAt {
  readonly vehicle: number;
  readonly day: number;
  readonly trip: number;
  readonly position: number;
  /** Whether its community was trained with it. */
  readonly trains: boolean;
}

/** A load of the earlier round that was served, by what its packs are and not by their rows. */
export interface ServedLoad {
  readonly at: HeldAt;
  readonly community: number;
  readonly kg: number;
  /** Minutes by which its vehicle was back before it had to be. */
  readonly spareMinutes: number;
  readonly packs: readonly { readonly key: string; readonly packs: number }[];
}

/** Names a consignment across rounds. */
export const consignmentKey = (c: Pick<Consignment, 'community' | 'depot' | 'group'>) =>
  `${c.community} ${c.depot} ${c.group}`;

/** Names a row of grants across rounds. */
export function grantKey({ grants }: KnownAllocation, row: number): string {
  return `${grants.community[row]} ${grants.crop[row]} ${grants.lot[row]}`;
}

export interface Earlier {
  readonly allocation: KnownAllocation;
  readonly delivery: KnownDelivery;
}

type Load = KnownDelivery['loads'][number];
type Stop = KnownDelivery['vehicleDays'][number]['trips'][number]['stops'][number];

/** Served loads of the earlier round by consignment, in the order of vehicle-days and stops. Fertiliser is not held to where it was: it
 * finds room anew, after all else. */
export function servedEarlier(scenario: Scenario, slots: readonly Slot[], earlier: Earlier): Map<string, ServedLoad[]> {
  const served = new Map<string, ServedLoad[]>();
  const mayTrain = carriesTraining(earlier.allocation.consignments);
  const latestBack = new Map(slots.map((slot) => [`${slot.vehicle} ${slot.day}`, slot.latestBack]));
  for (const { vehicle, day, trips } of earlier.delivery.vehicleDays) {
    const back = trips[trips.length - 1]?.returnMinute ?? 0;
    const spareMinutes = (latestBack.get(`${vehicle} ${day}`) ?? 0) - back;
    trips.forEach(({ stops }, trip) => {
      const trained = new Set(stops.flatMap((stop) => loadsThatTrain(scenario, earlier, mayTrain, vehicle, stop)));
      stops
        .flatMap((stop) => stop.loads)
        .forEach((index, position) => {
          const at = { vehicle, day, trip, position, trains: trained.has(index) };
          const load = earlier.delivery.loads[index] as Load;
          const consignment = earlier.allocation.consignments[
            load.consignment
          ] as KnownAllocation['consignments'][number];
          if (consignment.group === 'fertiliser') return;
          const key = consignmentKey(consignment);
          const whole = { at, community: consignment.community, kg: load.kg, spareMinutes };
          served.set(key, [...(served.get(key) ?? []), { ...whole, packs: packsOf(earlier.allocation, load) }]);
        });
    });
  }
  return served;
}

function packsOf(allocation: KnownAllocation, load: Load): ServedLoad['packs'] {
  return load.grants.map((row, i) => ({ key: grantKey(allocation, row), packs: load.packs[i] as number }));
}

/** Loads that the minutes spent at a stop beyond hand-over and unloading were training for. */
function loadsThatTrain(
  scenario: Scenario,
  { allocation, delivery }: Earlier,
  mayTrain: readonly boolean[],
  vehicle: number,
  stop: Stop,
): number[] {
  const here = stop.loads.map((index) => ({ index, load: delivery.loads[index] as Load }));
  const dryKg = here.reduce((sum, { load }) => sum + load.kg - load.inoculantKg, 0);
  const service = serviceMinutesOf(scenario.vehicles[vehicle] as Vehicle);
  const minutes = stop.departMinute - stop.startMinute - service - (dryKg * UNLOADING_MINUTES_PER_T.value) / 1000;
  const trainings = Math.round(minutes / scenario.policy.trainingMinutes) || 0;
  const communities = new Set<number>();
  const first = here.filter(({ load }) => {
    const community = allocation.consignments[load.consignment]?.community ?? -1;
    if (!mayTrain[load.consignment] || communities.has(community)) return false;
    communities.add(community);
    return true;
  });
  return first.slice(0, trainings).map(({ index }) => index);
}
