import { readFileSync } from 'node:fs';

/**
 * Reads published routing files once more and prices routes by the files' own rules. Shares no line with the engine or its
 * readers, so that it may disagree with them.
 */
export interface Published {
  readonly customers: number;
  readonly distance: (a: number, b: number) => number;
  readonly demand: readonly number[];
  readonly ready: readonly number[];
  readonly due: readonly number[];
  readonly service: readonly number[];
  readonly release: readonly number[];
  readonly types: readonly VehicleType[];
  readonly maxDuration: number;
  readonly reload: boolean;
  /** Units of cost per unit reported. */
  readonly scale: number;
}

interface VehicleType {
  count: number;
  readonly capacity: number;
  readonly fixed: number;
  readonly unit: number;
  readonly clients: ReadonlySet<number> | null;
}

export interface Trip {
  readonly vehicle: number;
  /** From 1 in the order of the file; 1 where there is one type. */
  readonly type: number;
  readonly customers: readonly number[];
}

type Points = readonly (readonly [number, number])[];
const euclid = (points: Points, round: (d: number) => number) => (a: number, b: number) => {
  const [p, q] = [points[a], points[b]];
  if (!p || !q) return Number.NaN;
  return a === b ? 0 : round(Math.hypot(p[0] - q[0], p[1] - q[1]));
};
const tenth = (d: number) => Math.floor(10 * d + 1e-9);
const zeros = (count: number) => new Array<number>(count).fill(0);

export function readPublished(path: string): Published {
  const text = readFileSync(path, 'utf8');
  if (text.includes('DIMENSION')) return vrplib(text);
  return text.includes('CUST NO') ? solomon(text) : mixedFleet(text);
}

function solomon(text: string): Published {
  const numbers = text.split('\n').map((line) => line.trim().split(/\s+/).map(Number));
  const fleet = numbers.find((row) => row.length === 2 && row.every(Number.isFinite)) ?? [];
  const rows = numbers.filter((row) => row.length === 7 && row.every(Number.isFinite));
  const column = (at: number, by = 1) => rows.map((row) => (row[at] ?? Number.NaN) * by);
  return {
    customers: rows.length - 1,
    distance: euclid(
      rows.map((row) => [row[1] ?? 0, row[2] ?? 0] as const),
      tenth,
    ),
    demand: column(3),
    ready: column(4, 10),
    due: column(5, 10),
    service: column(6, 10),
    release: zeros(rows.length),
    types: [{ count: fleet[0] ?? 0, capacity: fleet[1] ?? 0, fixed: 0, unit: 1, clients: null }],
    maxDuration: Number.POSITIVE_INFINITY,
    reload: false,
    scale: 10,
  };
}

function mixedFleet(text: string): Published {
  const lines = text.split('\n').map((line) => line.split('//')[0]?.trim() ?? '');
  const rows = lines.filter((line) => line !== '').map((line) => line.split(/\s+/).map(Number));
  const [customers = 0, typeCount = 0] = rows[0] ?? [];
  const types = rows.slice(1, 1 + typeCount).map(([count = 0, capacity = 0, fixed = 0, unit = 0]) => {
    return { count, capacity, fixed, unit, clients: null };
  });
  const rest = rows.slice(1 + typeCount);
  const matrix = rest[0]?.length === 1 ? rest.slice(1, customers + 2) : null;
  const demand = matrix
    ? [0, ...rest.slice(customers + 2).map((row) => row[1] ?? 0)]
    : rest.map((row, i) => (i === 0 ? 0 : (row[2] ?? 0)));
  const points: Points = rest.map((row) => [row[0] ?? 0, row[1] ?? 0] as const);
  return {
    customers,
    distance: matrix ? (a, b) => (matrix[a]?.[b] ?? Number.NaN) / 1000 : euclid(points, (d) => d),
    demand,
    ready: zeros(customers + 1),
    due: zeros(customers + 1).fill(Number.POSITIVE_INFINITY),
    service: zeros(customers + 1),
    release: zeros(customers + 1),
    types,
    maxDuration: Number.POSITIVE_INFINITY,
    reload: false,
    scale: 1,
  };
}

function vrplib(text: string): Published {
  const value = (key: string) => new RegExp(`^${key}\\s*:\\s*(\\S+)`, 'm').exec(text)?.[1];
  const section = (name: string): number[][] | null => {
    const from = text.indexOf(`\n${name}_SECTION`);
    if (from < 0) return null;
    const lines = text
      .slice(from + 1)
      .split('\n')
      .slice(1);
    const end = lines.findIndex((line) => /[A-Z]/.test(line));
    return lines.slice(0, end < 0 ? undefined : end).flatMap((line) => {
      const row = line.trim().split(/\s+/).map(Number);
      return line.trim() === '' ? [] : [row];
    });
  };
  const type = value('TYPE');
  const places = Number(value('DIMENSION'));
  const rounding = {
    CVRP: { scale: 1, round: (d: number) => Math.floor(d + 0.5) },
    HFVRP: { scale: 1, round: (d: number) => d },
    MTVRPTWR: { scale: 10, round: tenth },
    SDVRPTW: { scale: 1000, round: (d: number) => Math.round(1000 * d) },
  }[type as 'CVRP'];
  const points = (section('NODE_COORD') ?? []).map((row) => [row[1] ?? 0, row[2] ?? 0] as const);
  const column = (name: string, at: number, without: number) =>
    section(name)?.map((row) => (row[at] ?? Number.NaN) * rounding.scale) ?? zeros(places).fill(without);
  const capacities = section('CAPACITY')?.map((row) => row[1] ?? 0);
  const count = Number(value('VEHICLES') ?? places);
  const [fixed, unit, clients] = ['VEHICLES_FIXED_COST', 'VEHICLES_UNIT_DISTANCE_COST', 'VEHICLES_ALLOWED_CLIENTS'].map(
    section,
  );
  const types = new Map<string, VehicleType>();
  for (let v = 0; v < count; v++) {
    const allowed = clients?.[v]?.slice(1).map((place) => place - 1) ?? null;
    const vehicle = {
      count: 1,
      capacity: capacities?.[v] ?? Number(value('CAPACITY')),
      fixed: (fixed?.[v]?.[1] ?? 0) / 100,
      unit: (unit?.[v]?.[1] ?? 100) / 100,
      clients: allowed && new Set(allowed),
    };
    const key = JSON.stringify([vehicle.capacity, vehicle.fixed, vehicle.unit, allowed]);
    const known = types.get(key);
    if (known) known.count++;
    else types.set(key, vehicle);
  }
  return {
    customers: places - 1,
    distance: euclid(points, rounding.round),
    demand: section('DEMAND')?.map((row) => row[1] ?? 0) ?? [],
    ready: column('TIME_WINDOW', 1, 0),
    due: column('TIME_WINDOW', 2, Number.POSITIVE_INFINITY),
    service: section('SERVICE_TIME')
      ? column('SERVICE_TIME', 1, 0)
      : zeros(places).map((_, i) => (i === 0 ? 0 : Number(value('SERVICE_TIME') ?? 0) * rounding.scale)),
    release: column('RELEASE_TIME', 1, 0),
    types: [...types.values()],
    maxDuration: Number(value('VEHICLES_MAX_DURATION') ?? Number.POSITIVE_INFINITY) * rounding.scale,
    reload: text.includes('VEHICLES_RELOAD_DEPOT_SECTION'),
    scale: rounding.scale,
  };
}
