import { strToU8, zip } from 'fflate';

/** One archive of files by path, made beside the page's own work. A file's time is that of the archive format's first day. */
export function zipFiles(files: ReadonlyMap<string, () => string>): Promise<Uint8Array> {
  const contents = Object.fromEntries([...files].map(([path, make]) => [path, strToU8(make())]));
  return new Promise((resolve, reject) => {
    zip(contents, { mtime: new Date(1980, 0, 1) }, (fault, bytes) => (fault ? reject(fault) : resolve(bytes)));
  });
}
