import type { Allocation, Delivery, Load, Plan, Stop, Trip, VehicleDay } from '../vocabulary/index.ts';
import { parseIsoDate } from '../vocabulary/index.ts';

/** What a play needs of a plan document, as the stages had it but for the rounding of the document. */
export interface PlanAsMade {
  readonly allocation: Pick<Allocation, 'grants' | 'shares'>;
  readonly delivery: Pick<Delivery, 'vehicleDays' | 'loads' | 'cost'>;
}

/** Reads back what a plan document says is given and driven. The plan must be one that holds. */
export function readPlan({ allocation, delivery, scenario, ids }: Plan): PlanAsMade {
  const { grants, shares } = allocation;
  const { loads, trips, stops } = delivery;
  const from = parseIsoDate(scenario.planningFrom) ?? 0;
  const whole = (column: readonly number[]) => Int32Array.from(column);
  const number = (column: readonly number[]) => Float64Array.from(column);
  const depots = ids.depots.length;
  const stopsOf: Stop[][] = trips.vehicle.map(() => []);
  stops.trip.forEach((trip, i) => {
    stopsOf[trip]?.push({
      site: depots + (stops.place[i] ?? 0),
      loads: stops.loads[i] ?? [],
      arriveMinute: stops.arriveMinute[i] ?? 0,
      startMinute: stops.startMinute[i] ?? 0,
      departMinute: stops.departMinute[i] ?? 0,
      legMinutes: delivery.legs[stops.leg[i] ?? -1]?.minutes ?? 0,
      legKm: delivery.legs[stops.leg[i] ?? -1]?.kilometres ?? 0,
      loadKg: stops.loadKg[i] ?? 0,
      packC: stops.packC[i] ?? Number.NaN,
      packMaxC: stops.packMaxC[i] ?? Number.NaN,
      hotBandMaxC: stops.hotBandMaxC[i] ?? Number.NaN,
      log10Loss: stops.log10Loss[i] ?? Number.NaN,
      hoursAboveStorage: stops.hoursAboveStorage[i] ?? Number.NaN,
    });
  });
  const vehicleDays = trips.vehicle.map((vehicle, trip): VehicleDay => {
    const made: Trip = {
      leaveMinute: trips.leaveMinute[trip] ?? 0,
      latestLeaveMinute: trips.latestLeaveMinute[trip] ?? 0,
      returnMinute: trips.returnMinute[trip] ?? 0,
      iceKg: trips.iceKg[trip] ?? 0,
      loadKg: trips.loadKg[trip] ?? 0,
      coolLitres: trips.coolLitres[trip] ?? 0,
      stops: stopsOf[trip] ?? [],
      kilometres: trips.kilometres[trip] ?? 0,
      exposure: null,
      curve: { minute: [], packC: [], hotBandC: [], boxAirC: [], shadeC: [] },
      returnLegMinutes: 0,
      returnLegKm: 0,
    };
    return { vehicle, day: (parseIsoDate(trips.date[trip] ?? '') ?? from) - from, trips: [made] };
  });
  return {
    allocation: {
      grants: {
        community: whole(grants.community),
        crop: whole(grants.crop),
        lot: whole(grants.lot),
        packs: whole(grants.packs),
        kg: number(grants.kg),
        servesSeedKg: number(grants.servesSeedKg),
      },
      shares: {
        community: whole(shares.community),
        crop: whole(shares.crop),
        plannedHa: number(shares.plannedHa),
        seedNeedKg: number(shares.seedNeedKg),
        ownSeedKg: number(shares.ownSeedKg),
        seedGivenKg: number(shares.seedGivenKg),
        inoculantNeedSeedKg: number(shares.inoculantNeedSeedKg),
        inoculantGivenSeedKg: number(shares.inoculantGivenSeedKg),
        seedShare: number(shares.seedShare),
        inoculantShare: number(shares.inoculantShare),
      },
    },
    delivery: {
      vehicleDays,
      loads: loads.consignment.map(
        (consignment, load): Load => ({
          consignment,
          grants: loads.grants[load] ?? [],
          packs: loads.packs[load] ?? [],
          kg: loads.kg[load] ?? 0,
          coolLitres: loads.coolLitres[load] ?? 0,
          inoculantKg: loads.inoculantKg[load] ?? 0,
          hectares: loads.hectares[load] ?? 0,
        }),
      ),
      cost: delivery.cost,
    },
  };
}
