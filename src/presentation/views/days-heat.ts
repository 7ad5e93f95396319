import type { Plan } from '../../engine/index.ts';
import type { DayTrip, VehicleDay } from './days-fleet.ts';

/** A place on the chart: minute of the day, °C. */
export type HeatPoint = readonly [minute: number, celsius: number];

/** Temperatures of one trip with inoculant aboard. */
export interface TripHeat {
  readonly trip: number;
  readonly shade: readonly HeatPoint[];
  /** Air at the box, with sun: a step for each stretch of time. */
  readonly boxAir: readonly HeatPoint[];
  readonly packs: readonly HeatPoint[];
  /** Packs where the air is 2 K hotter throughout. */
  readonly hotBand: readonly HeatPoint[];
  /** When the last ice melts, where it does before the last hand-over. */
  readonly iceGoneMinute: number | null;
  /** Stretches of the packs' line above the storage limit. */
  readonly above: readonly (readonly HeatPoint[])[];
}

/** The temperature chart of one vehicle's day. */
export interface DayHeat {
  readonly trips: readonly TripHeat[];
  /** Lowest storage limit on the labels aboard; null where none states one, or nothing is aboard. */
  readonly storageLimitC: number | null;
  readonly topC: number;
}

const LEAST_TOP_C = 45;

export function dayHeat(plan: Plan, vehicle: VehicleDay): DayHeat {
  const storageLimitC = lowestLimit(plan, vehicle);
  const trips = vehicle.trips.flatMap((trip) => tripHeat(plan, trip, storageLimitC) ?? []);
  const hottest = Math.max(LEAST_TOP_C, ...trips.flatMap(({ boxAir }) => boxAir.map(([, celsius]) => celsius)));
  return { trips, storageLimitC, topC: Math.ceil(hottest / 5) * 5 };
}

function tripHeat({ delivery }: Plan, trip: DayTrip, limitC: number | null): TripHeat | null {
  const curve = delivery.curves[trip.row];
  if (!curve || curve.minute.length === 0) return null;
  const points = (column: readonly number[]): HeatPoint[] => curve.minute.map((minute, i) => [minute, column[i] ?? 0]);
  const packs = points(curve.packC);
  return {
    trip: trip.number,
    shade: points(curve.shadeC),
    boxAir: steps(trip.leaveMinute, curve.minute, curve.boxAirC),
    packs,
    hotBand: points(curve.hotBandC),
    iceGoneMinute: trip.iceKg > 0 ? iceGone(packs) : null,
    above: limitC === null ? [] : stretchesAbove(packs, limitC),
  };
}

/** The air of a step holds from the end of the step before to its own end. */
function steps(from: number, minutes: readonly number[], column: readonly number[]): HeatPoint[] {
  return minutes.flatMap((minute, i): HeatPoint[] => {
    const begins = minutes[i - 1] ?? Math.min(from, minute);
    const celsius = column[i] ?? 0;
    return [
      [begins, celsius],
      [minute, celsius],
    ];
  });
}

/** Ice holds the packs at 0 °C: the last minute at which they stand there, where they warm up afterwards. */
function iceGone(packs: readonly HeatPoint[]): number | null {
  const last = packs.findLastIndex(([, celsius]) => celsius <= 0);
  return last >= 0 && last < packs.length - 1 ? (packs[last]?.[0] ?? null) : null;
}

/** Parts of a line above a limit, each closed by its crossings. */
export function stretchesAbove(line: readonly HeatPoint[], limit: number): HeatPoint[][] {
  const stretches: HeatPoint[][] = [];
  let open: HeatPoint[] | null = null;
  line.forEach((point, i) => {
    const before = line[i - 1];
    const isAbove = point[1] > limit;
    if (before && before[1] > limit !== isAbove) {
      const crossing: HeatPoint = [
        before[0] + ((limit - before[1]) / (point[1] - before[1])) * (point[0] - before[0]),
        limit,
      ];
      open?.push(crossing);
      if (isAbove) open = [crossing];
      if (!isAbove && open) {
        stretches.push(open);
        open = null;
      }
    }
    if (isAbove) open = [...(open ?? []), point];
  });
  if (open) stretches.push(open);
  return stretches;
}

function lowestLimit({ delivery, allocation }: Plan, { trips }: VehicleDay): number | null {
  const limits = trips.flatMap(({ stops }) =>
    stops.flatMap(({ row }) =>
      (delivery.stops.loads[row] ?? []).map(
        (load) => allocation.consignments.maxStorageC[delivery.loads.consignment[load] ?? -1] ?? null,
      ),
    ),
  );
  const known = limits.filter((limit) => limit !== null);
  return known.length === 0 ? null : Math.min(...known);
}

/** A line's value at a minute; null outside it. */
export function valueAt(line: readonly HeatPoint[], minute: number): number | null {
  const after = line.findIndex(([at]) => at >= minute);
  const [next, before] = [line[after], line[after - 1]];
  if (!next) return null;
  if (!before) return next[0] === minute ? next[1] : null;
  const part = next[0] === before[0] ? 1 : (minute - before[0]) / (next[0] - before[0]);
  return before[1] + part * (next[1] - before[1]);
}
