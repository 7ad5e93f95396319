import type { InstanceVehicles, RoutingInstance } from '../../engine/index.ts';
import { amountAt, InstanceFault, numberAt } from './instance-fault.ts';
import { lengthsBetween, lengthsOnEarth, NEAREST, type Rounding, TENTHS, THOUSANDTHS, UNROUNDED } from './rounding.ts';
import { readEdgeWeights } from './vrplib-weights.ts';

/** Words of a file under the header or section they stand in, each row with its line. */
interface Sections {
  readonly header: ReadonlyMap<string, string>;
  readonly rows: ReadonlyMap<string, readonly Row[]>;
}

export interface Row {
  readonly line: number;
  readonly words: readonly string[];
}

/** Each set's own rounding, by the TYPE it states. */
const ROUNDING: Readonly<Record<string, Rounding>> = {
  CVRP: NEAREST,
  DCVRP: NEAREST,
  TSP: NEAREST,
  VRPTW: TENTHS,
  HFVRP: UNROUNDED,
  MTVRPTWR: TENTHS,
  SDVRPTW: THOUSANDTHS,
};

/** All lengths between more places than that would not fit into memory. */
const MOST_PLACES = 10_000;

/** Fixed costs and costs per length of the mixed fleets are stated in hundredths. */
const HUNDREDTHS = 100;

/** VRPLIB text: `KEY : value` lines and sections of one row a place or a vehicle. The depot is the first place. */
export function readVrplibText(lines: readonly string[]): RoutingInstance {
  const sections = readSections(lines);
  const { header } = sections;
  const type = header.get('TYPE') ?? 'CVRP';
  const rounding = ROUNDING[type];
  if (!rounding) throw new InstanceFault(`TYPE ${type} is not read. Read are: ${Object.keys(ROUNDING).join(', ')}.`);
  const places = numberAt(header.get('DIMENSION'), 1, 'DIMENSION');
  if (!Number.isInteger(places) || places < 2)
    throw new InstanceFault(`DIMENSION is ${places}: there are no customers.`);
  if (places > MOST_PLACES) throw new InstanceFault(`DIMENSION is ${places}: at most ${MOST_PLACES} places are read.`);
  if (type !== 'TSP' && !sections.rows.has('DEMAND_SECTION')) throw new InstanceFault('There is no DEMAND_SECTION.');
  const { scale } = rounding;
  const lengths = readLengths(sections, places, rounding);
  const windows = perPlace(sections, 'TIME_WINDOW_SECTION', places);
  const column = (section: string, fallback: number) => {
    const rows = perPlace(sections, section, places);
    return Float64Array.from({ length: places }, (_, i) =>
      rows ? amountAt(rows[i]?.words[1], rows[i]?.line ?? 0, section) : i > 0 ? fallback : 0,
    );
  };
  const times = (section: string, key: string) => column(section, headerNumber(header, key, 0)).map((v) => v * scale);
  const release = times('RELEASE_TIME_SECTION', 'RELEASE_TIME');
  const vehicleTypes = readVehicles(sections, places, type, scale);
  const window = (at: number, without: number) =>
    Float64Array.from({ length: places }, (_, i) => (windows ? numberIn(windows[i], at, 'a window') * scale : without));
  return {
    name: header.get('NAME') ?? '',
    places,
    lengths,
    minutes: lengths,
    demand: column('DEMAND_SECTION', 0),
    opens: window(1, 0),
    closes: window(2, Number.POSITIVE_INFINITY),
    service: times('SERVICE_TIME_SECTION', 'SERVICE_TIME'),
    release,
    vehicleTypes,
    mayReload: sections.rows.has('VEHICLES_RELOAD_DEPOT_SECTION'),
    timed: windows !== null || release.some((v) => v > 0) || vehicleTypes.some((v) => Number.isFinite(v.mostMinutes)),
    costUnits: scale,
  };
}

function readSections(lines: readonly string[]): Sections {
  const header = new Map<string, string>();
  const rows = new Map<string, Row[]>();
  let section: Row[] | null = null;
  lines.forEach((text, i) => {
    const trimmed = text.trim();
    if (trimmed === '' || trimmed === 'EOF') return;
    const pair = /^([A-Z_]+)\s*:\s*(.*)$/.exec(trimmed);
    const named = /^([A-Z_]+_SECTION)\s*:?$/.exec(trimmed);
    if (named) {
      section = [];
      rows.set(named[1] as string, section);
    } else if (pair) header.set(pair[1] as string, (pair[2] as string).trim());
    else if (section) section.push({ line: i + 1, words: trimmed.split(/\s+/) });
    else throw new InstanceFault(`Line ${i + 1}: "${trimmed.slice(0, 40)}" stands outside any section.`);
  });
  return { header, rows };
}

function headerNumber(header: ReadonlyMap<string, string>, key: string, without: number): number {
  const text = header.get(key);
  return text === undefined ? without : numberAt(text, 1, key);
}

