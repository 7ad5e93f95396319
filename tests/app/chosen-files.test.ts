import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { takeFolderOff } from '../../src/adapters/browser/gather-files.ts';
import { mendTable } from '../../src/adapters/browser/mend-table.ts';
import { unzipFiles } from '../../src/adapters/browser/unzip-files.ts';

const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

describe('a zip archive', () => {
  it('gives its files, and only those whose paths stay inside', () => {
    const archive = zipSync({
      'district/scenario.json': strToU8('{}'),
      'district/readings/a.csv': strToU8('x'),
      '../outside.csv': strToU8('x'),
      '/root.csv': strToU8('x'),
      'c:\\drive.csv': strToU8('x'),
    });
    const { files, faults } = unzipFiles(archive, 'district.zip');
    expect([...files.keys()]).toEqual(['district/scenario.json', 'district/readings/a.csv']);
    expect(faults.map(({ kind, file }) => [kind, file])).toEqual([
      ['unsafe-path', '../outside.csv'],
      ['unsafe-path', '/root.csv'],
      ['unsafe-path', 'c:\\drive.csv'],
    ]);
  });

  it.each([
    [{ files: 9, fileBytes: 9, allBytes: 9e9 }, []],
    [{ files: 9, fileBytes: 1000, allBytes: 2500 }, ['a.csv', 'b.csv']],
    [{ files: 1, fileBytes: 1000, allBytes: 9e9 }, ['a.csv']],
  ])('unpacks no more than %j, whatever its own size', (limits, unpacked) => {
    const zeros = new Uint8Array(1000);
    const archive = zipSync({ 'a.csv': zeros, 'b.csv': zeros, 'c.csv': zeros });
    const { files, faults } = unzipFiles(archive, 'many.zip', limits);
    expect([...files.keys()]).toEqual(unpacked);
    expect(faults.map(({ kind }) => kind)).toEqual(new Array(3 - unpacked.length).fill('too-large'));
  });

  it('is a fault where it is no archive', () => {
    expect(unzipFiles(strToU8('not a zip'), 'broken.zip').faults).toHaveLength(1);
  });
});

describe('the folder of a scenario', () => {
  it('is the one that holds scenario.json, the nearest to the top', () => {
    const files = new Map(
      ['a/scenario.json', 'a/lots.csv', 'a/old/scenario.json', 'b.txt'].map((path) => [path, strToU8(path)]),
    );
    const found = takeFolderOff('a', files, []);
    expect(found).toMatchObject({ name: 'a', whole: true });
    expect([...found.files.keys()]).toEqual(['scenario.json', 'lots.csv', 'old/scenario.json']);
  });

  it('is none where there is no scenario.json: single files then go by their names', () => {
    const found = takeFolderOff('x', new Map([['x/lots.csv', strToU8('')]]), []);
    expect(found.whole).toBe(false);
    expect([...found.files.keys()]).toEqual(['lots.csv']);
  });
});

describe('a mended table', () => {
  const table = 'id,note,packs\nA,"two\nlines, quoted",1\nB,plain,x\n';

  it('changes the cell in the line named, counting lines within quotes', () => {
    const mended = mendTable(strToU8(table), [{ row: 4, column: 'packs', value: '12' }]);
    expect(text(mended)).toBe('id,note,packs\nA,"two\nlines, quoted",1\nB,plain,12\n');
  });

  it('changes nothing where there is no such line or column', () => {
    const cells = [
      { row: 3, column: 'packs', value: '12' },
      { row: 4, column: 'price', value: '12' },
    ];
    expect(text(mendTable(strToU8(table), cells))).toBe(table);
  });

  it('quotes what would break the table', () => {
    const mended = mendTable(strToU8('a,b\n1,2\n'), [{ row: 2, column: 'b', value: 'x,"y"' }]);
    expect(text(mended)).toBe('a,b\n1,"x,""y"""\n');
  });
});
