import { SCENARIO_PARTS, type ScenarioPart } from '../../engine/index.ts';

/** The file that names all others. */
export const DOCUMENT_FILE = 'scenario.json';

/** Names of files that come into being while a season runs, used where they are there, though scenario.json names no other. */
export const USUAL_PATHS = { handovers: 'handovers.csv', decisions: 'decisions.json', readings: 'readings' } as const;

/**
 * Paths of the parts: as written under `files` in scenario.json, else the usual one where it is there.
 *
 * @param isThere whether a file, or any file of a folder, stands under a path
 */
export function pathsOf(document: unknown, isThere: (path: string) => boolean): ReadonlyMap<ScenarioPart, string> {
  const usual = Object.entries(USUAL_PATHS).filter(([, path]) => isThere(path)) as [ScenarioPart, string][];
  return new Map([...usual, ...statedPaths(document)]);
}

/** Paths of the parts under `files` in scenario.json, as written. */
function statedPaths(document: unknown): ReadonlyMap<ScenarioPart, string> {
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
