import { describe, expect, it } from 'vitest';
import { ALL_COMMUNITIES, blocks, ids, survives } from './expect-problems.ts';
import { read, SMALL_FILES, withChange } from './small-scenario.ts';

it('the small scenario itself has nothing set aside', () => {
  const { scenario, problems, decisions } = read(SMALL_FILES);
  expect(problems.map(({ code }) => code).filter((code) => code !== 'E1900')).toEqual([]);
  expect(ids(scenario?.communities ?? [])).toEqual(ALL_COMMUNITIES);
  expect(decisions.decisions).toHaveLength(1);
});

describe('geometry (RFC 7946 sections 3.1.1 and 3.1.6)', () => {
  it('leaves a bow-tie to the places stage', () => {
    const bowTie = '[28,-13.1],[28.1,-13],[28.1,-13.1],[28,-13],[28,-13.1]';
    const { scenario, problems } = read(
      withChange('communities.geojson', '[28,-13.1],[28.1,-13.1],[28.1,-13],[28,-13],[28,-13.1]', bowTie),
    );
    expect(ids(scenario?.communities ?? [])).toEqual(ALL_COMMUNITIES);
    expect(problems.filter(({ file }) => file === 'communities.geojson')).toEqual([]);
  });

  it('closes an unclosed ring and says so', () => {
    const files = withChange('communities.geojson', '[28,-13],[28,-13.1]]]', '[28,-13]]]');
    const scenario = survives(files, 'E1404', { file: 'communities.geojson', row: 1 });
    const geometry = scenario.communities.find(({ id }) => id === 'C1')?.geometry;
    const ring = geometry?.kind === 'area' ? geometry.polygons[0]?.[0] : undefined;
    expect(ring).toHaveLength(5);
    expect(ring?.[4]).toEqual(ring?.[0]);
  });

  it('sets aside a ring of too few positions', () => {
    const files = withChange(
      'communities.geojson',
      '[28,-13.1],[28.1,-13.1],[28.1,-13],[28,-13],[28,-13.1]',
      '[28,-13.1],[28.1,-13.1],[28,-13.1]',
    );
    expect(ids(survives(files, 'E1405', { row: 1, value: '3' }).communities)).toEqual(['C2', 'C3', 'C4']);
  });

  it.each(['"NaN"', 'null', '"28.25"', 'NaN', '-Infinity'])('sets aside the coordinate %s', (sent) => {
    const files = withChange('communities.geojson', '[28.25,-13.05]', `[${sent},-13.05]`);
    expect(ids(survives(files, 'E1401', { row: 3, column: 'geometry' }).communities)).toEqual(['C1', 'C2', 'C4']);
  });

  it('says that bare NaN is not JSON (RFC 8259 section 6)', () => {
    const files = withChange('communities.geojson', '[28.25,-13.05]', '[NaN,-13.05]');
    survives(files, 'E1111', { file: 'communities.geojson' });
  });

  it('sets aside swapped coordinates that would lie in the district', () => {
    const files = withChange('communities.geojson', '[28.25,-13.05]', '[-13.05,28.25]');
    expect(ids(survives(files, 'E1403', { row: 3, value: '-13.05;28.25' }).communities)).toEqual(['C1', 'C2', 'C4']);
  });

  it('sets aside a latitude that can only be a longitude', () => {
    const files = withChange('weather.csv', /-13,28.3,2026-11-03/, '128.3,-13,2026-11-03');
    const scenario = survives(files, 'E1402', { file: 'weather.csv', row: 19, column: 'lat' });
    expect(scenario.weather.map(({ days }) => days.length).sort()).toEqual([13, 14]);
  });

  it('sets aside coordinates that are not degrees', () => {
    const files = withChange('communities.geojson', '[28.25,-13.05]', '[744000,8557000]');
    expect(ids(survives(files, 'E1408', { row: 3 }).communities)).toEqual(['C1', 'C2', 'C4']);
  });

  it('sets aside features without a geometry of use', () => {
    const files = withChange(
      'communities.geojson',
      '"Point","coordinates":[28.25,-13.05]',
      '"MultiPoint","coordinates":[[28.25,-13.05]]',
    );
    expect(ids(survives(files, 'E1400', { row: 3, value: 'MultiPoint' }).communities)).toEqual(['C1', 'C2', 'C4']);
  });

  it('splits a MultiLineString and sets aside a line that leads nowhere', () => {
    const split = withChange(
      'roads.geojson',
      /"LineString","coordinates":\[\[28.2,-13.0\],\[28.25,-13.05\]\]/,
      '"MultiLineString","coordinates":[[[28.2,-13.0],[28.25,-13.05]],[[28.25,-13.05],[28.3,-13.1]]]',
    );
    expect(survives(split, 'E1407', { row: 2 }).roads).toHaveLength(4);
    const short = withChange('roads.geojson', '[[28.2,-13.0],[28.25,-13.05]]', '[[28.2,-13.0],[28.2,-13.0]]');
    expect(survives(short, 'E1406', { row: 2 }).roads).toHaveLength(2);
  });

  it('notes a depot far from every community, as one in the sea is', () => {
    const files = withChange('depots.csv', '-13.0,28.2', '-13.0,41.5');
    expect(survives(files, 'E1409', { file: 'depots.csv', row: 2, value: '-13;41.5' }).depots).toHaveLength(1);
  });
});

