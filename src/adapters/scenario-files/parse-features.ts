import type { FeatureRecord, FeatureRecords, ReadFault } from '../../engine/index.ts';

/** A FeatureCollection (RFC 7946) as records that know their place in it. Whether a geometry holds is for intake to say. */
export function parseFeatures(
  file: string,
  value: unknown,
): { readonly collection: FeatureRecords | null; readonly faults: ReadFault[] } {
  const list = isObject(value) && value['type'] === 'FeatureCollection' ? value['features'] : null;
  if (!Array.isArray(list)) return { collection: null, faults: [{ kind: 'not-geojson', file, row: null, value: '' }] };
  const features: FeatureRecord[] = [];
  const faults: ReadFault[] = [];
  list.forEach((feature: unknown, index) => {
    const row = index + 1;
    if (isObject(feature) && feature['type'] === 'Feature') {
      const properties = isObject(feature['properties']) ? feature['properties'] : {};
      features.push({ row, properties, geometry: feature['geometry'] ?? null });
    } else faults.push({ kind: 'not-geojson', file, row, value: '' });
  });
  return { collection: { file, features }, faults };
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
