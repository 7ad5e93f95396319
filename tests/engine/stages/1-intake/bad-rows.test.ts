import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import { PROBLEM_WEIGHTS } from '../../../../src/engine/vocabulary/problems.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import { ALL_COMMUNITIES, blocks, ids, survives } from './expect-problems.ts';
import { problemsOf, read, SMALL_FILES, scenarioOf, withChange } from './small-scenario.ts';

describe('cells', () => {
  it('sets negative and non-numeric areas aside and keeps the community', () => {
    const scenario = survives(withChange('communities.geojson', '"soybean_ha":12.5', '"soybean_ha":-12.5'), 'E1302', {
      file: 'communities.geojson',
      row: 1,
      column: 'soybean_ha',
      value: '-12.5',
    });
    expect(scenario.communities.find(({ id }) => id === 'C1')?.crops).toMatchObject([
      { crop: 'soybean', plannedHa: 0 },
      { crop: 'groundnut', plannedHa: 3 },
    ]);
    survives(withChange('communities.geojson', '"soybean_ha":12.5', '"soybean_ha":"12,5"'), 'E1301', { value: '12,5' });
  });

  it('sets aside rows with dates of another form: ISO 8601 alone is read', () => {
    const files = withChange('lots.csv', '2027-03-01', '05/11/2026');
    const place = { file: 'lots.csv', row: 2, column: 'expires', value: '05/11/2026' };
    expect(ids(survives(files, 'E1303', place).lots)).toEqual(['L2', 'L3']);
    survives(withChange('lots.csv', '2027-03-01', '2027-02-29'), 'E1303', { value: '2027-02-29' });
    blocks(withChange('scenario.json', '2026-11-05', '5 November 2026'), 'E1303', 'E1201');
  });

  it('sets aside dates out of order', () => {
    const lots = survives(withChange('lots.csv', '2026-10-01,2027-03-01', '2027-04-01,2027-03-01'), 'E1306', {
      row: 2,
    });
    expect(ids(lots.lots)).toEqual(['L2', 'L3']);
    const roads = survives(withChange('roads.geojson', '2026-11-12', '2026-11-09'), 'E1306', {
      row: 3,
      column: 'closed_to',
    });
    expect(roads.roads).toHaveLength(2);
    blocks(withChange('scenario.json', '"to":"2026-12-15"', '"to":"2026-11-01"'), 'E1202');
    blocks(withChange('scenario.json', '"to":"2026-12-15"', '"to":"2028-12-15"'), 'E1203');
  });

  it('sets aside hours that are no hours', () => {
    survives(withChange('handover-points.csv', '07:00', '7 am'), 'E1304', { column: 'opens', value: '7 am' });
    blocks(withChange('depots.csv', '07:00,17:00', '17:00,07:00'), 'E1306', 'E1121');
  });

  it('keeps markup and formulas as plain text and strips control characters', () => {
    const scenario = survives(withChange('communities.geojson', 'Kalundu', '<script>alert(1)</script>'), 'E1309', {
      row: 2,
      column: 'name',
    });
    expect(scenario.communities.find(({ id }) => id === 'C2')?.name).toBe('<script>alert(1)</script>');
    survives(withChange('depots.csv', 'Depot', '=1+1'), 'E1309', { file: 'depots.csv', value: '=1+1' });
    const stripped = survives(withChange('communities.geojson', 'Kalundu', 'Ka\\u0000lun\\u202edu'), 'E1310', {
      row: 2,
    });
    expect(stripped.communities.find(({ id }) => id === 'C2')?.name).toBe('Kalundu');
  });

  it('suggests the word that was probably meant', () => {
    const reading = read(withChange('vehicles.csv', 'pannier', 'panier'));
    expect(problemsOf(reading, 'E1305')[0]?.facts).toMatchObject({ suggestion: 'pannier', scope: 'value' });
  });

  it('counts what is too much to list', () => {
    const rows = Array.from({ length: 500 }, (_, i) => `X${i},INO,D1,many,cleared,,2027-06-30,,\n`).join('');
    const reading = read(withChange('lots.csv', 'L2,', `${rows}L2,`));
    expect(problemsOf(reading, 'E1301')).toHaveLength(20);
    expect(problemsOf(reading, 'E1002')[0]).toMatchObject({
      file: 'lots.csv',
      column: 'packs',
      facts: { code: 'E1301', count: 500 },
    });
    expect(ids(reading.scenario?.lots ?? [])).toEqual(['L1', 'L2', 'L3']);
  });
});

