import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../src/adapters/scenario-files/decode-text.ts';
import { parseJson } from '../../../src/adapters/scenario-files/parse-json.ts';
import { parseTable } from '../../../src/adapters/scenario-files/parse-table.ts';
import { recordsFromFiles } from '../../../src/adapters/scenario-files/record-files.ts';
import { isSafePath } from '../../../src/adapters/scenario-files/scenario-paths.ts';
import { zoneOffsetMinutes } from '../../../src/adapters/scenario-files/zone-offset.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const cellsOf = (text: string) => parseTable('t.csv', text).table?.rows.map(({ cells }) => cells);

describe('tables (RFC 4180 section 2)', () => {
  it('rules 1 and 2: lines end in CRLF, the last one may lack it; LF and CR are taken alike', () => {
    for (const end of ['\r\n', '\n', '\r']) {
      expect(cellsOf(`a,b,c${end}aaa,bbb,ccc${end}zzz,yyy,xxx`)).toEqual([
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ]);
    }
    expect(cellsOf('a,b\r\n1,2\n3,4\r\n')).toHaveLength(2);
  });

  it('rules 5 to 7: quotes hold commas, line ends and doubled quotes, and rows still know their line', () => {
    const { table, faults } = parseTable('t.csv', 'a,b,c\r\n"aaa","b\r\nbb","ccc"\r\n\r\n"aaa","b""bb","c,c"\r\n');
    expect(table?.rows).toEqual([
      { row: 2, cells: ['aaa', 'b\nbb', 'ccc'] },
      { row: 5, cells: ['aaa', 'b"bb', 'c,c'] },
    ]);
    expect(faults).toEqual([]);
  });

  it('rule 4: rows with other cells than the header are faults, the others are kept', () => {
    const { table, faults } = parseTable('t.csv', 'a,b\n1\n1,2\n1,2,3\n');
    expect(table?.rows.map(({ row }) => row)).toEqual([3]);
    expect(faults.map(({ kind, row }) => [kind, row])).toEqual([
      ['row-shape', 2],
      ['row-shape', 4],
    ]);
  });

  it('a quote that does not close takes only its own row', () => {
    const { table, faults } = parseTable('t.csv', 'a,b\n1,2\n"3,4\n5,6\n');
    expect(table?.rows.map(({ cells }) => cells)).toEqual([['1', '2']]);
    expect(faults).toMatchObject([{ kind: 'row-shape', row: 3 }]);
  });

  it('other separators are no commas', () => {
    expect(parseTable('t.csv', 'a;b\n1;2\n').faults).toMatchObject([{ kind: 'not-csv' }]);
    expect(parseTable('t.csv', 'a\tb\n1\t2\n').faults).toMatchObject([{ kind: 'not-csv' }]);
  });
});

describe('JSON (RFC 8259)', () => {
  it('counts depth outside texts only, up to 64', () => {
    const nested = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`;
    expect(parseJson(nested(64)).fault).toBeNull();
    expect(parseJson(nested(65)).fault).toBe('too-deep');
    expect(parseJson(JSON.stringify(`\\"${'['.repeat(100)}`)).fault).toBeNull();
  });

  it('section 6: NaN and Infinity are no numbers; outside texts they are read as null', () => {
    expect(parseJson('{"NaN":[NaN,-Infinity,"say \\"NaN\\"",1]}')).toEqual({
      value: { NaN: [null, null, 'say "NaN"', 1] },
      fault: 'bare-nan',
    });
    expect(parseJson('{"a":1,}').fault).toBe('not-json');
  });
});

it('text is UTF-8 (RFC 3629), decoded strictly', () => {
  expect(decodeText(bytes('Señoria'))).toEqual({ text: 'Señoria', faults: [] });
  expect(decodeText(bytes('\ufeffa'))).toEqual({ text: 'a', faults: ['byte-order-mark'] });
  expect(decodeText(Uint8Array.of(0xc0, 0x80)).faults).toEqual(['encoding']);
  expect(decodeText(Uint8Array.from(Buffer.from('abc', 'utf16le'))).faults).toEqual(['encoding']);
  expect(decodeText(bytes(' \n')).faults).toEqual(['empty']);
});

it('paths stay inside the folder', () => {
  for (const path of ['a.csv', 'layers/a.csv', 'a..b.csv', 'lots of 2026.csv'])
    expect(isSafePath(path), path).toBe(true);
  for (const path of ['../a', 'a/../../b', '/a', 'a//b', './a', 'C:a', 'a\\b', 'http://a', 'a\u0000b', ''])
    expect(isSafePath(path), path).toBe(false);
});

it('time zones are taken at noon UTC of the day (IANA time zone database)', () => {
  expect(zoneOffsetMinutes('Africa/Lusaka', '2026-11-04')).toBe(120);
  expect(zoneOffsetMinutes('Asia/Kathmandu', '2026-11-04')).toBe(345);
  expect(zoneOffsetMinutes('America/New_York', '2026-07-01')).toBe(-240);
  expect(zoneOffsetMinutes('America/New_York', '2026-12-01')).toBe(-300);
  expect(zoneOffsetMinutes('Africa/Nowhere', '2026-11-04')).toBeNull();
  expect(zoneOffsetMinutes('Africa/Lusaka', '2026-11-40')).toBeNull();
});

describe('records', () => {
  const document = JSON.stringify({ files: { depots: 'd.csv', readings: 'readings', decisions: 'decisions.json' } });
  const files = new Map([
    ['scenario.json', bytes(document)],
    ['d.csv', bytes('depot_id,name\nD1,One\n')],
    ['readings/b.csv', bytes('time,celsius\n')],
    ['readings/a.csv', bytes('time,celsius\n')],
    ['notes.txt', bytes('not part of the scenario')],
  ]);

  it('are taken from the files that scenario.json names, and what is not there is a fault', () => {
    const records = recordsFromFiles(files);
    expect(records.depots?.rows).toEqual([{ row: 2, cells: ['D1', 'One'] }]);
    expect(records.readings.map(({ file }) => file)).toEqual(['readings/a.csv', 'readings/b.csv']);
    expect(records.lots).toBeNull();
    expect(records.faults).toEqual([{ kind: 'missing', file: 'decisions.json', row: null, value: '' }]);
  });

  it('carry the SHA-256 of names, lengths and bytes in the order of names (FIPS 180-4; node:crypto)', () => {
    const expected = createHash('sha256');
    for (const path of ['d.csv', 'readings/a.csv', 'readings/b.csv', 'scenario.json']) {
      const content = files.get(path) as Uint8Array;
      expected.update(`${path}\n${content.length}\n`).update(content);
    }
    expect(recordsFromFiles(files).sha256).toBe(expected.digest('hex'));
    expect(recordsFromFiles(new Map([...files].reverse())).sha256).toBe(recordsFromFiles(files).sha256);
  });
});
