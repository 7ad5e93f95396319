import {
  type FeatureRecords,
  type ReadFault,
  type ReadFaultKind,
  type ScenarioPart,
  type ScenarioRecords,
  Sha256,
  type TableRecords,
} from '../../engine/index.ts';
import { decodeText } from './decode-text.ts';
import { parseFeatures } from './parse-features.ts';
import { parseJson } from './parse-json.ts';
import { parseTable } from './parse-table.ts';
import { DOCUMENT_FILE, isSafePath, pathsOf } from './scenario-paths.ts';
import { zoneOffsetMinutes } from './zone-offset.ts';

/** Larger files are not read: a district's plan does not need them, and they would fill the memory of a small laptop. */
export const LARGEST_FILE_BYTES = 256 * 1024 * 1024;

/**
 * The files of a scenario, by their paths from its folder, as records that know their file and row. Runs anywhere: no Node,
 * no browser. Only scenario.json and the files it names are read and hashed.
 *
 * @param met faults that whoever gathered the files met with some of them; those are not said to be missing as well
 */
export function recordsFromFiles(
  files: ReadonlyMap<string, Uint8Array>,
  met: readonly ReadFault[] = [],
): ScenarioRecords {
  const shelf = new Shelf(files, met);
  const document = shelf.json(DOCUMENT_FILE);
  const paths = pathsOf(document?.value, (path) =>
    [...files.keys()].some((file) => file === path || file.startsWith(`${path}/`)),
  );
  const features = (part: ScenarioPart): FeatureRecords | null => shelf.features(paths.get(part));
  const table = (part: ScenarioPart): TableRecords | null => shelf.table(paths.get(part));
  const decisions = paths.get('decisions');
  const entries = document?.value as DocumentDates | null | undefined;
  return {
    document,
    communities: features('communities'),
    zones: features('zones'),
    roads: features('roads'),
    handoverPoints: table('handoverPoints'),
    cropWindows: table('cropWindows'),
    depots: table('depots'),
    products: table('products'),
    lots: table('lots'),
    vehicles: table('vehicles'),
    weather: table('weather'),
    handovers: table('handovers'),
    readings: shelf.tablesUnder(paths.get('readings')),
    decisions: decisions === undefined ? null : shelf.json(decisions),
    faults: shelf.faults,
    utcOffsetMinutes: zoneOffsetMinutes(entries?.timeZone, entries?.asOf),
    utcOffsetAtEndMinutes: zoneOffsetMinutes(entries?.timeZone, entries?.planning?.to),
    sha256: shelf.sha256(),
  };
}

/** Entries of scenario.json that the clock is looked up by; unchecked. */
interface DocumentDates {
  readonly timeZone?: unknown;
  readonly asOf?: unknown;
  readonly planning?: { readonly to?: unknown } | null;
}

/** The files, and what was met while taking them from it. */
class Shelf {
  readonly faults: ReadFault[];
  private readonly files: ReadonlyMap<string, Uint8Array>;
  private readonly taken = new Map<string, Uint8Array>();

  constructor(files: ReadonlyMap<string, Uint8Array>, met: readonly ReadFault[]) {
    this.files = files;
    this.faults = [...met];
  }

  json(path: string): { readonly file: string; readonly value: unknown } | null {
    const text = this.text(path);
    if (text === null) return null;
    const { value, fault } = parseJson(text);
    if (fault !== null) this.fault(fault, path);
    return value === undefined ? null : { file: path, value };
  }

  features(path: string | undefined): FeatureRecords | null {
    const document = path === undefined ? null : this.json(path);
    if (document === null) return null;
    const { collection, faults } = parseFeatures(document.file, document.value);
    this.faults.push(...faults);
    return collection;
  }

  table(path: string | undefined): TableRecords | null {
    const text = path === undefined ? null : this.text(path);
    if (path === undefined || text === null) return null;
    const { table, faults } = parseTable(path, text);
    this.faults.push(...faults);
    return table;
  }

  /** Tables of a folder, in the order of their names. */
  tablesUnder(folder: string | undefined): readonly TableRecords[] {
    if (folder === undefined) return [];
    const within = `${folder.replace(/\/$/, '')}/`;
    if (!isSafePath(within.slice(0, -1))) {
      this.fault('unsafe-path', folder);
      return [];
    }
    const paths = [...this.files.keys()].filter((path) => path.startsWith(within) && path.endsWith('.csv')).sort();
    return paths.map((path) => this.table(path)).filter((table) => table !== null);
  }

  /** Over the files taken, in the order of their names: each name, its length in bytes, its bytes. */
  sha256(): string {
    const hash = new Sha256();
    for (const [path, bytes] of [...this.taken].sort(([a], [b]) => (a < b ? -1 : 1))) {
      hash.update(new TextEncoder().encode(`${path}\n${bytes.length}\n`)).update(bytes);
    }
    return hash.hex();
  }

  private text(path: string): string | null {
    const bytes = this.take(path);
    if (bytes === null) return null;
    const { text, faults } = decodeText(bytes);
    for (const kind of faults) this.fault(kind, path);
    return text;
  }

  private take(path: string): Uint8Array | null {
    if (!isSafePath(path)) return this.fault('unsafe-path', path);
    const bytes = this.files.get(path);
    if (bytes === undefined) {
      const isSaid = this.faults.some(({ file, row }) => file === path && row === null);
      return isSaid ? null : this.fault('missing', path);
    }
    if (bytes.length > LARGEST_FILE_BYTES) return this.fault('too-large', path, String(bytes.length));
    this.taken.set(path, bytes);
    return bytes.length === 0 ? this.fault('empty', path) : bytes;
  }

  private fault(kind: ReadFaultKind, file: string, value = ''): null {
    this.faults.push({ kind, file, row: null, value });
    return null;
  }
}