describe('ids', () => {
  it('keeps one row of each id, whichever stands first', () => {
    const twin = 'L2,SEED-S,D1,999,cleared,,2027-06-30,,88\n';
    const files = withChange('lots.csv', 'L3,', `${twin}L3,`);
    const kept = survives(files, 'E1307', { file: 'lots.csv', column: 'lot_id', value: 'L2' });
    const swapped = survives(withChange('lots.csv', 'L2,', `${twin}L2,`), 'E1307', { value: 'L2' });
    expect(kept.lots).toHaveLength(3);
    expect(swapped.lots).toEqual(kept.lots);
  });

  it('sets aside lots, vehicles and hand-overs of what is not there', () => {
    expect(
      ids(survives(withChange('lots.csv', 'L1,INO', 'L1,INOC'), 'E1308', { column: 'product_id', value: 'INOC' }).lots),
    ).toEqual(['L2', 'L3']);
    expect(
      ids(
        survives(withChange('vehicles.csv', 'TRUCK,truck,D1', 'TRUCK,truck,D9'), 'E1308', { column: 'depot_id' })
          .vehicles,
      ),
    ).toEqual(['MOTO#1', 'MOTO#2']);
    expect(
      survives(withChange('handovers.csv', 'C1,L1', 'C1,L9'), 'E1308', { file: 'handovers.csv' }).handovers,
    ).toEqual([]);
    const points = survives(withChange('handover-points.csv', 'C1;C2', 'C1;C9'), 'E1308', {
      column: 'communities',
      value: 'C9',
    });
    expect(points.handoverPoints[0]?.communityIds).toEqual(['C1']);
    const zone = survives(withChange('communities.geojson', '"zone_id":"Z1"', '"zone_id":"Z7"'), 'E1308', {
      column: 'zone_id',
    });
    expect(zone.communities.every(({ zoneId }) => zoneId === null)).toBe(true);
  });

  it('lets a community collect at one point only', () => {
    const files = withChange('handover-points.csv', 'room,\n', 'room,\nP2,Clinic,-13.06,28.15,C2,,,,\n');
    const points = survives(files, 'E1411', { value: 'C2' }).handoverPoints;
    expect(points.flatMap(({ communityIds }) => communityIds).sort()).toEqual(['C1', 'C2']);
  });

  it('counts vehicles out', () => {
    expect(ids(scenarioOf(SMALL_FILES).vehicles)).toEqual(['MOTO#1', 'MOTO#2', 'TRUCK']);
    survives(withChange('vehicles.csv', 'path,2', 'path,0'), 'E1302', { column: 'count' });
  });
});

