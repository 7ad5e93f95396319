import { firstVehicle, UNCERTAINTY } from './draw-parameters.ts';
import type { PreparedPlay } from './prepare-play.ts';

/** Day on which the goods of a visit come: in that season's roads, and later where the draw says so. Never: NaN. */
export function handOverDay(
  { visits, visitDay, visitVehicle, shape, planningDays }: PreparedPlay,
  member: number,
  draw: Float64Array,
  visit: number,
  delayDays: number,
): number {
  if (visit < 0) return Number.NEGATIVE_INFINITY;
  const day = visitDay[member * visits.length + visit] as number;
  const broken = draw[firstVehicle(shape) + (visitVehicle[visit] as number)] as number;
  const isBroken = broken > 0 && day >= broken * planningDays;
  return day + delayDays + (isBroken ? UNCERTAINTY.breakdownDays.value : 0);
}
