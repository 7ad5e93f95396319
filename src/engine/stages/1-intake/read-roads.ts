import { ROAD_CLASSES, type RoadClass, SURFACES } from '../../vocabulary/places.ts';
import type { FeatureRecords } from '../../vocabulary/records.ts';
import type { RoadLine } from '../../vocabulary/scenario.ts';
import { byContent, byPosition, inOrder, type Order } from './canonical-order.ts';
import { type CellKind, DATE, word } from './cell-kinds.ts';
import { ONEWAY, SURFACE_BY_CLASS } from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { nearestWord } from './nearest-word.ts';
import { openFeatures } from './open-records.ts';
import { readLines } from './read-geometry.ts';
import { readSpan } from './read-span.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const CLASS = word(ROAD_CLASSES);

/** roads.geojson: class*, surface, oneway, closed_from, closed_to. A MultiLineString gives one line for each of its lines. */
export function readRoads(report: IntakeReport, records: FeatureRecords | null): KeptRow<RoadLine>[] {
  const unknown = new Map<string, { row: number | null; count: number }>();
  const roads = openFeatures(report, records).flatMap(([row, geometry]) => {
    const reading = CLASS.read(row.text('class'));
    if ('value' in reading) return readRoad(row, reading.value, geometry);
    const met = unknown.get(row.text('class'));
    unknown.set(row.text('class'), { row: met?.row ?? row.row, count: (met?.count ?? 0) + 1 });
    return [];
  });
  for (const [value, { row, count }] of unknown) {
    const suggestion = nearestWord(value, ROAD_CLASSES);
    const facts = { count, known: ROAD_CLASSES.join(', '), ...(suggestion === null ? {} : { suggestion }) };
    report.add('E1410', { file: records?.file ?? null, row, column: 'class', value, facts });
  }
  return roads;
}

/** A closure that cannot be read sets the line aside: a road is never taken for open longer than its row says. */
function readRoad(row: RowReader, roadClass: RoadClass, geometry: unknown): KeptRow<RoadLine>[] {
  const [closedFrom, closedTo] = readSpan(row, ['closed_from', 'closed_to'], DATE, 'row');
  const surface = row.orDefault('surface', word(SURFACES), SURFACE_BY_CLASS[roadClass]);
  const oneway = row.orDefault('oneway', DIRECTION, ONEWAY);
  const lines = readLines(row, geometry);
  const kept = row.kept({ roadClass, surface, oneway, closedFrom, closedTo });
  return kept === null ? [] : lines.map((positions) => ({ ...kept, value: { positions, ...kept.value } }));
}

/** yes, no, and the spellings of map extracts: F forward, T against the line, B both ways, 1 and -1. */
const DIRECTIONS: Readonly<Record<string, RoadLine['oneway']>> = {
  no: 'no',
  false: 'no',
  '0': 'no',
  b: 'no',
  yes: 'forward',
  true: 'forward',
  '1': 'forward',
  f: 'forward',
  '-1': 'backward',
  t: 'backward',
  reverse: 'backward',
};

const DIRECTION: CellKind<RoadLine['oneway']> = {
  none: 'no',
  read: (text) => {
    const spelt = text.toLowerCase();
    const known = Object.keys(DIRECTIONS);
    const value = known.includes(spelt) ? DIRECTIONS[spelt] : undefined;
    return value === undefined ? { fault: 'E1305', facts: { known: known.join(', ') } } : { value };
  },
};

export const ROAD_ORDER: Order<RoadLine> = inOrder(
  byPosition((road) => road.positions[0] ?? [0, 0]),
  byContent((road) => road),
);
