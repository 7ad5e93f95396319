import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import type { ReadFault, ScenarioRecords } from '../../engine/index.ts';
import { decodeText } from './decode-text.ts';
import { parseJson } from './parse-json.ts';
import { LARGEST_FILE_BYTES, recordsFromFiles } from './record-files.ts';
import { DOCUMENT_FILE, isSafePath, pathsOf } from './scenario-paths.ts';

/** Records of the scenario in a folder. A file that is not there or cannot be read is a fault of the records, not an error. */
export function readScenarioFolder(folder: string): ScenarioRecords {
  const files = new Map<string, Uint8Array>();
  const faults: ReadFault[] = [];
  const read = (path: string): void => {
    const found = readWithin(folder, path);
    if (found instanceof Uint8Array) files.set(path, found);
    else if (found !== null) faults.push(found);
  };
  read(DOCUMENT_FILE);
  for (const [part, path] of pathsOf(documentOf(files), (path) => existsSync(join(folder, path)))) {
    if (!isSafePath(path.replace(/\/$/, ''))) continue;
    if (part === 'readings') for (const name of tableNames(folder, path)) read(name);
    else read(path);
  }
  return recordsFromFiles(files, faults);
}

function documentOf(files: ReadonlyMap<string, Uint8Array>): unknown {
  const { text } = decodeText(files.get(DOCUMENT_FILE) ?? new Uint8Array());
  return text === null ? undefined : parseJson(text).value;
}

/** Bytes of a file; null where there is none; a fault where it is too large or a link leads out of the folder. */
function readWithin(folder: string, path: string): Uint8Array | ReadFault | null {
  const fault = (kind: ReadFault['kind'], value = ''): ReadFault => ({ kind, file: path, row: null, value });
  try {
    const real = realpathSync(join(folder, path));
    if (!real.startsWith(realpathSync(folder) + sep)) return fault('unsafe-path');
    const { size } = statSync(real);
    return size > LARGEST_FILE_BYTES ? fault('too-large', String(size)) : readFileSync(real);
  } catch {
    return null;
  }
}

function tableNames(folder: string, path: string): string[] {
  try {
    const names = readdirSync(join(folder, path)).filter((name) => name.endsWith('.csv'));
    return names.map((name) => `${path.replace(/\/$/, '')}/${name}`);
  } catch {
    return [];
  }
}
