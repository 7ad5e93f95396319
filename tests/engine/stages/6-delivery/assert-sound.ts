import { expect } from 'vitest';
import type { Delivery, Load, Vehicle } from '../../../../src/engine/index.ts';
import { exactSum } from '../../../../src/engine/numerics/exact-sum.ts';
import type { Network } from './small-network.ts';

/** Every hard rule, recomputed from the finished delivery with plain arithmetic. */
export function assertSound(network: Network, delivery: Delivery): void {
  assertBalance(network, delivery);
  const ice = new Map<string, number>();
  for (const { vehicle, day, trips } of delivery.vehicleDays) {
    const v = network.scenario.vehicles[vehicle] as Vehicle;
    const depot = network.scenario.depots.findIndex(({ id }) => id === v.depotId);
    expect(network.season.workday[day]).toBe(1);
    let ready = Math.max(v.shiftStart, network.scenario.depots[depot]?.opens ?? 0);
    for (const trip of trips) {
      assertTrip(network, delivery, v, depot, day, trip, ready);
      ready = trip.returnMinute;
      const key = `${depot} ${day}`;
      ice.set(key, (ice.get(key) ?? 0) + trip.iceKg);
    }
  }
  for (const [key, kg] of ice) {
    expect(kg).toBeLessThanOrEqual((network.scenario.depots[Number(key.split(' ')[0])]?.iceKgPerDay ?? 0) + 1e-6);
  }
  assertSeedFirst(network, delivery);
}

/** Packs, kilograms, litres and hectares of the loads are those of the consignments; each load is served once or unserved. */
function assertBalance({ allocation }: Network, delivery: Delivery): void {
  const packs = new Int32Array(allocation.grants.packs.length);
  for (const load of delivery.loads) {
    load.grants.forEach((row, i) => {
      packs[row] = (packs[row] as number) + (load.packs[i] as number);
    });
  }
  expect([...packs]).toEqual([...allocation.grants.packs]);
  allocation.consignments.forEach((consignment, index) => {
    const own = delivery.loads.filter((load) => load.consignment === index);
    const near = (of: (load: Load) => number, total: number) =>
      expect(Math.abs(exactSum(own.map(of)) - total)).toBeLessThanOrEqual(1e-9 * Math.max(1, total));
    near((load) => load.kg, consignment.kg);
    near((load) => load.coolLitres, consignment.coolLitres);
    near((load) => load.inoculantKg, consignment.inoculantKg);
    near((load) => load.hectares, consignment.hectares);
  });
  const told = [
    ...delivery.vehicleDays.flatMap((day) => day.trips.flatMap((trip) => trip.stops.flatMap((stop) => stop.loads))),
    ...delivery.unserved.map(({ load }) => load),
  ].sort((a, b) => a - b);
  expect(told).toEqual(delivery.loads.map((_, i) => i));
}

