import type { InstanceVehicles, RoutingInstance } from '../../engine/index.ts';
import { amountAt, countAt, InstanceFault, numberAt, vehicleNumbers } from './instance-fault.ts';
import { lengthsBetween, UNROUNDED } from './rounding.ts';

interface Row {
  readonly line: number;
  readonly words: readonly string[];
}

/**
 * The two texts in which mixed fleets of limited number are published. Both: comments behind //, a line with customers, types and
 * longest journey, a line a type (number, capacity, fixed cost, cost per length). Then either coordinates of the depot and a row a
 * customer (x, y, demand), or the depot's number, a matrix in metres (lengths count in kilometres) and a row a customer
 * (number, demand).
 */
export function readMixedFleetText(lines: readonly string[]): RoutingInstance {
  const rows: Row[] = lines
    .map((text, i) => ({
      line: i + 1,
      words: text
        .replace(/\/\/.*/, '')
        .trim()
        .split(/\s+/),
    }))
    .filter(({ words }) => words[0] !== '');
  const head = rows[0];
  const customers = wholeAt(head, 0, 'the number of customers');
  const types = wholeAt(head, 1, 'the number of types');
  const range = numberAt(head?.words[2], head?.line ?? 0, 'the longest journey');
  const service = numberAt(head?.words[3], head?.line ?? 0, 'the service time');
  const fleet = readFleet(rows.slice(1, types + 1), types, customers, range);
  const rest = rows.slice(types + 1);
  const withMatrix = rest[0]?.words.length === 1;
  const { lengths, demand } = withMatrix ? readMatrix(rest.slice(1), customers) : readPoints(rest, customers);
  const places = customers + 1;
  return {
    name: '',
    places,
    lengths,
    minutes: lengths,
    demand,
    opens: new Float64Array(places),
    closes: new Float64Array(places).fill(Number.POSITIVE_INFINITY),
    service: new Float64Array(places).fill(service).fill(0, 0, 1),
    release: new Float64Array(places),
    vehicleTypes: fleet,
    mayReload: false,
    timed: fleet.some(({ mostMinutes }) => Number.isFinite(mostMinutes)),
    costUnits: 1,
  };
}

/** Journeys of so many and more are as long as one likes. */
const NO_RANGE = 999_999;

function wholeAt(row: Row | undefined, at: number, what: string): number {
  return countAt(row?.words[at], row?.line ?? 1, what);
}

function readFleet(rows: readonly Row[], types: number, customers: number, range: number): InstanceVehicles[] {
  if (rows.length < types) throw new InstanceFault(`There are ${rows.length} lines of vehicles for ${types} types.`);
  let last = 0;
  return rows.map((row) => {
    const count = wholeAt(row, 0, 'the number of vehicles');
    const numbers = vehicleNumbers(last + 1, count, customers);
    last += count;
    return {
      numbers,
      capacity: amountAt(row.words[1], row.line, 'the capacity'),
      fixedCost: numberAt(row.words[2], row.line, 'the fixed cost'),
      costPerLength: numberAt(row.words[3], row.line, 'the cost per length'),
      mostMinutes: range >= NO_RANGE ? Number.POSITIVE_INFINITY : range,
      mayVisit: null,
    };
  });
}

function readPoints(rows: readonly Row[], customers: number) {
  if (rows.length < customers + 1) throw new InstanceFault(`There are ${rows.length - 1} customers, not ${customers}.`);
  const places = rows.slice(0, customers + 1);
  const x = places.map(({ words, line }) => numberAt(words[0], line, 'x'));
  const y = places.map(({ words, line }) => numberAt(words[1], line, 'y'));
  const demand = places.map(({ words, line }, i) => (i === 0 ? 0 : amountAt(words[2], line, 'the demand')));
  return { lengths: lengthsBetween(x, y, UNROUNDED), demand: Float64Array.from(demand) };
}

const METRES_PER_KM = 1000;

function readMatrix(rows: readonly Row[], customers: number) {
  const places = customers + 1;
  if (rows.length < places + customers)
    throw new InstanceFault(`The matrix and the demands take ${places + customers} lines.`);
  const lengths = new Float64Array(places * places);
  for (let a = 0; a < places; a++) {
    const { words, line } = rows[a] as Row;
    if (words.length !== places) throw new InstanceFault(`Line ${line}: ${words.length} lengths, not ${places}.`);
    for (let b = 0; b < places; b++) lengths[a * places + b] = amountAt(words[b], line, 'a length') / METRES_PER_KM;
  }
  const demand = new Float64Array(places);
  for (const row of rows.slice(places, places + customers)) {
    const customer = wholeAt(row, 0, 'the customer');
    if (customer > customers) throw new InstanceFault(`Line ${row.line}: there is no customer ${customer}.`);
    demand[customer] = amountAt(row.words[1], row.line, 'the demand');
  }
  return { lengths, demand };
}
