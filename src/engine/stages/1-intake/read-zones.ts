import type { FeatureRecords } from '../../vocabulary/records.ts';
import type { Zone } from '../../vocabulary/scenario.ts';
import { byContent, byPosition, byText, inOrder, type Order, placeMiddle } from './canonical-order.ts';
import { DATE, TEXT } from './cell-kinds.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { keepRows, openFeatures } from './open-records.ts';
import { readPlaceGeometry } from './read-geometry.ts';
import { readSpan } from './read-span.ts';
import type { KeptRow } from './row-reader.ts';

/** zones.geojson: zone_id*, name*, closed_from, closed_to. */
export function readZones(report: IntakeReport, records: FeatureRecords | null): KeptRow<Zone>[] {
  const zones = keepRows(openFeatures(report, records), ([row, sent]) => {
    const [closedFrom, closedTo] = readSpan(row, ['closed_from', 'closed_to'], DATE);
    return row.kept<Zone>({
      id: row.required('zone_id', TEXT),
      name: row.required('name', TEXT),
      closedFrom,
      closedTo,
      geometry: readAreaGeometry(row, sent),
    });
  });
  return keepOnePerId(report, 'zone_id', zones);
}

function readAreaGeometry(row: Parameters<typeof readPlaceGeometry>[0], sent: unknown): Zone['geometry'] {
  const geometry = readPlaceGeometry(row, sent);
  // A zone is an area: a point says nothing of who lies in it.
  if (geometry.kind === 'point' && !row.isRejected) row.reject('E1400', { column: 'geometry', value: 'Point' });
  return geometry;
}

export const ZONE_ORDER: Order<Zone> = inOrder(
  byPosition((zone) => placeMiddle(zone.geometry)),
  byContent(({ id, name, ...content }) => content),
  byText((zone) => zone.name),
  byText((zone) => zone.id),
);
