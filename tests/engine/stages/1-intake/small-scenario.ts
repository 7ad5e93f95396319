import { recordsFromFiles } from '../../../../src/adapters/scenario-files/record-files.ts';
import { readScenario, type ScenarioReading } from '../../../../src/engine/stages/1-intake/read-scenario.ts';
import type { Problem, ProblemCode } from '../../../../src/engine/vocabulary/problems.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';

/** Files of a scenario by path, as text or, where the encoding matters, as bytes. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

const square = (west: number, south: number): string => {
  const [east, north] = [west + 0.1, south + 0.1];
  return `[[[${west},${south}],[${east},${south}],[${east},${north}],[${west},${north}],[${west},${south}]]]`;
};
const feature = (properties: string, type: string, coordinates: string): string =>
  `{"type":"Feature","properties":{${properties}},"geometry":{"type":"${type}","coordinates":${coordinates}}}`;
const collection = (...features: string[]): string =>
  `{"type":"FeatureCollection","features":[\n${features.join(',\n')}\n]}`;
const days = (station: string, lat: number, lon: number): string[] =>
  Array.from(
    { length: 15 },
    (_, i) => `${station},${lat},${lon},2026-11-${String(i + 1).padStart(2, '0')},18.5,30.${i},${i % 3}`,
  );

/** A small valid scenario on an invented southern plateau; every file of the format is there. */
export const SMALL_FILES: Files = {
  'scenario.json': JSON.stringify({
    format: 'nodulary-scenario/1',
    name: 'Invented plateau',
    seasonYear: 2026,
    asOf: '2026-11-04',
    timeZone: 'Africa/Lusaka',
    currency: 'ZMW',
    planning: { from: '2026-11-05', to: '2026-12-15', workdays: [1, 2, 3, 4, 5], holidays: ['2026-11-20'] },
    seasons: [{ name: 'main', searchFrom: '10-15', searchTo: '01-31' }],
    policy: { fairness: 'most-hectares', reservePercent: 5 },
    prices: { nitrogen: 1.2, perDiem: 4 },
    yields: { soybean: 1.5 },
    files: {
      communities: 'communities.geojson',
      zones: 'zones.geojson',
      handoverPoints: 'handover-points.csv',
      cropWindows: 'crop-windows.csv',
      depots: 'depots.csv',
      products: 'products.csv',
      lots: 'lots.csv',
      vehicles: 'vehicles.csv',
      roads: 'roads.geojson',
      weather: 'weather.csv',
      handovers: 'handovers.csv',
      decisions: 'decisions.json',
    },
  }),
  'communities.geojson': collection(
    feature(
      '"community_id":"C1","name":"Musanga","zone_id":"Z1","farmers":100,"farmers_women":60,"soybean_ha":12.5,"groundnut_ha":3,"market_day":2,"priority":1',
      'Polygon',
      square(28.0, -13.1),
    ),
    feature(
      '"community_id":"C2","name":"Kalundu","farmers":80,"soybean_ha":7.5,"groundnut_ha":0,"soybean_own_seed_kg":40',
      'Polygon',
      square(28.1, -13.1),
    ),
    feature('"community_id":"C3","name":"Musanga","soybean_ha":4,"groundnut_ha":6.25', 'Point', '[28.25,-13.05]'),
    feature(
      '"community_id":"C4","name":"Chipeta","soybean_ha":9,"groundnut_ha":1',
      'MultiPolygon',
      `[${square(28.3, -13.0)}]`,
    ),
  ),
  'zones.geojson': collection(
    feature('"zone_id":"Z1","name":"West"', 'Polygon', square(28.0, -13.1)),
    feature('"zone_id":"Z2","name":"East"', 'Polygon', square(28.1, -13.1)),
  ),
  'handover-points.csv':
    'point_id,name,lat,lon,communities,opens,closes,store,contact\nP1,School,-13.05,28.05,C1;C2,07:00,15:00,room,\n',
  'crop-windows.csv': 'zone_id,crop,season,anchor,first_offset_days,last_offset_days\n,groundnut,main,12-01,0,20\n',
  'depots.csv':
    'depot_id,name,lat,lon,opens,closes,cool_store_litres,cool_store_c,ice_kg_per_day\nD1,Depot,-13.0,28.2,07:00,17:00,300,8,20\n',
  'products.csv': `product_id,kind,crops,carrier,pack_size,pack_unit,dose_g_per_kg,count_per_g,thousand_seed_g,seed_rate_kg_ha,treated_seed,rate_kg_ha
INO,inoculant,soybean,peat,100,g,5,1e9,,,,
SEED-S,seed,soybean,,10,kg,,,150,60,no,
SEED-G,seed,groundnut,,10,kg,,,420,80,no,
FERT,fertiliser,soybean;groundnut,,50,kg,,,,,,100
`,
  'lots.csv': `lot_id,product_id,depot_id,packs,status,available_from,expires,tested_count_per_g,germination_percent
L1,INO,D1,40,cleared,2026-10-01,2027-03-01,1.2e9,
L2,SEED-S,D1,150,cleared,,2027-06-30,,88
L3,SEED-G,D1,60,cleared,,2027-06-30,,84
`,
  'vehicles.csv': `vehicle_id,kind,depot_id,payload_kg,cool_litres,ice_kg,carriage,roads_allowed,count
TRUCK,truck,D1,3000,60,10,covered_bed,trunk;primary;secondary,
MOTO,motorcycle,D1,80,8,1,pannier,primary;secondary;track;path,2
`,
  'roads.geojson': collection(
    feature('"class":"secondary","surface":"gravel"', 'LineString', '[[28.05,-13.05],[28.15,-13.05],[28.2,-13.0]]'),
    feature('"class":"track","oneway":"no"', 'LineString', '[[28.2,-13.0],[28.25,-13.05]]'),
    feature(
      '"class":"secondary","oneway":"yes","closed_from":"2026-11-10","closed_to":"2026-11-12"',
      'LineString',
      '[[28.2,-13.0],[28.35,-12.95]]',
    ),
  ),
  'weather.csv': `station_id,lat,lon,date,tmin_c,tmax_c,rain_mm\n${[...days('WEST', -13.1, 28.0), ...days('EAST', -13.0, 28.3)].join('\n')}\n`,
  'handovers.csv': 'date,community_id,lot_id,packs\n2026-11-02,C1,L1,2\n',
  'decisions.json': JSON.stringify({
    format: 'nodulary-decisions/1',
    decisions: [{ kind: 'promise', communityId: 'C1', commodity: 'seed', date: '2026-11-12' }],
  }),
};

/** The small scenario with one piece of one file replaced, and some files put in place of others. */
export function withChange(file: string, from: string | RegExp, to: string, more: Files = {}): Files {
  const sent = SMALL_FILES[file];
  if (typeof sent !== 'string') throw new Error(`no text in ${file}`);
  const changed = sent.replace(from, () => to);
  if (changed === sent) throw new Error(`${file} does not hold ${from}`);
  return { ...SMALL_FILES, [file]: changed, ...more };
}

export function recordsOf(files: Files) {
  const encoder = new TextEncoder();
  const bytes = Object.entries(files).map(([path, sent]): [string, Uint8Array] => [
    path,
    typeof sent === 'string' ? encoder.encode(sent) : sent,
  ]);
  return recordsFromFiles(new Map(bytes));
}

export const read = (files: Files): ScenarioReading => readScenario(recordsOf(files));

/** The scenario of files that allow a plan. */
export function scenarioOf(files: Files): Scenario {
  const { scenario, problems } = read(files);
  if (scenario === null) throw new Error(`blocked: ${JSON.stringify(problems)}`);
  return scenario;
}

export const problemsOf = (reading: ScenarioReading, code: ProblemCode): readonly Problem[] =>
  reading.problems.filter((problem) => problem.code === code);