function numberIn(row: Row | undefined, at: number, what: string): number {
  return numberAt(row?.words[at], row?.line ?? 0, what);
}

/** A section's rows by place, one each; null where the section is absent. */
function perPlace({ rows }: Sections, section: string, places: number): readonly Row[] | null {
  const found = rows.get(section);
  if (!found) return null;
  if (found.length !== places) throw new InstanceFault(`${section} has ${found.length} rows for ${places} places.`);
  const sorted: Row[] = [];
  for (const row of found) {
    const number = numberIn(row, 0, section);
    if (!Number.isInteger(number) || number < 1 || number > places || sorted[number - 1]) {
      throw new InstanceFault(`Line ${row.line}: place ${row.words[0]} does not exist or stands twice.`);
    }
    sorted[number - 1] = row;
  }
  return sorted;
}

function readLengths(sections: Sections, places: number, rounding: Rounding): Float64Array {
  const kind = sections.header.get('EDGE_WEIGHT_TYPE') ?? 'EUC_2D';
  if (kind === 'EXPLICIT') {
    const rows = sections.rows.get('EDGE_WEIGHT_SECTION') ?? [];
    return readEdgeWeights(rows, sections.header.get('EDGE_WEIGHT_FORMAT') ?? 'FULL_MATRIX', places);
  }
  if (kind !== 'EUC_2D' && kind !== 'GEO') {
    throw new InstanceFault(`EDGE_WEIGHT_TYPE ${kind} is not read. Read are: EUC_2D, GEO, EXPLICIT.`);
  }
  const points = perPlace(sections, 'NODE_COORD_SECTION', places);
  if (!points) throw new InstanceFault('There is no NODE_COORD_SECTION.');
  const [x, y] = [1, 2].map((at) => points.map((row) => numberIn(row, at, 'a coordinate')));
  if (kind === 'GEO') return lengthsOnEarth(x as number[], y as number[]);
  return lengthsBetween(x as number[], y as number[], rounding);
}

/** Vehicles, those alike together; as many as customers where no number is stated. */
function readVehicles(sections: Sections, places: number, type: string, scale: number): InstanceVehicles[] {
  const { header, rows } = sections;
  const stated = header.has('VEHICLES') ? headerNumber(header, 'VEHICLES', 0) : type === 'TSP' ? 1 : places - 1;
  if (!Number.isInteger(stated) || stated < 1) throw new InstanceFault(`VEHICLES is ${stated}: there are none.`);
  // Where no row tells them apart, more than there are customers never leave the depot.
  const apart = [...rows.keys()].some((section) => section.startsWith('VEHICLES_') || section === 'CAPACITY_SECTION');
  const count = apart ? stated : Math.min(stated, places - 1);
  const ofVehicle = (section: string, vehicle: number, key: string, without: number) => {
    const row = rows.get(section)?.[vehicle];
    if (rows.has(section) && !row) throw new InstanceFault(`${section} has fewer rows than there are vehicles.`);
    return row ? numberIn(row, 1, section) : headerNumber(header, key, without);
  };
  const capacity = type === 'TSP' ? 0 : Number.NaN;
  const distance = headerNumber(header, 'DISTANCE', Number.POSITIVE_INFINITY);
  const types = new Map<string, InstanceVehicles & { numbers: number[] }>();
  for (let v = 0; v < count; v++) {
    const clients = rows.get('VEHICLES_ALLOWED_CLIENTS_SECTION')?.[v] ?? null;
    const longest = ofVehicle('VEHICLES_MAX_DURATION_SECTION', v, 'VEHICLES_MAX_DURATION', distance) * scale;
    const vehicle = {
      numbers: [v + 1],
      capacity: ofVehicle('CAPACITY_SECTION', v, 'CAPACITY', capacity),
      fixedCost: ofVehicle('VEHICLES_FIXED_COST_SECTION', v, 'VEHICLES_FIXED_COST', 0) / HUNDREDTHS,
      costPerLength:
        ofVehicle('VEHICLES_UNIT_DISTANCE_COST_SECTION', v, 'VEHICLES_UNIT_DISTANCE_COST', HUNDREDTHS) / HUNDREDTHS,
      mostMinutes: longest,
      mayVisit: clients && allowedClients(clients, places),
    };
    if (Number.isNaN(vehicle.capacity)) throw new InstanceFault('There is no CAPACITY.');
    const key = JSON.stringify([
      vehicle.capacity,
      vehicle.fixedCost,
      vehicle.costPerLength,
      longest,
      clients?.words.slice(1),
    ]);
    const same = types.get(key);
    if (same) same.numbers.push(v + 1);
    else types.set(key, vehicle);
  }
  return [...types.values()];
}

function allowedClients(row: Row, places: number): Uint8Array {
  const allowed = new Uint8Array(places);
  for (let i = 1; i < row.words.length; i++) {
    const place = numberIn(row, i, 'a client');
    if (place < 1 || place > places) throw new InstanceFault(`Line ${row.line}: place ${place} does not exist.`);
    allowed[place - 1] = 1;
  }
  return allowed;
}