function assertTrip(
  { scenario, places, season, allocation }: Network,
  delivery: Delivery,
  vehicle: Vehicle,
  depot: number,
  day: number,
  trip: Delivery['vehicleDays'][number]['trips'][number],
  ready: number,
): void {
  const loads = trip.stops.flatMap((stop) => stop.loads).map((i) => delivery.loads[i] as Load);
  const kg = loads.reduce((sum, load) => sum + load.kg, 0);
  expect(trip.loadKg).toBeCloseTo(kg, 6);
  expect(kg).toBeLessThanOrEqual(vehicle.payloadKg + 1e-6);
  const litres = loads.reduce((sum, load) => sum + load.coolLitres, 0);
  if (vehicle.coolLitres > 0) expect(litres).toBeLessThanOrEqual(vehicle.coolLitres + 1e-6);
  expect(trip.iceKg).toBeLessThanOrEqual(vehicle.coolLitres > 0 ? vehicle.iceKg : 0);
  expect(trip.leaveMinute).toBeGreaterThanOrEqual(ready + kg * 0.03 - 1e-6);
  expect(trip.leaveMinute).toBeGreaterThanOrEqual(season.sunriseMinute[day] as number);
  const { roadHours } = scenario.planning;
  expect(trip.leaveMinute).toBeGreaterThanOrEqual(roadHours?.opens ?? 0);
  const back = Math.min(
    vehicle.shiftStart + vehicle.maxHours * 60,
    scenario.depots[depot]?.closes ?? 1440,
    season.sunsetMinute[day] as number,
    roadHours?.closes ?? 1440,
  );
  expect(trip.returnMinute).toBeLessThanOrEqual(back + 1e-6);
  let minute = trip.leaveMinute;
  let at = depot;
  for (const stop of trip.stops) {
    const table = places.travel.tables[0]?.[0]?.[season.roadState[day] as number];
    const row = [...(table?.destinations.subarray(table.offsets[at], table.offsets[at + 1]) ?? [])];
    const leg = (table?.offsets[at] as number) + row.indexOf(stop.site);
    expect(row).toContain(stop.site);
    expect(stop.legMinutes).toBe(table?.minutes[leg]);
    expect(stop.arriveMinute).toBeCloseTo(minute + stop.legMinutes, 6);
    const place = places.handoverPlaces[stop.site - scenario.depots.length];
    expect(stop.startMinute).toBeGreaterThanOrEqual(Math.max(stop.arriveMinute, place?.opensMinute ?? 0) - 1e-9);
    expect(stop.departMinute).toBeLessThanOrEqual((place?.closesMinute ?? 1440) + 1e-6);
    const dryKg = stop.loads.reduce((sum, i) => {
      const load = delivery.loads[i] as Load;
      return sum + load.kg - load.inoculantKg;
    }, 0);
    const base = vehicle.kind.includes('moto') ? 10 : 20;
    expect(stop.departMinute - stop.startMinute).toBeGreaterThanOrEqual(base + dryKg * 0.01 - 1e-6);
    for (const load of stop.loads) {
      const c = allocation.consignments[(delivery.loads[load] as Load).consignment];
      expect(c?.place).toBe(stop.site - scenario.depots.length);
      expect(c?.depot).toBe(depot);
      expect(day).toBeGreaterThanOrEqual(c?.earliest ?? 0);
      expect(day).toBeLessThanOrEqual(c?.latest ?? -1);
    }
    if (!Number.isNaN(stop.hotBandMaxC)) {
      expect(stop.hotBandMaxC).toBeLessThan(40);
      expect(stop.packMaxC).toBeLessThanOrEqual(stop.hotBandMaxC);
      expect(stop.packC).toBeLessThanOrEqual(stop.packMaxC);
    }
    minute = stop.departMinute;
    at = stop.site;
  }
  expect(trip.returnMinute).toBeCloseTo(minute + trip.returnLegMinutes, 6);
}

function assertSeedFirst({ allocation, scenario }: Network, delivery: Delivery): void {
  const dayOf = new Map<number, number>();
  for (const { day, trips } of delivery.vehicleDays) {
    for (const load of trips.flatMap((trip) => trip.stops.flatMap((stop) => stop.loads))) dayOf.set(load, day);
  }
  delivery.loads.forEach((load, index) => {
    const own = allocation.consignments[load.consignment];
    const day = dayOf.get(index);
    if (own?.group !== 'inoculant' || day === undefined) return;
    const seed = delivery.loads.flatMap((other, i) => {
      const c = allocation.consignments[other.consignment];
      return c?.group === 'dry' && c.community === own.community ? [i] : [];
    });
    const days = seed.flatMap((i) => dayOf.get(i) ?? []);
    const ownSeed = scenario.communities[own.community]?.crops.some((c) => c.ownSeedKg > 0) ?? false;
    expect(seed.length === 0 || days.length > 0 || ownSeed).toBe(true);
    for (const seedDay of days) expect(seedDay).toBeLessThanOrEqual(day);
  });
}
