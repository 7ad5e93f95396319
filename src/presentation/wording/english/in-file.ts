import type { Problem } from '../../../engine/index.ts';

const SCOPES: Readonly<Record<string, string>> = {
  row: ' It is not used; the rest is planned.',
  value: ' The value is not used.',
};

/**
 * Words for a problem of a file: where it stands, what was met, what became of it and what was probably meant.
 *
 * @param met a sentence; `{value}` stands for the value met and other names in braces for facts of the problem
 */
export function inFile(met: string): (problem: Problem) => string {
  return (problem) => {
    const words = met.replace(/\{(\w+)\}/g, (_, name: string) => {
      return name === 'value' ? (problem.value ?? 'nothing') : String(problem.facts[name] ?? '');
    });
    const suggestion = problem.facts['suggestion'];
    const meant = suggestion === undefined ? '' : ` Was “${suggestion}” meant?`;
    return `${place(problem)}${words}.${SCOPES[String(problem.facts['scope'])] ?? ''}${meant}`;
  };
}

function place({ file, row, column }: Problem): string {
  const parts = [file, row === null ? null : `${rowWord(file)} ${row}`, column].filter((part) => part !== null);
  return parts.length === 0 ? '' : `${parts.join(', ')}: `;
}

/** Rows of tables are lines of the file, the header being line 1. */
function rowWord(file: string | null): string {
  if (file?.endsWith('.csv')) return 'line';
  return file?.endsWith('.geojson') ? 'feature' : 'entry';
}

/** The bounds that a number has to keep, as far as the problem states them. */
export function bounds({ facts }: Problem): string {
  const words = [
    ['above', 'above'],
    ['atLeast', 'at least'],
    ['atMost', 'at most'],
  ] as const;
  return words
    .filter(([name]) => facts[name] !== undefined)
    .map(([name, word]) => `${word} ${facts[name]}`)
    .join(' and ');
}