describe('land, stock and fleet', () => {
  it('notes hectares of a crop that is not known', () => {
    const scenario = survives(withChange('communities.geojson', /groundnut_ha/g, 'groundnuts_ha'), 'E1500', {
      column: 'groundnuts_ha',
    });
    expect(scenario.crops).toEqual(['soybean']);
    const [problem] = problemsOf(read(withChange('communities.geojson', /groundnut_ha/g, 'groundnuts_ha')), 'E1500');
    expect(problem?.facts['suggestion']).toBe('groundnut');
  });

  it('sets aside a product of no known crop and leaves an unknown one out of a list', () => {
    expect(
      ids(
        survives(withChange('products.csv', 'INO,inoculant,soybean', 'INO,inoculant,maize'), 'E1305', {
          column: 'crops',
        }).lots,
      ),
    ).toEqual(['L2', 'L3']);
    const some = survives(withChange('products.csv', 'soybean;groundnut', 'soybean;maize'), 'E1312', {
      value: 'maize',
    });
    expect(some.products.find(({ id }) => id === 'FERT')?.crops).toEqual(['soybean']);
  });

  it('warns of a hundred-seed weight and uses it as given (soybean 100 to 200 g a thousand, PROTA 1; memory)', () => {
    const scenario = survives(withChange('products.csv', ',150,60', ',15,60'), 'E1601', { row: 3, value: '15' });
    expect(scenario.products.find(({ id }) => id === 'SEED-S')?.thousandSeedG).toBe(15);
    expect(problemsOf(read(SMALL_FILES), 'E1601')).toEqual([]);
  });

  it('takes millilitres as grams and says so', () => {
    const scenario = survives(withChange('products.csv', 'peat,100,g,5,1e9', 'liquid,0.5,L,4,2e9'), 'E1600', {
      column: 'pack_unit',
    });
    expect(scenario.products.find(({ id }) => id === 'INO')).toMatchObject({
      packG: 500,
      doseGPerKg: 4,
      minCountPerG: 1e8,
    });
  });

  it('sets aside an inoculant without a dose and a fertiliser without a rate', () => {
    expect(ids(survives(withChange('products.csv', 'g,5,1e9', 'g,,1e9'), 'E1602', { row: 2 }).products)).toEqual([
      'FERT',
      'SEED-G',
      'SEED-S',
    ]);
    expect(
      ids(survives(withChange('products.csv', ',,,,,,100\n', ',,,,,,\n'), 'E1604', { row: 5 }).products),
    ).not.toContain('FERT');
  });

  it('reads the phosphorus of a fertiliser, and notes P2O5 told as P: triple superphosphate holds 46 % P2O5, 20.1 % P', () => {
    const withPhosphorus = (percent: string) => {
      const rows = String(SMALL_FILES['products.csv']).trimEnd().split('\n');
      const cell = (row: string) =>
        row.startsWith('FERT') ? percent : row.startsWith('product_id') ? 'p_percent' : '';
      return { ...SMALL_FILES, 'products.csv': rows.map((row) => `${row},${cell(row)}\n`).join('') };
    };
    const phosphorusOf = (scenario: Scenario) => scenario.products.find(({ id }) => id === 'FERT')?.phosphorusPercent;
    expect(phosphorusOf(scenarioOf(withPhosphorus('20.1')))).toBe(20.1);
    expect(phosphorusOf(scenarioOf(withPhosphorus('')))).toBeNull();
    expect(problemsOf(read(withPhosphorus('20.1')), 'E1606')).toEqual([]);
    const place = { file: 'products.csv', row: 5, column: 'p_percent', value: '46' };
    expect(phosphorusOf(survives(withPhosphorus('46'), 'E1606', place))).toBe(46);
    survives(withPhosphorus('much'), 'E1301', { column: 'p_percent', value: 'much' });
  });

  it('keeps expired and held lots for allocation to refuse, and says so', () => {
    const expired = survives(withChange('lots.csv', '2026-10-01,2027-03-01', '2026-04-01,2026-11-01'), 'E1700', {
      value: '2026-11-01',
    });
    expect(expired.lots).toHaveLength(3);
    const held = survives(withChange('lots.csv', '40,cleared', '40,on_hold'), 'E1701', { value: 'on_hold' });
    expect(held.lots.find(({ id }) => id === 'L1')?.status).toBe('on_hold');
  });

  it('never takes a lot for better than its row says', () => {
    for (const [from, to] of [
      ['40,cleared', '40,quarantine'],
      ['1.2e9', '12 million'],
      ['2026-10-01', 'soon'],
    ] as const) {
      expect(ids(scenarioOf(withChange('lots.csv', from, to)).lots)).toEqual(['L2', 'L3']);
    }
    const blank = survives(withChange('lots.csv', '40,cleared', '40,'), 'E1702', { column: 'status' });
    expect(blank.defaults).toContainEqual(
      expect.objectContaining({ column: 'lots.csv:status', value: 'cleared', rows: 1 }),
    );
  });

  it.each(['0', '-900'])('sets aside a vehicle that can carry %s kg', (payload) => {
    const files = withChange('vehicles.csv', 'D1,3000', `D1,${payload}`);
    expect(ids(survives(files, 'E1800', { row: 2, value: payload }).vehicles)).toEqual(['MOTO#1', 'MOTO#2']);
  });

  it('sets road lines of an unknown class aside, counted by class', () => {
    const scenario = survives(withChange('roads.geojson', /"class":"secondary"/g, '"class":"secondry"'), 'E1410', {
      value: 'secondry',
      row: 1,
    });
    expect(scenario.roads.map(({ roadClass }) => roadClass)).toEqual(['track']);
  });

  it.each([
    ['yes', 'forward'],
    ['no', 'no'],
    ['B', 'no'],
    ['F', 'forward'],
    ['T', 'backward'],
    ['-1', 'backward'],
  ])('reads oneway %s', (sent, meant) => {
    const [road] = scenarioOf(
      withChange('roads.geojson', '"class":"track","oneway":"no"', `"class":"track", "oneway":"${sent}"`),
    ).roads.filter(({ roadClass }) => roadClass === 'track');
    expect(road?.oneway).toBe(meant);
  });

  it('notes more women than farmers', () => {
    survives(withChange('communities.geojson', '"farmers_women":60', '"farmers_women":160'), 'E1501', {
      row: 1,
      value: '160',
    });
  });
});

