import { ROAD_REACH_KM } from '../reference/speeds.ts';
import type { Vehicle } from '../vocabulary/fleet.ts';
import type { Position } from '../vocabulary/places.ts';
import type { Plan } from '../vocabulary/plan.ts';
import type { Problem } from '../vocabulary/problems.ts';
import { stopsOfTrips } from './check-loads.ts';
import { at, type CheckedCase, dayOf, planningDayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { segmentKm } from './own-earth.ts';
import type { OwnReach } from './own-reach.ts';
import { closedRoads, isMotorcycle, ownAccessSpeed, ownSpeed } from './own-roads.ts';
import { TOLERANCE } from './tolerances.ts';

type Leg = Plan['delivery']['legs'][number];

/** Walks the road pieces of every leg, as it is and as every trip uses it. */
export function checkPaths(c: CheckedCase, reach: OwnReach): readonly Problem[] {
  const closed = new Map<number, ReadonlySet<number>>();
  const closedOn = (day: number) => {
    const known = closed.get(day) ?? closedRoads(c, day);
    closed.set(day, known);
    return known;
  };
  const walked = c.plan.delivery.legs.map((leg, i) => walk(c, reach, leg, i));
  const found = walked.flatMap(({ problems }) => problems);
  stopsOfTrips(c).forEach((rows, trip) => {
    const { trips, stops } = c.plan.delivery;
    const vehicle = at(c.scenario.vehicles, at(trips.vehicle, trip));
    const depot = at(c.depotOfVehicle, at(trips.vehicle, trip));
    const sites = [depot, ...rows.map((stop) => c.scenario.depots.length + at(stops.place, stop)), depot];
    const legs = [...rows.map((stop) => at(stops.leg, stop)), at(trips.returnLeg, trip)];
    const day = dayOf(at(trips.date, trip));
    const state = c.plan.season.roadState[planningDayOf(c, at(trips.date, trip))] ?? 0;
    legs.forEach((row, i) => {
      const leg = at(c.plan.delivery.legs, row);
      const [from, to] = [at(sites, i), at(sites, i + 1)];
      if (leg.fromSite !== from || leg.toSite !== to)
        found.push(
          finding('E8808', 'delivery.legs', row, `from ${leg.fromSite} to ${leg.toSite}`, `from ${from} to ${to}`),
        );
      found.push(...judgeUse(c, leg, row, vehicle, closedOn(day), state, at(walked, row).accessKm));
    });
  });
  return found;
}

function sitePosition(c: CheckedCase, site: number): Position {
  const depots = c.scenario.depots.length;
  if (site < depots) return at(c.scenario.depots, site).position;
  return [at(c.plan.places.placeLon, site - depots), at(c.plan.places.placeLat, site - depots)];
}

/** Place on a road line, counted in vertices; null outside the line. */
function placeOnLine(positions: readonly Position[], along: number): Position | null {
  if (along < 0 || along > positions.length - 1) return null;
  const vertex = Math.min(positions.length - 2, Math.floor(along));
  const [a, b] = [at(positions, vertex), at(positions, vertex + 1)];
  const t = along - vertex;
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** Kilometres along a line from one place to another. */
function kmAlong(positions: readonly Position[], from: number, to: number): number {
  const [low, high] = from < to ? [from, to] : [to, from];
  if (high > positions.length - 1) return Number.NaN;
  let km = 0;
  let here = placeOnLine(positions, low);
  for (let next = Math.floor(low) + 1; here && next < high; next++) {
    km += segmentKm(here, at(positions, next));
    here = at(positions, next);
  }
  const end = placeOnLine(positions, high);
  return here && end ? km + segmentKm(here, end) : Number.NaN;
}

interface Walked {
  readonly problems: readonly Problem[];
  readonly accessKm: number;
}

/** Joins, one-ways and length of a leg's pieces, whoever drives it. */
function walk(c: CheckedCase, reach: OwnReach, leg: Leg, row: number): Walked {
  const problems: Problem[] = [];
  const ends = leg.pieces.map(([road, from, to]) => {
    const positions = c.scenario.roads[road]?.positions ?? [];
    return { start: placeOnLine(positions, from), end: placeOnLine(positions, to), km: kmAlong(positions, from, to) };
  });
  const missing = ends.findIndex(({ start, end }) => !start || !end);
  if (missing >= 0) return { problems: [finding('E8801', 'delivery.legs.pieces', row, 'no such piece')], accessKm: 0 };
  const [from, to] = [sitePosition(c, leg.fromSite), sitePosition(c, leg.toSite)];
  if (ends.length === 0) return walkOffRoad(reach, leg, row, from, to);
  let km = 0;
  ends.forEach(({ start, end, km: pieceKm }, i) => {
    km += pieceKm;
    const before = ends[i - 1]?.end;
    const gap = before && start ? segmentKm(before, start) : 0;
    if (gap > TOLERANCE.pieceGapKm) problems.push(finding('E8801', 'delivery.legs.pieces', row, gap));
    const [road, a, b] = at(leg.pieces, i);
    const { oneway } = at(c.scenario.roads, road);
    const against = (oneway === 'forward' && b < a) || (oneway === 'backward' && b > a);
    if (against && end) problems.push(finding('E8802', 'delivery.legs.pieces', row, road));
  });
  const access = [segmentKm(from, ends[0]?.start ?? from), segmentKm(to, ends.at(-1)?.end ?? to)];
  for (const accessKm of access)
    if (accessKm > ROAD_REACH_KM.value * (1 + TOLERANCE.kilometresRelative) + TOLERANCE.kilometres)
      problems.push(finding('E8807', 'delivery.legs.pieces', row, accessKm, ROAD_REACH_KM.value));
  const accessKm = access.reduce((sum, one) => sum + one, 0);
  problems.push(...tooShort(leg, row, km + accessKm));
  return { problems, accessKm };
}

/** A leg without road pieces: the same site, or two that join the roads at one and the same place. */
function walkOffRoad(reach: OwnReach, leg: Leg, row: number, from: Position, to: Position): Walked {
  const joins = [reach.joinOf(leg.vehicle, leg.fromSite), reach.joinOf(leg.vehicle, leg.toSite)];
  const [here, there] = [joins[0] ?? from, joins[1] ?? to];
  const gap = leg.fromSite === leg.toSite ? 0 : segmentKm(here, there);
  if (gap > TOLERANCE.pieceGapKm)
    return { problems: [finding('E8801', 'delivery.legs.pieces', row, gap)], accessKm: 0 };
  const accessKm = leg.fromSite === leg.toSite ? 0 : segmentKm(from, here) + segmentKm(there, to);
  return { problems: tooShort(leg, row, accessKm), accessKm };
}

function tooShort(leg: Leg, row: number, due: number): readonly Problem[] {
  return leg.kilometres < due - TOLERANCE.kilometresRelative * due - TOLERANCE.kilometres
    ? [finding('E8805', 'delivery.legs.kilometres', row, leg.kilometres, due)]
    : [];
}

/** May this vehicle drive the leg on this day, and is it given time enough? */
function judgeUse(
  c: CheckedCase,
  leg: Leg,
  row: number,
  vehicle: Vehicle,
  closed: ReadonlySet<number>,
  state: number,
  accessKm: number,
): readonly Problem[] {
  const found: Problem[] = [];
  let minutes = (accessKm / ownAccessSpeed(state)) * 60;
  for (const [road, from, to] of leg.pieces) {
    const line = c.scenario.roads[road];
    if (!line) continue;
    const speed = ownSpeed(c.scenario, line, state, isMotorcycle(vehicle));
    if (!vehicle.roadsAllowed.includes(line.roadClass))
      found.push(finding('E8804', 'delivery.legs.pieces', row, line.roadClass, vehicle.roadsAllowed.join(' ')));
    if (closed.has(road) || speed === 0) found.push(finding('E8803', 'delivery.legs.pieces', row, road));
    else minutes += (kmAlong(line.positions, from, to) / speed) * 60;
  }
  if (leg.minutes < minutes - TOLERANCE.legMinutesRelative * minutes - TOLERANCE.legMinutes)
    found.push(finding('E8806', 'delivery.legs.minutes', row, leg.minutes, minutes));
  return found;
}
