import type { Plan } from '../../engine/index.ts';
import type { VehicleRun } from './days-vehicles.ts';

/** A place on the chart. */
export type WarmthPoint = readonly [minute: number, celsius: number];

/** Temperatures along one trip with inoculant aboard. */
export interface TripWarmth {
  /** Row of the plan's trips. */
  readonly row: number;
  readonly shade: readonly WarmthPoint[];
  /** Air at the box, as steps: each value holds from the one before to its own minute. */
  readonly boxAir: readonly WarmthPoint[];
  readonly packs: readonly WarmthPoint[];
  /** Packs in air 2 K hotter throughout. */
  readonly hotBand: readonly WarmthPoint[];
  /** Last minute at 0 °C where packs that left with ice warm up before the last hand-over; else null. */
  readonly iceGoneMinute: number | null;
}

export interface Warmth {
  readonly trips: readonly TripWarmth[];
  /** Lowest storage limit on the labels aboard; null where none states one. */
  readonly storageLimitC: number | null;
  /** Top of the axis. */
  readonly topC: number;
}

const LEAST_TOP_C = 45;

/** The temperature chart of a vehicle's day. */
export function warmthOf(plan: Plan, run: VehicleRun): Warmth {
  const trips = run.trips.flatMap(({ row, leaveMinute, iceKg }) => {
    const curve = plan.delivery.curves[row];
    if (!curve || curve.minute.length === 0) return [];
    const line = (column: readonly number[]) =>
      curve.minute.map((minute, i): WarmthPoint => [minute, column[i] ?? Number.NaN]);
    const packs = line(curve.packC);
    return [
      {
        row,
        shade: line(curve.shadeC),
        boxAir: asSteps(leaveMinute, line(curve.boxAirC)),
        packs,
        hotBand: line(curve.hotBandC),
        iceGoneMinute: iceKg > 0 ? iceGone(packs) : null,
      },
    ];
  });
  const hottest = Math.max(0, ...trips.flatMap(({ boxAir }) => boxAir.map(([, celsius]) => celsius)));
  return { trips, storageLimitC: lowestLimit(plan, run), topC: Math.max(LEAST_TOP_C, Math.ceil(hottest / 5) * 5) };
}

function asSteps(from: number, line: readonly WarmthPoint[]): WarmthPoint[] {
  return line.flatMap(([minute, celsius], i): WarmthPoint[] => [
    [line[i - 1]?.[0] ?? Math.min(from, minute), celsius],
    [minute, celsius],
  ]);
}

/** Melting ice holds the packs at 0 °C. */
function iceGone(packs: readonly WarmthPoint[]): number | null {
  const last = packs.findLastIndex(([, celsius]) => celsius <= 0);
  return last >= 0 && last < packs.length - 1 ? (packs[last]?.[0] ?? null) : null;
}

function lowestLimit({ delivery, allocation }: Plan, { stops }: VehicleRun): number | null {
  const loads = stops.flatMap(({ row }) => delivery.stops.loads[row] ?? []);
  const limits = loads.map((load) => allocation.consignments.maxStorageC[delivery.loads.consignment[load] ?? -1]);
  const known = limits.filter((limit) => limit !== null && limit !== undefined);
  return known.length === 0 ? null : Math.min(...known);
}

/** A line's value at a minute; null before its beginning and after its end. */
export function warmthAt(line: readonly WarmthPoint[], minute: number): number | null {
  const [first] = line;
  if (first?.[0] === minute) return first[1];
  const next = line.findIndex(([at]) => at >= minute);
  const [before, after] = [line[next - 1], line[next]];
  if (!before || !after) return null;
  return before[1] + ((after[1] - before[1]) * (minute - before[0])) / Math.max(1e-9, after[0] - before[0]);
}