describe('weather', () => {
  const stationOf = (files: typeof SMALL_FILES, id: string) =>
    scenarioOf(files).weather.find((station) => station.id === id);

  it('takes Tmin above Tmax as missing', () => {
    const files = withChange('weather.csv', 'WEST,-13.1,28,2026-11-03,18.5', 'WEST,-13.1,28,2026-11-03,48.5');
    survives(files, 'E1902', { row: 4, value: '48.5' });
    const station = stationOf(files, 'WEST');
    expect([...(station?.tminC ?? [])].map(Number.isNaN).indexOf(true)).toBe(2);
    expect(station?.tmaxC[2]).toBeNaN();
    expect(station?.rainMm[2]).toBe(2);
  });

  it('takes empty and impossible values as missing', () => {
    survives(withChange('weather.csv', '2026-11-03,18.5', '2026-11-03,'), 'E1901', { row: 4 });
    const files = withChange('weather.csv', /2026-11-03,18.5/, '2026-11-03,185');
    survives(files, 'E1302', { row: 4, column: 'tmin_c', value: '185' });
    expect(stationOf(files, 'WEST')?.tminC[2]).toBeNaN();
  });

  it('ignores rows after the forecast horizon and counts them', () => {
    const scenario = survives(
      withChange('scenario.json', '"timeZone"', '"forecastHorizonDays":3,"timeZone"'),
      'E1900',
      { row: 9 },
    );
    expect(scenario.weather.map(({ days }) => isoDate(days.at(-1) as never))).toEqual(['2026-11-07', '2026-11-07']);
  });

  it('keeps one row of a station and day, and the place that most rows state', () => {
    const twice = withChange('weather.csv', 'EAST,', 'WEST,-13.1,28,2026-11-03,,31,0\nEAST,');
    survives(twice, 'E1903', { row: 17, value: '2026-11-03' });
    expect(stationOf(twice, 'WEST')?.tminC[2]).toBe(18.5);
    const moved = withChange('weather.csv', 'WEST,-13.1,28,2026-11-03', 'WEST,-13.05,28,2026-11-03');
    survives(moved, 'E1904', { row: 4 });
    expect(stationOf(moved, 'WEST')?.position).toEqual([28, -13.1]);
  });
});

