import type { Position } from '../../vocabulary/places.ts';
import { number } from './cell-kinds.ts';
import { rangeFault } from './read-geometry.ts';
import type { RowReader } from './row-reader.ts';

const DEGREES = number();

/** Position of a table row from its columns `lat` and `lon`, decimal degrees WGS 84. */
export function readLatLon(row: RowReader): Position {
  const lat = row.required('lat', DEGREES);
  const lon = row.required('lon', DEGREES);
  const fault = row.isRejected ? null : rangeFault(lon, lat);
  if (fault !== null) row.reject(fault, { column: 'lat', value: `${lat};${lon}` });
  return [lon, lat];
}
