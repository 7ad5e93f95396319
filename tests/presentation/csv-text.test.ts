import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../src/presentation/exports/csv-text.ts';

/** Cells of the second line. */
const cells = (...row: (string | number | null)[]) =>
  csvText(
    row.map((_, i) => `c${i}`),
    [row],
  ).split('\r\n')[1];

describe('CSV by RFC 4180', () => {
  it('ends every line with CRLF, the last one too (section 2, rules 1 and 2)', () => {
    expect(csvText(['a', 'b'], [['1', 2]])).toBe('a,b\r\n1,2\r\n');
  });

  it('puts cells with commas, quotes and line ends in quotes, quotes doubled (rules 6 and 7)', () => {
    expect(cells('Upper, Lower', 'the "mill"', 'two\r\nlines'.replace('\r\n', '\n'))).toBe(
      '"Upper, Lower","the ""mill""","two\nlines"',
    );
  });

  it('reads back as it was written, by a reader of another hand (papaparse)', () => {
    const text = ['a,b', 'say "so"', 'line\nend', 'plain', '', 'carriage\rreturn', ' spaces kept '];
    const csv = csvText(
      text.map((_, i) => `c${i}`),
      [text],
    );
    expect(Papa.parse<string[]>(csv, { newline: '\r\n' }).data[1]).toEqual(text);
  });

  it('leaves cells without a value empty', () => {
    expect(cells('a', null, 0)).toBe('a,,0');
  });
});

describe('cells that a spreadsheet would run', () => {
  it.each(['=1+1', '+1', '-1+cmd', '@SUM(A1)', '\t=1', '\r=1', '＝1', '=HYPERLINK("x","y")'])(
    '%j is led by an apostrophe',
    (text) => {
      const written = Papa.parse<string[]>(csvText(['c'], [[text]]), { newline: '\r\n' }).data[1]?.[0];
      expect(written).toBe(`'${text}`);
    },
  );

  it('lets negative numbers be numbers', () => {
    expect(cells(-3.5, 2e-7)).toBe('-3.5,2e-7');
  });

  it('guards the header too', () => {
    expect(csvText(['=x'], [])).toBe("'=x\r\n");
  });
});

describe('what a table cannot hold', () => {
  it('refuses rows of another length and numbers without end', () => {
    expect(() => csvText(['a'], [['x', 'y']])).toThrow(RangeError);
    expect(() => csvText(['a'], [[Number.NaN]])).toThrow(RangeError);
  });
});
