import { unzipSync } from 'fflate';
import type { ReadFault } from '../../engine/index.ts';
import { LARGEST_FILE_BYTES } from '../scenario-files/record-files.ts';
import { isSafePath } from '../scenario-files/scenario-paths.ts';

/** A scenario has a dozen files; a folder of logger readings may add some hundreds. */
export const MOST_FILES = 2000;
/** Over all files of an archive, by the sizes it states, so that a small archive cannot fill the memory. */
export const LARGEST_UNZIPPED_BYTES = 512 * 1024 * 1024;

const LIMITS = { files: MOST_FILES, fileBytes: LARGEST_FILE_BYTES, allBytes: LARGEST_UNZIPPED_BYTES };

/**
 * Files of a zip archive by their paths. Paths that lead out of the archive are not unpacked and are a fault, as are files
 * beyond the limits of size and count. An archive that cannot be read at all gives no files and one fault.
 */
export function unzipFiles(
  archive: Uint8Array,
  name: string,
  limits: typeof LIMITS = LIMITS,
): { readonly files: ReadonlyMap<string, Uint8Array>; readonly faults: readonly ReadFault[] } {
  const faults: ReadFault[] = [];
  const fault = (kind: ReadFault['kind'], file: string, value = ''): false => {
    faults.push({ kind, file, row: null, value });
    return false;
  };
  let count = 0;
  let total = 0;
  const wanted = ({ name: path, originalSize }: { readonly name: string; readonly originalSize: number }): boolean => {
    if (path.endsWith('/')) return false;
    if (!isSafePath(path)) return fault('unsafe-path', path);
    count += 1;
    total += originalSize;
    const tooLarge = originalSize > limits.fileBytes || total > limits.allBytes || count > limits.files;
    return tooLarge ? fault('too-large', path, String(originalSize)) : true;
  };
  try {
    // The sizes stated are the sizes written: the library unpacks into a buffer of the size stated, and no further.
    return { files: new Map(Object.entries(unzipSync(archive, { filter: wanted }))), faults };
  } catch {
    fault('empty', name);
    return { files: new Map(), faults };
  }
}
