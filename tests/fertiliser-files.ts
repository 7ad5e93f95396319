import { fileURLToPath } from 'node:url';
import { readFolderFiles } from './plan-files.ts';

const TINY = fileURLToPath(new URL('../scenarios/tiny-district', import.meta.url));

/** Rows of a table with columns added at its end, blank where the table had none. */
function withColumns(text: string, columns: readonly string[]): string {
  const [head, ...rows] = text.trimEnd().split(/\r?\n/);
  return [`${head},${columns.join(',')}`, ...rows.map((row) => row + ','.repeat(columns.length))].join('\n');
}

/**
 * The tiny district with bags of 25 kg of an invented phosphate, 100 kg per ha, so that a bag serves a quarter of a hectare: as many as
 * asked for, in two lots, the second of which expires first.
 *
 * @param phosphorus percent of the element; blank: not stated
 */
export function tinyWithFertiliser(packs: number, phosphorus = '20'): Map<string, Uint8Array> {
  const files = new Map(readFolderFiles(TINY));
  const text = (name: string) => new TextDecoder().decode(files.get(name));
  const put = (name: string, to: string) => files.set(name, new TextEncoder().encode(`${to}\n`));
  const bag = `PHOSPHATE,fertiliser,soybean;groundnut,,,25,kg,,,,,,,,,,20,,100,${phosphorus},7`;
  put('products.csv', `${withColumns(text('products.csv'), ['rate_kg_ha', 'p_percent', 'lead_days'])}\n${bag}`);
  const lot = (id: string, count: number, expires: string) =>
    `${id},PHOSPHATE,D-RISE,${count},cleared,2026-10-01,${expires},,,`;
  const later = Math.floor(packs / 4);
  put(
    'lots.csv',
    [
      text('lots.csv').trimEnd(),
      lot('BAGS-LATE', later, '2029-06-30'),
      lot('BAGS-SOON', packs - later, '2028-06-30'),
    ].join('\n'),
  );
  return files;
}

/** A file of the scenario as a test changes it. */
export function withText(
  files: ReadonlyMap<string, Uint8Array>,
  name: string,
  change: (text: string) => string,
): Map<string, Uint8Array> {
  const text = new TextDecoder().decode(files.get(name));
  return new Map([...files, [name, new TextEncoder().encode(change(text))]]);
}
