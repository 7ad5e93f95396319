import type { Position } from '../../vocabulary/places.ts';

/** Steps per degree: neighbours within a millionth of a degree (0.1 m) tie. */
const STEPS_PER_DEGREE = 1e6;

/**
 * Order along the Z-shaped curve that interleaves the bits of longitude and latitude (Morton 1966, IBM), so that near
 * places mostly stand near in the order. The two coordinates are compared where their highest bits differ, which spares
 * writing the interleaved number out (Chan 2002, SODA: closest-point problems simplified on the RAM).
 */
export function compareAlongCurve(a: Position, b: Position): number {
  const [aLon, aLat] = steps(a);
  const [bLon, bLat] = steps(b);
  return lowerHighestBit(aLon ^ bLon, aLat ^ bLat) ? aLat - bLat : aLon - bLon;
}

/** Below 2^29 for longitude and 2^28 for latitude, so that 32-bit operations hold. */
const steps = ([lon, lat]: Position): Position => [
  Math.round((lon + 180) * STEPS_PER_DEGREE),
  Math.round((lat + 90) * STEPS_PER_DEGREE),
];

const lowerHighestBit = (a: number, b: number): boolean => a < b && a < (a ^ b);
