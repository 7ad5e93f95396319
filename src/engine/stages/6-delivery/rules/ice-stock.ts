const SLACK_KG = 1e-9;

/** Ice of a trip with inoculant: the box's fill where the depot still has as much of the day's making, else none. */
export function iceForTrip(boxIceKg: number, iceLeftKg: number): number {
  return boxIceKg > 0 && boxIceKg <= iceLeftKg + SLACK_KG ? boxIceKg : 0;
}
