/**
 * What adapters hand to intake: rows and features as sent, knowing their file and row. Adapters turn bytes into records;
 * intake gives them meaning. A file that cannot be read at all becomes a `ReadFault`.
 */

/** Names of the parts of a scenario, as under `files` in scenario.json. */
export const SCENARIO_PARTS = [
  'communities',
  'zones',
  'handoverPoints',
  'cropWindows',
  'depots',
  'products',
  'lots',
  'vehicles',
  'roads',
  'weather',
  'handovers',
  'readings',
  'decisions',
] as const;
export type ScenarioPart = (typeof SCENARIO_PARTS)[number];

export interface TableRecord {
  /** 1-based line of the row in the file, the header being line 1. */
  readonly row: number;
  /** As many cells as there are columns, trimmed; missing cells are empty text. */
  readonly cells: readonly string[];
}

export interface TableRecords {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly TableRecord[];
}

export interface FeatureRecord {
  /** 1-based position of the feature in the collection. */
  readonly row: number;
  readonly properties: Readonly<Record<string, unknown>>;
  /** GeoJSON geometry as sent, unchecked; null where there is none. */
  readonly geometry: unknown;
}

export interface FeatureRecords {
  readonly file: string;
  readonly features: readonly FeatureRecord[];
}

export type ReadFaultKind =
  | 'missing'
  | 'empty'
  | 'encoding'
  | 'not-json'
  | 'too-deep'
  | 'too-large'
  | 'not-csv'
  | 'not-geojson'
  | 'row-shape'
  | 'unsafe-path'
  | 'byte-order-mark'
  /** NaN or Infinity outside a text of a JSON file: not JSON (RFC 8259), read as null. */
  | 'bare-nan';

/** Something an adapter met while turning bytes into records. Intake turns it into a coded problem. */
export interface ReadFault {
  readonly kind: ReadFaultKind;
  readonly file: string;
  readonly row: number | null;
  readonly value: string;
}

export interface ScenarioRecords {
  /** scenario.json, parsed; null where it could not be. */
  readonly document: { readonly file: string; readonly value: unknown } | null;
  readonly communities: FeatureRecords | null;
  readonly zones: FeatureRecords | null;
  readonly roads: FeatureRecords | null;
  readonly handoverPoints: TableRecords | null;
  readonly cropWindows: TableRecords | null;
  readonly depots: TableRecords | null;
  readonly products: TableRecords | null;
  readonly lots: TableRecords | null;
  readonly vehicles: TableRecords | null;
  readonly weather: TableRecords | null;
  readonly handovers: TableRecords | null;
  /** Temperature-logger files, in the order of their names. */
  readonly readings: readonly TableRecords[];
  /** decisions.json, parsed; null where there is none. */
  readonly decisions: { readonly file: string; readonly value: unknown } | null;
  readonly faults: readonly ReadFault[];
  /** Offset of the scenario's time zone from UTC on its as-of day; null where the zone is unknown. */
  readonly utcOffsetMinutes: number | null;
  /** The same on the last planning day: another where clocks change while planning runs. */
  readonly utcOffsetAtEndMinutes: number | null;
  /** SHA-256 over the bytes of every file, in the order of their names. */
  readonly sha256: string;
}