describe('files', () => {
  it('reads past a byte-order mark', () => {
    const files = withChange('communities.geojson', '{', '\ufeff{');
    expect(ids(survives(files, 'E1110', { file: 'communities.geojson' }).communities)).toEqual(ALL_COMMUNITIES);
  });

  it.each([
    ['UTF-16', Uint8Array.from([0xff, 0xfe, 0x7a, 0x00, 0x6f, 0x00])],
    ['a byte that UTF-8 does not know', Uint8Array.from([0x7a, 0xe9, 0x6e])],
  ])('sets aside a file in %s and plans without it where it can', (_, bytes) => {
    const scenario = survives({ ...SMALL_FILES, 'zones.geojson': bytes }, 'E1102', { file: 'zones.geojson' });
    expect(scenario.zones).toEqual([]);
    expect(ids(scenario.communities)).toEqual(ALL_COMMUNITIES);
  });

  it('blocks where a file that every plan needs is empty, missing or in another format, and still reads the rest', () => {
    blocks({ ...SMALL_FILES, 'depots.csv': '' }, 'E1101', 'E1120');
    const { 'weather.csv': _, ...without } = SMALL_FILES;
    blocks(without, 'E1100', 'E1120');
    blocks({ ...SMALL_FILES, 'roads.geojson': '{"type":"Topology"}' }, 'E1107', 'E1120');
    blocks({ ...SMALL_FILES, 'roads.geojson': '{"type":' }, 'E1103', 'E1120');
    blocks({ ...SMALL_FILES, 'lots.csv': 'lot_id;product_id\nL1;INO\n' }, 'E1106', 'E1120');
    blocks({ ...SMALL_FILES, 'scenario.json': '[1]' }, 'E1200', 'E1201', 'E1120');
    blocks({}, 'E1100', 'E1120');
  });

  it('blocks where no row that every plan needs is left', () => {
    blocks(withChange('depots.csv', '-13.0,28.2', 'north,28.2'), 'E1301', 'E1121', 'E1308');
    blocks(withChange('communities.geojson', /soybean_ha|groundnut_ha/g, 'maize_ha'), 'E1500', 'E1502');
  });

  it('plans without lots, vehicles or roads, and says what that leaves undone', () => {
    const scenario = survives(
      { ...SMALL_FILES, 'lots.csv': `${String(SMALL_FILES['lots.csv']).split('\n')[0]}\n` },
      'E1122',
      { value: 'lots' },
    );
    expect(scenario.lots).toEqual([]);
  });

  it('refuses JSON that is nested too deep before parsing it', () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    blocks({ ...SMALL_FILES, 'roads.geojson': deep }, 'E1104', 'E1120');
    survives({ ...SMALL_FILES, 'decisions.json': deep }, 'E1104', { file: 'decisions.json' });
  });

  it('refuses paths that leave the folder', () => {
    for (const path of ['../zones.geojson', '/etc/zones.geojson', 'C:\\\\zones.geojson', 'https://x/zones.geojson']) {
      const files = withChange('scenario.json', '"zones":"zones.geojson"', `"zones":"${path}"`);
      expect(survives(files, 'E1109', { file: path.replace('\\\\', '\\') }).zones).toEqual([]);
    }
  });

  it('sets aside ragged rows (RFC 4180 section 2, rule 4)', () => {
    const files = withChange(
      'lots.csv',
      'L2,SEED-S,D1,150,cleared,,2027-06-30,,88',
      'L2,SEED-S,D1,150,cleared,,2027-06-30,,88,,extra',
    );
    expect(ids(survives(files, 'E1108', { file: 'lots.csv', row: 3 }).lots)).toEqual(['L1', 'L3']);
  });

  it('blocks on a missing required column and notes an unknown or repeated one', () => {
    blocks(withChange('depots.csv', 'depot_id,name,lat,lon', 'depot_id,name,latitude,lon'), 'E1123', 'E1124', 'E1121');
    const unknown = survives(withChange('vehicles.csv', 'cool_litres', 'cool_liters'), 'E1124', {
      column: 'cool_liters',
    });
    expect(unknown.vehicles[0]?.coolLitres).toBe(0);
    const twice = withChange('crop-windows.csv', 'zone_id,crop,season', 'zone_id,crop,zone_id');
    expect(survives(twice, 'E1125', { column: 'zone_id' }).cropWindows[0]?.season).toBeNull();
  });
});
