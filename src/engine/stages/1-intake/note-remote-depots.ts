import { geodesicKm } from '../../numerics/geodesic-length.ts';
import type { Community, Depot } from '../../vocabulary/scenario.ts';
import { placeMiddle } from './canonical-order.ts';
import type { IntakeReport } from './intake-report.ts';
import type { KeptRow } from './row-reader.ts';

/** A depot farther than this from every community is worth a second look: it may lie in the sea (assumed). */
const REMOTE_KM = 200;

/** Whether a road leads to it is for the places stage to find. */
export function noteRemoteDepots(
  report: IntakeReport,
  depots: readonly KeptRow<Depot>[],
  communities: readonly Community[],
): void {
  if (communities.length === 0) return;
  const middles = communities.map(({ geometry }) => placeMiddle(geometry));
  for (const { file, row, value } of depots) {
    if (middles.some((middle) => geodesicKm(value.position, middle) <= REMOTE_KM)) continue;
    const [lon, lat] = value.position;
    report.add('E1409', {
      file,
      row,
      column: 'lat',
      value: `${lat};${lon}`,
      facts: { depot: value.id, km: REMOTE_KM },
    });
  }
}
