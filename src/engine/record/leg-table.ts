import { dayNumber, isoDate, type LegPath, type Plan } from '../vocabulary/index.ts';
import type { PlanParts } from './plan-parts.ts';
import { round } from './rounding.ts';

type RecordedLeg = Plan['delivery']['legs'][number];

/** Legs driven, each once: by vehicle class, closed roads, road state and the two sites. */
export class LegTable {
  private readonly parts: PlanParts;
  private readonly paths: ReadonlyMap<string, LegPath>;
  private readonly rows = new Map<string, number>();
  private readonly legs: RecordedLeg[] = [];

  constructor(parts: PlanParts) {
    this.parts = parts;
    this.paths = new Map(
      parts.legs.map((leg) => [legKey(leg.vehicleClass, leg.closureSet, leg.roadState, leg.fromSite, leg.toSite), leg]),
    );
  }

  /** Row of the leg that a vehicle drives on a day; the first to drive it stands as its example. */
  add(vehicle: number, day: number, fromSite: number, toSite: number): number {
    const { places, season, scenario } = this.parts;
    const vehicleClass = places.travel.vehicleClass[vehicle] ?? -1;
    const closureSet = places.travel.dayClosureSet[day] ?? -1;
    const key = legKey(vehicleClass, closureSet, season.roadState[day] ?? -1, fromSite, toSite);
    const known = this.rows.get(key);
    if (known !== undefined) return known;
    const path = this.paths.get(key) ?? (fromSite === toSite ? STANDING : null);
    if (path === null) throw new RangeError(`no path was traced for the leg ${key}`);
    this.rows.set(key, this.legs.length);
    return (
      this.legs.push({
        fromSite,
        toSite,
        vehicle,
        date: isoDate(dayNumber(scenario.planning.from + day)),
        minutes: round(path.minutes, 'minutes'),
        kilometres: round(path.kilometres, 'kilometres'),
        pieces: path.pieces.map(({ road, from, to }) => [road, round(from, 'vertices'), round(to, 'vertices')]),
      }) - 1
    );
  }

  recorded(): readonly RecordedLeg[] {
    return this.legs;
  }
}

/** From a site to itself: nothing is driven. */
const STANDING = { minutes: 0, kilometres: 0, pieces: [] };

function legKey(...parts: readonly number[]): string {
  return parts.join(' ');
}
