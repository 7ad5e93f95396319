import { HOT_LIMIT_CELSIUS } from '../reference/boxes.ts';
import type { SurvivalSet } from '../reference/survival-sets.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { stopsOfTrips } from './check-loads.ts';
import { at, type CheckedCase, lotAndProduct, planningDayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { type OwnAir, type OwnExposure, ownSurvival, type RideState, runRide } from './own-heat.ts';
import { TOLERANCE } from './tolerances.ts';

/** Heat of every trip with inoculant, by own air and explicit small steps; what is told must not be kinder. */
export function checkTemperatures(c: CheckedCase, air: OwnAir): readonly Problem[] {
  const { trips, stops, loads } = c.plan.delivery;
  const inoculantKg = (stop: number) =>
    at(stops.loads, stop).reduce((sum, load) => sum + at(loads.inoculantKg, load), 0);
  return stopsOfTrips(c).flatMap((rows, trip) => {
    const last = rows.findLastIndex((stop) => inoculantKg(stop) > 0);
    if (last < 0) return [];
    const carrying = rows.slice(0, last + 1);
    const sets = carrying.map((stop) => survivalAt(c, stop));
    const limits = carrying.map((stop) => limitAt(c, stop));
    const states = runRide(
      c,
      air,
      {
        vehicle: at(trips.vehicle, trip),
        day: planningDayOf(c, at(trips.date, trip)),
        leave: at(trips.leaveMinute, trip),
        iceKg: at(trips.iceKg, trip),
        inoculantKg: carrying.reduce((sum, stop) => sum + inoculantKg(stop), 0),
        stops: carrying.map((stop) => ({
          place: at(stops.place, stop),
          arrive: at(stops.arriveMinute, stop),
          start: at(stops.startMinute, stop),
          depart: at(stops.departMinute, stop),
          handedKg: inoculantKg(stop),
        })),
      },
      sets.flat(),
      limits.map((limit) => limit ?? Number.POSITIVE_INFINITY),
    );
    let firstSet = 0;
    const stopFindings = carrying.flatMap((stop, i) => {
      const own = at(sets, i);
      const loss = Math.max(0, ...at(states, i).loss.slice(firstSet, firstSet + own.length));
      firstSet += own.length;
      return inoculantKg(stop) > 0 ? judgeStop(c, stop, at(states, i), loss, limits[i] ?? null, i) : [];
    });
    return [...stopFindings, ...judgeExposure(c, trip, at(states, last).met)];
  });
}

/** Mean kinetic temperature, degree hours and hours above 30, 35 and 40 °C of a trip; warmer than found is no fault. */
function judgeExposure(c: CheckedCase, trip: number, met: OwnExposure): readonly Problem[] {
  const { trips } = c.plan.delivery;
  return (Object.keys(met) as (keyof OwnExposure)[]).flatMap((figure) => {
    const told = trips[figure][trip];
    const due = met[figure];
    const slack =
      figure === 'meanKineticC' ? TOLERANCE.packC : TOLERANCE.hoursAboveStorage + TOLERANCE.hoursAboveRelative * due;
    if (typeof told !== 'number') return [finding('E8905', `delivery.trips.${figure}`, trip)];
    return told < due - slack ? [finding('E8902', `delivery.trips.${figure}`, trip, told, due)] : [];
  });
}

/** Distinct survival sets of the inoculant handed over at a stop. */
function survivalAt(c: CheckedCase, stop: number): readonly SurvivalSet[] {
  const { stops, loads } = c.plan.delivery;
  const { grants } = c.plan.allocation;
  const sets = new Map<string, SurvivalSet>();
  for (const load of at(stops.loads, stop))
    for (const grant of at(loads.grants, load)) {
      const product = lotAndProduct(c, at(grants.lot, grant))?.product;
      if (product?.kind !== 'inoculant') continue;
      const set = ownSurvival(product, at(c.scenario.crops, at(grants.crop, grant)));
      sets.set(`${set.name} ${set.rateFactor}`, set);
    }
  return [...sets.values()];
}

/** Lowest storage limit on the labels of the inoculant handed over at a stop; null where none states one. */
function limitAt(c: CheckedCase, stop: number): number | null {
  const { stops, loads } = c.plan.delivery;
  let least: number | null = null;
  for (const load of at(stops.loads, stop))
    for (const grant of at(loads.grants, load)) {
      const product = lotAndProduct(c, at(c.plan.allocation.grants.lot, grant))?.product;
      if (product?.kind !== 'inoculant' || product.maxStorageC === null) continue;
      least = Math.min(least ?? product.maxStorageC, product.maxStorageC);
    }
  return least;
}

function judgeStop(
  c: CheckedCase,
  stop: number,
  state: RideState,
  loss: number,
  limitC: number | null,
  place: number,
): readonly Problem[] {
  const { stops } = c.plan.delivery;
  const found: Problem[] = [];
  const tell = (code: 'E8901' | 'E8902' | 'E8903' | 'E8904', column: string, told: unknown, due: unknown) =>
    found.push(finding(code, `delivery.stops.${column}`, stop, told, due));
  const [packC, packMaxC, hotBandMaxC] = [stops.packC[stop], stops.packMaxC[stop], stops.hotBandMaxC[stop]];
  const log10Loss = stops.log10Loss[stop];
  const missing = Object.entries({ packC, packMaxC, hotBandMaxC, log10Loss }).find(
    ([, value]) => typeof value !== 'number',
  );
  const hot = HOT_LIMIT_CELSIUS.value;
  if (state.hotBand >= hot + TOLERANCE.hotBandC || (hotBandMaxC ?? 0) >= hot)
    tell('E8901', 'hotBandMaxC', Math.max(state.hotBand, hotBandMaxC ?? 0), hot);
  if (missing) return [...found, finding('E8905', `delivery.stops.${missing[0]}`, stop)];
  const coolest = Math.min(state.startC, state.departC) - TOLERANCE.packC;
  if ((packC as number) < coolest) tell('E8902', 'packC', packC, state.departC);
  if ((packMaxC as number) < state.hottestAtStart - TOLERANCE.packC) tell('E8902', 'packMaxC', packMaxC, state.hottest);
  if ((hotBandMaxC as number) < Math.min(state.hotBand, hot) - TOLERANCE.hotBandC)
    tell('E8902', 'hotBandMaxC', hotBandMaxC, state.hotBand);
  if ((log10Loss as number) < loss * (1 - TOLERANCE.lossRelative) - TOLERANCE.lossAbsolute)
    tell('E8903', 'log10Loss', log10Loss, loss);
  if (limitC === null) return found;
  const hours = at(state.hoursAbove, place);
  const told = stops.hoursAboveStorage[stop] ?? 0;
  const slack = TOLERANCE.hoursAboveStorage + TOLERANCE.hoursAboveRelative * hours;
  if (told < hours - slack) tell('E8904', 'hoursAboveStorage', told, hours);
  const most = c.scenario.policy.hoursAboveStorage;
  if (most !== null && Math.max(told, hours - slack) > most + TOLERANCE.hoursAboveStep)
    tell('E8904', 'hoursAboveStorage', Math.max(told, hours), `at most ${most}`);
  return found;
}
