import type { Position } from '../../vocabulary/places.ts';
import type { IntakeReport } from './intake-report.ts';
import type { KeptRow } from './row-reader.ts';

/** Fewer places than this say nothing of where the district lies. */
const FEWEST_PLACES = 3;
/** Within this many degrees of the middle, or of eight median distances from it, a place is not called far (assumed). */
const NEAR_DEGREES = 2;
const NEAR_MEDIANS = 8;

/** Where the district lies: the middle of its places and how far from it a place may lie, in degrees of longitude and latitude. */
export interface District {
  readonly middle: Position;
  readonly reach: Position;
}

/** Medians, so that a few places with swapped coordinates do not move it. Null where too few places are known. */
export function locateDistrict(places: readonly Position[]): District | null {
  if (places.length < FEWEST_PLACES) return null;
  const axis = (which: 0 | 1): readonly [number, number] => {
    const middle = median(places.map((place) => place[which]));
    const spread = median(places.map((place) => Math.abs(place[which] - middle)));
    return [middle, Math.max(NEAR_DEGREES, NEAR_MEDIANS * spread)];
  };
  const [[lon, lonReach], [lat, latReach]] = [axis(0), axis(1)];
  return { middle: [lon, lat], reach: [lonReach, latReach] };
}

/** The upper of the two middle values where their number is even. */
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

/** Sets aside rows that lie far from the district and would lie in it with longitude and latitude swapped. */
export function setSwappedAside<T>(
  report: IntakeReport,
  district: District | null,
  rows: readonly KeptRow<T>[],
  place: (value: T) => Position,
): KeptRow<T>[] {
  if (district === null) return [...rows];
  return rows.filter(({ file, row, value }) => {
    const [lon, lat] = place(value);
    if (isNear(district, [lon, lat]) || !isNear(district, [lat, lon])) return true;
    report.add('E1403', { file, row, value: `${lon};${lat}`, facts: { scope: 'row' } });
    return false;
  });
}

const isNear = ({ middle, reach }: District, [lon, lat]: Position): boolean =>
  Math.abs(lon - middle[0]) <= reach[0] && Math.abs(lat - middle[1]) <= reach[1];
