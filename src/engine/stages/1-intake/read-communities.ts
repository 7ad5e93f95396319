import { CROPS, type Crop } from '../../vocabulary/crops.ts';
import type { FeatureRecords } from '../../vocabulary/records.ts';
import type { Community, CropPlan } from '../../vocabulary/scenario.ts';
import { byContent, byNumber, byPosition, byText, inOrder, type Order, placeMiddle } from './canonical-order.ts';
import { DATE, number, TEXT, whole, word } from './cell-kinds.ts';
import { LAST_PRIORITY, NO_OWN_SEED, NO_PLANNED_LAND, STORE } from './defaults.ts';
import type { IntakeReport } from './intake-report.ts';
import { keepOnePerId } from './keep-one-per-id.ts';
import { nearestWord } from './nearest-word.ts';
import { keepRows, openFeatures } from './open-records.ts';
import { readPlaceGeometry } from './read-geometry.ts';
import { readSpan } from './read-span.ts';
import type { IdList } from './require-known.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

export const STORES = ['none', 'room', 'clay_pot', 'fridge'] as const;

const AMOUNT = number({ atLeast: 0 });
const YEAR = whole({ atLeast: 1900, atMost: 2200 });

export interface CommunityReading {
  readonly crops: readonly Crop[];
  readonly communities: readonly KeptRow<Community>[];
}

/**
 * communities.geojson: community_id*, name*, zone_id, farmers, farmers_women, `<crop>_ha`, `<crop>_growers`,
 * `<crop>_own_seed_kg`, `<crop>_seed_rate_kg_ha`, market_day, priority, last_inoculated_year, store, closed_from,
 * closed_to, elevation_m.
 */
export function readCommunities(report: IntakeReport, records: FeatureRecords | null): CommunityReading {
  const crops = findCrops(report, records);
  const rows = keepRows(openFeatures(report, records), ([row, geometry]) => readCommunity(row, geometry, crops));
  return { crops, communities: keepOnePerId(report, 'community_id', rows) };
}

function readCommunity(row: RowReader, geometry: unknown, crops: readonly Crop[]): KeptRow<Community> | null {
  const farmers = row.orNull('farmers', AMOUNT);
  const farmersWomen = row.orNull('farmers_women', AMOUNT);
  if (farmers !== null && farmersWomen !== null && farmersWomen > farmers) {
    row.note('E1501', { column: 'farmers_women', value: row.text('farmers_women'), facts: { farmers } });
  }
  const [closedFrom, closedTo] = readSpan(row, ['closed_from', 'closed_to'], DATE);
  return row.kept<Community>({
    id: row.required('community_id', TEXT),
    name: row.required('name', TEXT),
    zoneId: row.orNull('zone_id', TEXT),
    farmers,
    farmersWomen,
    crops: crops.map((crop) => readCropPlan(row, crop)),
    marketDay: row.orNull('market_day', whole({ atLeast: 1, atMost: 7 })),
    priority: row.orDefault('priority', whole({ atLeast: 1 }), LAST_PRIORITY),
    lastInoculatedYear: row.orNull('last_inoculated_year', YEAR),
    store: row.orDefault('store', word(STORES), STORE),
    closedFrom,
    closedTo,
    elevationM: row.orNull('elevation_m', number({ atLeast: -500, atMost: 9000 })),
    geometry: readPlaceGeometry(row, geometry),
  });
}

/** An area that is negative or no number is set aside and counts as none; the community stays. */
function readCropPlan(row: RowReader, crop: Crop): CropPlan {
  return {
    crop,
    plannedHa: row.orDefault(`${crop}_ha`, AMOUNT, NO_PLANNED_LAND),
    growers: row.orNull(`${crop}_growers`, AMOUNT),
    ownSeedKg: row.orDefault(`${crop}_own_seed_kg`, AMOUNT, NO_OWN_SEED),
    seedRateKgPerHa: row.orNull(`${crop}_seed_rate_kg_ha`, number({ above: 0 })),
  };
}

/** A zone that no row has is set aside: the geometry then says which zone it is. */
export function setUnknownZonesAside(
  report: IntakeReport,
  rows: readonly KeptRow<Community>[],
  zoneIds: IdList,
): KeptRow<Community>[] {
  return rows.map((kept) => {
    const { file, row, value } = kept;
    if (value.zoneId === null || zoneIds.has(value.zoneId)) return kept;
    const facts = { part: 'zones', scope: 'value' };
    report.add('E1308', { file, row, column: 'zone_id', value: value.zoneId, facts });
    return { ...kept, value: { ...value, zoneId: null } };
  });
}

/** Crops with a column of planned hectares, in the order of CROPS; columns of hectares of other crops are said. */
function findCrops(report: IntakeReport, records: FeatureRecords | null): readonly Crop[] {
  if (records === null) return [];
  const columns = new Set<string>();
  for (const { properties } of records.features) for (const name of Object.keys(properties)) columns.add(name);
  const known = CROPS.map((crop) => `${crop}_ha`);
  for (const column of [...columns].sort()) {
    if (!column.endsWith('_ha') || column.endsWith('_seed_rate_kg_ha') || known.includes(column)) continue;
    const suggestion = nearestWord(column.slice(0, -'_ha'.length), CROPS);
    report.add('E1500', { file: records.file, column, facts: suggestion === null ? {} : { suggestion } });
  }
  const crops = CROPS.filter((crop) => columns.has(`${crop}_ha`));
  if (crops.length === 0 && records.features.length > 0) report.add('E1502', { file: records.file });
  return crops;
}

export const communityOrder = (zoneIndex: ReadonlyMap<string, number>): Order<Community> =>
  inOrder(
    byPosition((community) => placeMiddle(community.geometry)),
    byContent(({ id, name, zoneId, ...content }) => content),
    byNumber(({ zoneId }) => (zoneId === null ? -1 : (zoneIndex.get(zoneId) ?? -1))),
    byText((community) => community.name),
    byText((community) => community.id),
  );
