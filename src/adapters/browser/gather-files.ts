import type { ReadFault } from '../../engine/index.ts';
import { LARGEST_FILE_BYTES } from '../scenario-files/record-files.ts';
import { DOCUMENT_FILE } from '../scenario-files/scenario-paths.ts';
import type { GatheredFiles } from '../workers/worker-messages.ts';
import { LARGEST_UNZIPPED_BYTES, MOST_FILES, unzipFiles } from './unzip-files.ts';

/** A file with its path from where the user chose or dropped. */
export interface ChosenFile {
  readonly path: string;
  readonly file: File;
}

/** Files as gathered, the scenario's folder taken off their paths. */
export interface Gathered extends GatheredFiles {
  /** Name of the folder or archive, for the user. */
  readonly name: string;
  /** Whether scenario.json is among them. */
  readonly whole: boolean;
}

/** Files chosen with `<input webkitdirectory>` or `<input multiple>`. */
export function filesOfList(list: readonly File[]): ChosenFile[] {
  return list.map((file) => ({ path: file.webkitRelativePath || file.name, file }));
}

/** Files of dropped files and folders. */
export async function filesOfEntries(entries: readonly FileSystemEntry[]): Promise<ChosenFile[]> {
  const found: ChosenFile[] = [];
  for (const entry of entries) await walkEntry(entry, found);
  return found;
}

async function walkEntry(entry: FileSystemEntry, found: ChosenFile[]): Promise<void> {
  if (found.length >= MOST_FILES) return;
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject));
    found.push({ path: entry.fullPath.replace(/^\//, ''), file });
    return;
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  // A reader gives a folder's entries in parts, an empty part last.
  for (;;) {
    const part = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (part.length === 0) return;
    for (const inner of part) await walkEntry(inner, found);
  }
}

/** Reads chosen files into memory; one zip alone is opened. Limits of count and size hold over all files together. */
export async function gatherFiles(chosen: readonly ChosenFile[]): Promise<Gathered> {
  const [only] = chosen;
  if (chosen.length === 1 && only && /\.zip$/i.test(only.path)) {
    const { files, faults } = unzipFiles(new Uint8Array(await only.file.arrayBuffer()), only.path);
    return takeFolderOff(only.path.replace(/\.zip$/i, ''), files, faults);
  }
  const files = new Map<string, Uint8Array>();
  const faults: ReadFault[] = [];
  let total = 0;
  for (const { path, file } of chosen.slice(0, MOST_FILES)) {
    total += file.size;
    if (file.size > LARGEST_FILE_BYTES || total > LARGEST_UNZIPPED_BYTES) {
      faults.push({ kind: 'too-large', file: path, row: null, value: String(file.size) });
    } else files.set(path, new Uint8Array(await file.arrayBuffer()));
  }
  return takeFolderOff(chosen[0]?.path.split('/')[0] ?? '', files, faults);
}

/** The scenario's folder is the one that holds scenario.json, the nearest to the top where several do. */
export function takeFolderOff(
  name: string,
  files: ReadonlyMap<string, Uint8Array>,
  faults: readonly ReadFault[],
): Gathered {
  const documents = [...files.keys()].filter((path) => path === DOCUMENT_FILE || path.endsWith(`/${DOCUMENT_FILE}`));
  const nearest = documents.sort((a, b) => a.split('/').length - b.split('/').length || (a < b ? -1 : 1))[0];
  if (nearest === undefined) {
    const flat = new Map([...files].map(([path, bytes]) => [path.split('/').at(-1) ?? path, bytes]));
    return { name, files: flat, faults, whole: false };
  }
  const folder = nearest.slice(0, -DOCUMENT_FILE.length);
  const within = (path: string) => path.startsWith(folder);
  const cut = (path: string) => path.slice(folder.length);
  return {
    name: folder.split('/').at(-2) ?? name,
    files: new Map([...files].filter(([path]) => within(path)).map(([path, bytes]) => [cut(path), bytes])),
    faults: faults.filter(({ file }) => within(file)).map((fault) => ({ ...fault, file: cut(fault.file) })),
    whole: true,
  };
}
