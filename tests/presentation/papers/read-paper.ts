/** A table of a rendered paper, as a reader sees it: heads and cells as text. */
export interface ReadTable {
  readonly name: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const ENTITIES: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** Text of markup: parts of a cell that stand on lines of their own are parted by a bar. */
export const textOf = (html: string): string =>
  html
    .replace(/<\/div>/g, '|')
    .replace(/<[^>]*>/g, '')
    .replace(/&(amp|lt|gt|quot);/g, (entity) => ENTITIES[entity] ?? entity)
    .replaceAll('\u00a0', ' ')
    .trim();

export function tablesOf(html: string): ReadTable[] {
  return [...html.matchAll(/<table data-table="([^"]*)".*?<\/table>/gs)].map(([table, name]) => ({
    name: textOf(name ?? ''),
    heads: [...table.matchAll(/<th scope="col"[^>]*>(.*?)<\/th>/gs)].map(([, head]) => textOf(head ?? '')),
    rows: [...table.matchAll(/<tr[^>]*>(.*?)<\/tr>/gs)]
      .map(([, row]) =>
        [...(row ?? '').matchAll(/<t[dh](?: scope="rowgroup")?[^>]*>(.*?)<\/t[dh]>/gs)].map(([, cell]) =>
          textOf(cell ?? ''),
        ),
      )
      .slice(/<thead>/.test(table) ? 1 : 0),
  }));
}

/** Each paper of a file. */
export const papersIn = (html: string): string[] =>
  [...html.matchAll(/<article.*?<\/article>/gs)].map(([paper]) => paper ?? '');

export const titleOf = (paper: string): string => textOf(/<h1>(.*?)<\/h1>/s.exec(paper)?.[1] ?? '');

/** A figure as papers write it in English: thousands parted by a space, halves as a sign. */
export const figureOf = (text: string): number =>
  Number(
    text
      .replace('½', '.5')
      .replaceAll(/[\u00a0 ]/g, '')
      .replace(/^\./, '0.'),
  );
