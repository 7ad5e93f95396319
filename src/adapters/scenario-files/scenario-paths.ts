import { SCENARIO_PARTS, type ScenarioPart } from '../../engine/index.ts';

/** The file that names all others. */
export const DOCUMENT_FILE = 'scenario.json';

/** Paths of the parts under `files` in scenario.json, as written. */
export function statedPaths(document: unknown): ReadonlyMap<ScenarioPart, string> {
  const files: unknown = isRecord(document) && Object.hasOwn(document, 'files') ? document['files'] : null;
  const stated = new Map<ScenarioPart, string>();
  if (!isRecord(files)) return stated;
  for (const part of SCENARIO_PARTS) {
    const path = Object.hasOwn(files, part) ? files[part] : undefined;
    if (typeof path === 'string' && path.trim() !== '') stated.set(part, path.trim());
  }
  return stated;
}

/** True for a path that stays inside the scenario's folder: relative, forward slashes, no step upwards, no drive or address. */
export function isSafePath(path: string): boolean {
  // A backslash or colon would mean a folder or a drive on some systems and a letter of the name on others.
  if (/[\\:\p{Cc}]/u.test(path)) return false;
  return path.split('/').every((step) => step !== '' && step !== '.' && step !== '..');
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