describe('scenario.json and decisions.json', () => {
  it('takes the clock from the longitude where the time zone is unknown', () => {
    const scenario = survives(withChange('scenario.json', 'Africa/Lusaka', 'Africa/Nowhere'), 'E1205', {
      value: 'Africa/Nowhere',
    });
    expect(scenario.utcOffsetMinutes).toBe(120);
  });

  it('notes a currency that is no code of ISO 4217, unknown entries and a calendar that looks wrong', () => {
    survives(withChange('scenario.json', 'ZMW', 'kwacha'), 'E1206', { value: 'kwacha' });
    survives(withChange('scenario.json', 'reservePercent', 'reservePercents'), 'E1204', {
      column: 'policy.reservePercents',
    });
    survives(withChange('scenario.json', '"asOf":"2026-11-04"', '"asOf":"2026-11-06"'), 'E1207', {});
    survives(withChange('scenario.json', '"seasonYear":2026', '"seasonYear":2024'), 'E1208', { value: '2024' });
    survives(withChange('scenario.json', '"yields":{"soybean":1.5}', '"yields":[1.5]'), 'E1209', { column: 'yields' });
  });

  it('sets malformed decisions aside by their place in the list and keeps the others in order', () => {
    const good = { kind: 'cap', communityId: 'C3', crop: 'soybean', commodity: 'seed', share: 0.5, because: 'agreed' };
    const sent = [
      good,
      { kind: 'cap', communityId: 'C3', crop: 'soybean', commodity: 'seed', share: 7 },
      { kind: 'flag-cleared', lotId: 'L1', evidence: 'count retested' },
      { kind: 'vehicle-away', vehicleId: 'MOTO#2', from: '2026-11-10', to: '2026-11-12' },
      { kind: 'vehicle-away', vehicleId: 'MOTO#3', from: '2026-11-10', to: '2026-11-12' },
      'nonsense',
      { kind: 'sharing', fairness: 'most-hectares', reservePercent: 5 },
      { kind: 'sharing', fairness: 'loudest first' },
      { kind: 'sharing', because: 'nothing said' },
      { kind: 'sharing', reservePercent: 101 },
    ];
    const reading = read({
      ...SMALL_FILES,
      'decisions.json': JSON.stringify({ format: 'nodulary-decisions/1', decisions: sent }),
    });
    expect(reading.decisions.decisions).toEqual([good, sent[3], sent[6]]);
    expect(problemsOf(reading, 'E1950').map(({ row, column }) => [row, column])).toEqual([
      [2, 'share'],
      [3, 'by'],
      [6, 'kind'],
      [8, 'fairness'],
      [9, 'fairness'],
      [10, 'reservePercent'],
    ]);
    expect(problemsOf(reading, 'E1952')).toMatchObject([{ row: 5, column: 'vehicleId', value: 'MOTO#3' }]);
  });

  it('never says of a hand-over that it has happened before it has', () => {
    expect(survives(withChange('handovers.csv', '2026-11-02', '2026-11-05'), 'E1960', { row: 2 }).handovers).toEqual(
      [],
    );
  });
});

it('gives every problem its code, weight and place, and says of each default where it comes from', () => {
  const { problems, scenario } = read(withChange('lots.csv', '40,cleared', '40,'));
  for (const { code, weight } of problems) expect(weight).toBe(PROBLEM_WEIGHTS[code]);
  for (const { column, source, status, rows } of scenario?.defaults ?? []) {
    expect(column).toMatch(/^[a-z.-]+\.(json|csv|geojson):\S+$/);
    expect([source.length > 0, status.length > 0, rows > 0]).toEqual([true, true, true]);
  }
  expect(ids(scenario?.communities ?? [])).toEqual(ALL_COMMUNITIES);
});
