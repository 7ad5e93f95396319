import { type MultiPolygon, type Plan, rewindPolygons } from '../../engine/index.ts';
import { ZONE_COLUMNS, zoneRows } from './zone-rows.ts';

/**
 * Zones as GeoJSON (RFC 7946): the polygons that the plan reckoned with, repaired where the file's were not valid, wound
 * by the right-hand rule, with the columns of zones.csv as properties. A zone without an area has no geometry.
 *
 * @param zonePolygons polygons per zone, in the plan's order of zones; null for a zone that is a point
 */
export function zonesGeojson(plan: Plan, zonePolygons: readonly (MultiPolygon | null)[]): string {
  const features = zoneRows(plan).map((cells, row) => {
    const polygons = zonePolygons[plan.outcomes.zones.zone[row] ?? -1] ?? null;
    return {
      type: 'Feature',
      properties: Object.fromEntries(ZONE_COLUMNS.map((name, column) => [name, cells[column] ?? null])),
      geometry: polygons && { type: 'MultiPolygon', coordinates: rewindPolygons(polygons) },
    };
  });
  return `${JSON.stringify({ type: 'FeatureCollection', features })}\n`;
}
