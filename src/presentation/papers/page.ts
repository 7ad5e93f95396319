import type { Drawing } from './drawing.ts';

/** Words that stand out. */
export interface Strong {
  readonly strong: string;
}

/** A line of words, parts of which may stand out. */
export type Text = string | readonly (string | Strong)[];

export const strong = (text: string): Strong => ({ strong: text });

export interface Column {
  readonly head: string;
  readonly align?: 'right';
  /** Never broken over two lines: ids and dates. */
  readonly whole?: boolean;
  /** To be written in by hand: ruled off, and left out on a phone. */
  readonly blank?: boolean;
  /** Part of the table's width, percent; what is left is shared by the others as their content asks. */
  readonly width?: number;
}

/** One cell: a line, several lines, a figure to be seen from afar, or a small drawing. */
export type Cell =
  | Text
  | { readonly lines: readonly Text[] }
  /** Lines of two parts that stay beside each other: goods and their lot. */
  | { readonly pairs: readonly (readonly [Text, Text])[] }
  | { readonly big: string }
  | { readonly drawing: Drawing };

export interface Row {
  readonly cells: readonly Cell[];
  /** `group` heads the rows below it across the table; `sum` adds up the rows above. */
  readonly role?: 'group' | 'sum';
}

export interface Table {
  readonly kind: 'table';
  /** What the table is, for whoever reads the page by program. */
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** `open`: rows high enough to write in. `list`: the same, columns as wide as told.
   * `even`: columns as wide as told, the others alike. `grid`: days of a calendar. */
  readonly look?: 'open' | 'list' | 'even' | 'grid';
}

export type Block =
  | { readonly kind: 'text'; readonly text: Text; readonly look?: 'note' | 'lead' }
  | {
      readonly kind: 'section';
      readonly title: string;
      readonly blocks: readonly Block[];
      /** `care`: a bar beside it. `framed`: a frame around it. */
      readonly look?: 'care' | 'framed';
    }
  | Table
  | { readonly kind: 'steps'; readonly items: readonly Text[]; readonly columns: 1 | 2 | 3 }
  /** Things to be ticked off. */
  | { readonly kind: 'checks'; readonly items: readonly Text[]; readonly columns: 1 | 2 }
  /** What to do when: the case, then the answer. */
  | { readonly kind: 'pairs'; readonly items: readonly (readonly [Text, Text])[] }
  | { readonly kind: 'beside'; readonly parts: readonly (readonly Block[])[]; readonly shares: readonly number[] }
  /** Leads to another file beside this one. */
  | { readonly kind: 'link'; readonly path: string; readonly text: string }
  | { readonly kind: 'drawing'; readonly drawing: Drawing }
  /** Lines to write on, each with its label before it. */
  | { readonly kind: 'fields'; readonly labels: readonly string[] }
  | { readonly kind: 'signatures'; readonly labels: readonly string[] };

/** One paper: it begins on a page of its own and may take several. */
export interface Page {
  readonly title: string;
  readonly about: readonly Text[];
  /** Stands in a frame beside the title. */
  readonly corner?: { readonly above: string; readonly big: string; readonly below: string };
  readonly turned?: boolean;
  readonly blocks: readonly Block[];
  /** Said at the foot: what overrides the sheet, and which plan it is of. */
  readonly foot: readonly [string, string];
}
