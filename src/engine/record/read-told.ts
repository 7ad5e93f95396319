import { type Plan, parseIsoDate, type Scenario, type ToldPacks, type ToldPlan } from '../vocabulary/index.ts';

/**
 * Reads off a plan document what people were told, in the indexes and days of today's scenario: communities, lots and vehicles
 * that are gone fall out, days that are over are not driven again, and packs handed over since are no longer owed.
 */
export function readTold(plan: Plan, scenario: Scenario): ToldPlan {
  const { grants, consignments } = plan.allocation;
  const { loads } = plan.delivery;
  const community = indexOver(plan.ids.communities, scenario.communities);
  const depot = indexOver(plan.ids.depots, scenario.depots);
  const lot = indexOver(plan.ids.lots, scenario.lots);
  const crop = plan.ids.crops.map((name) => scenario.crops.indexOf(name));
  const at = (index: readonly number[], of: number) => index[of] ?? -1;
  const consignmentsNow = consignments.community.map((of, row) => ({
    community: at(community, of),
    depot: at(depot, consignments.depot[row] ?? -1),
    group: consignments.group[row] ?? 'dry',
  }));
  const vehicleDays = readVehicleDays(plan, scenario);
  return {
    packs: stillOwed(plan, scenario, { community, lot, crop }),
    days: vehicleDays.flatMap(({ day, trips }) =>
      trips
        .flatMap(({ stops }) => stops.flatMap((stop) => stop.loads))
        .flatMap((load) => {
          const consignment = consignmentsNow[loads.consignment[load] ?? -1];
          return consignment ? [{ ...consignment, day }] : [];
        }),
    ),
    allocation: {
      grants: {
        community: Int32Array.from(grants.community, (of) => at(community, of)),
        crop: Int32Array.from(grants.crop, (of) => at(crop, of)),
        lot: Int32Array.from(grants.lot, (of) => at(lot, of)),
        packs: Int32Array.from(grants.packs),
      },
      consignments: consignmentsNow,
    },
    delivery: {
      loads: loads.consignment.map((consignment, load) => ({
        consignment,
        grants: loads.grants[load] ?? [],
        packs: loads.packs[load] ?? [],
        kg: loads.kg[load] ?? 0,
        inoculantKg: loads.inoculantKg[load] ?? 0,
      })),
      vehicleDays,
    },
  };
}

const indexOver = (ids: readonly string[], now: readonly { readonly id: string }[]): number[] => {
  const index = new Map(now.map(({ id }, i) => [id, i]));
  return ids.map((id) => index.get(id) ?? -1);
};

const offsetOf = (date: string | undefined, { planning }: Scenario): number =>
  (parseIsoDate(date ?? '') ?? Number.NaN) - planning.from;

interface Trip {
  readonly vehicle: number;
  readonly day: number;
  readonly returnMinute: number;
  readonly iceKg: number;
  readonly stops: { readonly loads: readonly number[]; readonly startMinute: number; readonly departMinute: number }[];
}

/** Vehicle-days still to come, in the order of the document. */
function readVehicleDays({ ids, delivery }: Plan, scenario: Scenario): ToldPlan['delivery']['vehicleDays'] {
  const { trips, stops } = delivery;
  const vehicle = indexOver(ids.vehicles, scenario.vehicles);
  const read = trips.vehicle.map(
    (of, trip): Trip => ({
      vehicle: vehicle[of] ?? -1,
      day: offsetOf(trips.date[trip], scenario),
      returnMinute: trips.returnMinute[trip] ?? 0,
      iceKg: trips.iceKg[trip] ?? 0,
      stops: [],
    }),
  );
  stops.trip.forEach((trip, stop) => {
    read[trip]?.stops.push({
      loads: stops.loads[stop] ?? [],
      startMinute: stops.startMinute[stop] ?? 0,
      departMinute: stops.departMinute[stop] ?? 0,
    });
  });
  const days = new Map<string, { vehicle: number; day: number; trips: Trip[] }>();
  for (const trip of read) {
    if (trip.vehicle < 0 || !(trip.day >= 0)) continue;
    const key = `${trip.vehicle} ${trip.day}`;
    const known = days.get(key) ?? { vehicle: trip.vehicle, day: trip.day, trips: [] };
    known.trips.push(trip);
    days.set(key, known);
  }
  return [...days.values()];
}

/** Packs on served loads, less what was handed over since the plan was made, the earliest days first. */
function stillOwed(
  plan: Plan,
  scenario: Scenario,
  index: Readonly<Record<'community' | 'lot' | 'crop', readonly number[]>>,
): ToldPacks[] {
  const { grants } = plan.allocation;
  const { loads, trips, stops } = plan.delivery;
  const told = stops.loads.flatMap((aboard, stop) =>
    aboard.flatMap((load) =>
      (loads.grants[load] ?? []).map(
        (grant, i): ToldPacks => ({
          community: index.community[grants.community[grant] ?? -1] ?? -1,
          crop: index.crop[grants.crop[grant] ?? -1] ?? -1,
          lot: index.lot[grants.lot[grant] ?? -1] ?? -1,
          packs: loads.packs[load]?.[i] ?? 0,
          day: offsetOf(trips.date[stops.trip[stop] ?? -1], scenario),
        }),
      ),
    ),
  );
  const since = handedSince(plan, scenario);
  return told
    .filter(({ community, crop, lot }) => community >= 0 && crop >= 0 && lot >= 0)
    .sort((a, b) => a.day - b.day || a.community - b.community || a.crop - b.crop || a.lot - b.lot)
    .flatMap((one) => {
      const key = `${one.community} ${one.lot}`;
      const gone = Math.min(one.packs, Math.max(0, since.get(key) ?? 0));
      since.set(key, (since.get(key) ?? 0) - gone);
      return one.packs > gone ? [{ ...one, packs: one.packs - gone }] : [];
    });
}

/** Packs kept by community and lot, by today's records less those the plan knew. */
function handedSince({ ids, handovers }: Plan, scenario: Scenario): Map<string, number> {
  const communities = new Map(scenario.communities.map(({ id }, c) => [id, c]));
  const lots = new Map(scenario.lots.map(({ id }, l) => [id, l]));
  const since = new Map<string, number>();
  const add = (communityId: string | undefined, lotId: string | undefined, packs: number) => {
    const key = `${communities.get(communityId ?? '')} ${lots.get(lotId ?? '')}`;
    since.set(key, (since.get(key) ?? 0) + packs);
  };
  for (const { communityId, lotId, packs, returnedPacks } of scenario.handovers) {
    add(communityId, lotId, packs - returnedPacks);
  }
  handovers.date.forEach((_, i) => {
    const kept = (handovers.packs[i] ?? 0) - (handovers.returnedPacks[i] ?? 0);
    add(ids.communities[handovers.community[i] ?? -1], ids.lots[handovers.lot[i] ?? -1], -kept);
  });
  return since;
}
