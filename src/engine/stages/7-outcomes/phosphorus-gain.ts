import { PHOSPHORUS_RELATIVE_SD } from '../../reference/phosphorus-response.ts';
import { firstPhosphorus, sharedSpread } from './draw-parameters.ts';
import { handOverDay } from './hand-over-day.ts';
import type { PreparedPlay } from './prepare-play.ts';

/** Grain that a parcel's fertiliser adds, t per ha: the mean, and the draw's district and community; nought where it comes after sowing. */
export function phosphorusT(
  prepared: PreparedPlay,
  member: number,
  draw: Float64Array,
  parcel: number,
  crop: number,
  sown: number,
  delayDays: number,
): number {
  const { parcels, fields, shape } = prepared;
  const visit = parcels.bagsVisit[parcel] as number;
  const meanT = parcels.phosphorusT[parcel] as number;
  if (visit < 0 || meanT === 0 || !(handOverDay(prepared, member, draw, visit, delayDays) < sown)) return 0;
  const first = firstPhosphorus(shape);
  const own = draw[first + shape.crops + (fields.community[parcels.field[parcel] as number] as number)] as number;
  const spread = sharedSpread(draw[first + crop] as number, own);
  return meanT * Math.max(0, 1 + PHOSPHORUS_RELATIVE_SD.value * spread);
}
