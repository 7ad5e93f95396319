import type { DrivenLoads, PlayParts } from '../pipeline.ts';
import { type Plan, parseIsoDate } from '../vocabulary/index.ts';

/** What a play needs of a plan document, as the stages had it but for the rounding of the document. */
type PlanAsMade = Pick<PlayParts, 'allocation' | 'delivery'>;

/** Reads back what a plan document says is given and driven. The plan must be one that holds. */
export function readPlan({ allocation, delivery, scenario, ids }: Plan): PlanAsMade {
  const { grants, shares } = allocation;
  const { loads, trips, stops } = delivery;
  const from = parseIsoDate(scenario.planningFrom) ?? 0;
  const whole = (column: readonly number[]) => Int32Array.from(column);
  const number = (column: readonly number[]) => Float64Array.from(column);
  type Trip = DrivenLoads['vehicleDays'][number]['trips'][number];
  const stopsOf: Trip['stops'][number][][] = trips.vehicle.map(() => []);
  stops.trip.forEach((trip, i) => {
    stopsOf[trip]?.push({
      site: ids.depots.length + (stops.place[i] ?? 0),
      loads: stops.loads[i] ?? [],
      packMaxC: stops.packMaxC[i] ?? Number.NaN,
      hotBandMaxC: stops.hotBandMaxC[i] ?? Number.NaN,
      log10Loss: stops.log10Loss[i] ?? Number.NaN,
    });
  });
  const vehicleDays = trips.vehicle.map((vehicle, trip) => ({
    vehicle,
    day: (parseIsoDate(trips.date[trip] ?? '') ?? from) - from,
    trips: [{ kilometres: trips.kilometres[trip] ?? 0, iceKg: trips.iceKg[trip] ?? 0, stops: stopsOf[trip] ?? [] }],
  }));
  return {
    allocation: {
      lots: allocation.lots.countPerG.map((countPerG) => ({ countPerG: countPerG ?? Number.NaN })),
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
        seedThereKg: number(shares.seedThereKg),
        seedGivenKg: number(shares.seedGivenKg),
        inoculantNeedSeedKg: number(shares.inoculantNeedSeedKg),
        inoculantGivenSeedKg: number(shares.inoculantGivenSeedKg),
        seedShare: number(shares.seedShare),
        inoculantShare: number(shares.inoculantShare),
      },
    },
    delivery: {
      vehicleDays,
      loads: loads.grants.map((of, load) => ({
        grants: of,
        packs: loads.packs[load] ?? [],
        inoculantKg: loads.inoculantKg[load] ?? 0,
      })),
      cost: delivery.cost,
    },
  };
}
