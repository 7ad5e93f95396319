import { type DayNumber, dayFromCivil, isoDate } from '../../src/engine/index.ts';
import { RandomStream } from '../../src/engine/numerics/random-stream.ts';

/** `ample`: stock, vehicles, ice and days enough that nothing may be left out. `any`: everything may be short or odd. */
export type Kind = 'ample' | 'any';

/** Draws with which a scenario is made up; the same seed makes the same scenario. */
class Draws {
  private readonly stream: RandomStream;

  constructor(seed: number) {
    this.stream = new RandomStream(seed);
  }

  whole(low: number, high: number): number {
    return low + this.stream.below(high - low + 1);
  }

  between(low: number, high: number, decimals = 3): number {
    return Number((low + (high - low) * this.stream.next()).toFixed(decimals));
  }

  one<T>(choices: readonly T[]): T {
    return choices[this.stream.below(choices.length)] as T;
  }

  chance(p: number): boolean {
    return this.stream.next() < p;
  }
}

type Point = readonly [number, number];
const CROP_FACTS = [
  { crop: 'soybean', rate: 60, tsw: 140, dose: 5 },
  { crop: 'groundnut', rate: 80, tsw: 420, dose: 5 },
  { crop: 'cowpea', rate: 20, tsw: 160, dose: 10 },
  { crop: 'common_bean', rate: 70, tsw: 380, dose: 10 },
] as const;

const csv = (columns: string, rows: readonly (readonly (string | number)[])[]) =>
  `${[columns, ...rows.map((row) => row.join(','))].join('\r\n')}\r\n`;
const collection = (features: readonly object[]) => JSON.stringify({ type: 'FeatureCollection', features });
const feature = (properties: object, type: string, coordinates: unknown) => ({
  type: 'Feature',
  properties,
  geometry: { type, coordinates },
});
const box = ([west, south]: Point, width: number, height: number) => [
  [
    [west, south],
    [west + width, south],
    [west + width, south + height],
    [west, south + height],
    [west, south],
  ],
];

/** Files of an invented scenario on a southern plateau, as bytes by name. */
export function randomScenario(seed: number, kind: Kind): Map<string, Uint8Array> {
  const draws = new Draws(seed);
  // Draws of its own, so that a scenario is the same but for its fertiliser.
  const fertiliser = new Draws(seed + 1_000_000);
  const ample = kind === 'ample';
  const corner: Point = [draws.between(26, 32, 2), draws.between(-16, -10, 2)];
  const crops = CROP_FACTS.slice(0, draws.whole(1, 3));
  const columns = draws.whole(1, 3);
  const rows = draws.whole(1, 2);
  const cell = 0.2;
  const at = (fx: number, fy: number): Point => [
    Number((corner[0] + fx * cell * columns).toFixed(6)),
    Number((corner[1] + fy * cell * rows).toFixed(6)),
  ];

  const zones = Array.from({ length: columns * rows }, (_, i) =>
    feature(
      { zone_id: `Z${i + 1}`, name: `Zone ${i + 1}` },
      'Polygon',
      box([corner[0] + (i % columns) * cell, corner[1] + Math.floor(i / columns) * cell], cell, cell),
    ),
  );

  const depots = Array.from({ length: draws.whole(1, 2) }, () => at(draws.between(0.2, 0.8), draws.between(0.2, 0.8)));
  const homes = Array.from({ length: draws.whole(2, 14) }, () =>
    at(draws.between(0.03, 0.97), draws.between(0.03, 0.97)),
  );
  const communities = homes.map((home, i) => {
    const properties: Record<string, unknown> = {
      community_id: `C${i + 1}`,
      name: `Community ${i + 1}`,
      farmers: draws.whole(5, 200),
    };
    for (const { crop } of crops) {
      properties[`${crop}_ha`] = draws.chance(0.25) ? 0 : draws.between(0.2, 12, 1);
      if (draws.chance(0.3)) properties[`${crop}_own_seed_kg`] = draws.whole(0, 120);
    }
    if (draws.chance(0.5)) properties['priority'] = draws.whole(1, 3);
    if (!ample && draws.chance(0.2)) properties['market_day'] = draws.whole(1, 7);
    const size = draws.between(0.005, 0.03);
    return draws.chance(0.6)
      ? feature(properties, 'Polygon', box([home[0] - size / 2, home[1] - size / 2], size, size))
      : feature(properties, 'Point', home);
  });

  return new Map(
    Object.entries({
      'scenario.json': JSON.stringify(scenarioDocument(draws, ample, seed)),
      'communities.geojson': collection(communities),
      'zones.geojson': collection(zones),
      'roads.geojson': collection(roads(draws, ample, [...depots, ...homes])),
      'depots.csv': csv(
        'depot_id,name,lat,lon,opens,closes,cool_store_litres,cool_store_c,ice_kg_per_day',
        depots.map(([lon, lat], i) => [
          `D${i + 1}`,
          `Depot ${i + 1}`,
          lat,
          lon,
          '06:00',
          '18:00',
          5000,
          draws.whole(4, 14),
          ample ? 500 : draws.whole(0, 40),
        ]),
      ),
      ...stock(draws, fertiliser, ample, crops, depots.length),
      'vehicles.csv': vehicles(draws, ample, depots.length),
      'weather.csv': weather(draws, ample, at(0.5, 0.5)),
    }).map(([name, text]) => [name, new TextEncoder().encode(text)]),
  );
}

function scenarioDocument(draws: Draws, ample: boolean, seed: number) {
  return {
    format: 'nodulary-scenario/1',
    name: `Invented scenario ${seed}`,
    seasonYear: 2026,
    asOf: '2026-11-10',
    timeZone: 'Etc/GMT-2',
    currency: 'XTS',
    planning: {
      from: '2026-11-11',
      to: ample ? '2026-12-10' : draws.one(['2026-11-20', '2026-12-10']),
      workdays: [1, 2, 3, 4, 5, 6],
    },
    seasons: [{ name: 'main', searchFrom: '11-01', searchTo: '01-15' }],
    policy: {
      fairness: ample ? 'equal-share' : draws.one(['equal-share', 'most-hectares', 'priority-first']),
      reservePercent: ample ? 0 : draws.whole(0, 10),
      trainingMinutes: draws.whole(0, 30),
      carry: draws.one(['apart', 'together']),
      ...(!ample && draws.chance(0.2) ? { marketDays: 'only' } : {}),
      ...(!ample && draws.chance(0.2) ? { hoursAboveStorage: draws.between(0, 3, 1) } : {}),
      ...(!ample && draws.chance(0.4) ? { equalOver: draws.one(['zone', 'grower']) } : {}),
      ...(!ample && draws.chance(0.3) ? { priorityWeights: [2, 1.5, 1] } : {}),
      ...(!ample && draws.chance(0.3) ? { hectareValue: 'gain' } : {}),
      ...(!ample && draws.chance(0.5) ? { orderBudget: draws.whole(0, 3000) } : {}),
      ...(!ample && draws.chance(0.6)
        ? { restAfterHours: draws.between(0.3, 2, 2), restMinutes: draws.whole(0, 60) }
        : {}),
    },
    ...(draws.chance(0.5) ? { prices: { nitrogen: 1.4 } } : {}),
    files: Object.fromEntries(
      ['communities', 'zones', 'roads']
        .map((part) => [part, `${part}.geojson`])
        .concat(['depots', 'products', 'lots', 'vehicles', 'weather'].map((part) => [part, `${part}.csv`])),
    ),
  };
}

/** A tree that joins every place to its nearest earlier one, and some more roads; in odd scenarios some are missing. */
function roads(draws: Draws, ample: boolean, places: readonly Point[]) {
  const lines: object[] = [];
  const line = (from: Point, to: Point, more: object = {}) =>
    lines.push(
      feature(
        {
          class: ample
            ? draws.one(['secondary', 'tertiary'])
            : draws.one(['secondary', 'tertiary', 'unclassified', 'track', 'path']),
          surface: ample ? 'gravel' : draws.one(['paved', 'gravel', 'earth']),
          oneway: 'no',
          ...more,
        },
        'LineString',
        [from, to],
      ),
    );
  const nearest = (i: number, among: readonly Point[]) =>
    among.reduce((best, p) => (apart(p, places[i] as Point) < apart(best, places[i] as Point) ? p : best));
  places.forEach((place, i) => {
    if (i > 0 && (ample || draws.chance(0.9))) line(place, nearest(i, places.slice(0, i)));
    if (i > 1 && draws.chance(0.4)) {
      const closes = !ample && draws.chance(0.3) ? { closed_from: '2026-11-15', closed_to: '2026-11-25' } : {};
      line(place, draws.one(places.slice(0, i)), { oneway: !ample && draws.chance(0.3) ? 'yes' : 'no', ...closes });
    }
  });
  return lines;
}

const apart = (a: Point, b: Point) => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2;

function stock(
  draws: Draws,
  fertiliser: Draws,
  ample: boolean,
  crops: readonly (typeof CROP_FACTS)[number][],
  depotCount: number,
) {
  const products: (string | number)[][] = [];
  const lots: (string | number)[][] = [];
  const lot = (product: string, depot: number, most: number, count: number | '', germination: number | '') =>
    lots.push([
      `L${lots.length + 1}`,
      product,
      `D${depot}`,
      ample ? most : draws.whole(0, most),
      ample ? 'cleared' : draws.one(['cleared', 'cleared', 'cleared', 'on_hold', 'awaiting']),
      ample ? '2026-10-01' : draws.one(['2026-10-01', '2026-11-15']),
      ample ? '2027-10-01' : draws.one(['2027-10-01', '2027-02-01', '2026-11-05']),
      count,
      count === '' ? '' : '2026-10-20',
      germination,
    ]);
  for (const { crop, rate, tsw, dose } of crops) {
    if (ample || draws.chance(0.9))
      products.push([`INO-${crop}`, 'inoculant', crop, 'peat', 100, 'g', dose, '1000000000', 30, '', '', 5, 0.2]);
    products.push([`SEED-${crop}-10`, 'seed', crop, '', 10, 'kg', '', '', '', tsw, rate, 12, 15]);
    products.push([`SEED-${crop}-2`, 'seed', crop, '', 2, 'kg', '', '', '', tsw, rate, 3, 3]);
    for (let depot = 1; depot <= depotCount; depot++) {
      if (products.some(([id]) => id === `INO-${crop}`))
        lot(`INO-${crop}`, depot, ample ? 4000 : 60, draws.one([1.5e9, 9e8]), '');
      lot(`SEED-${crop}-10`, depot, ample ? 4000 : 120, '', draws.one(ample ? [85, 92] : [85, 60]));
      lot(`SEED-${crop}-2`, depot, ample ? 4000 : 100, '', '');
    }
  }
  for (const [i, size] of [50, 25].entries()) {
    if (!fertiliser.chance(0.5)) continue;
    const named = fertiliser.chance(0.5) ? crops : crops.slice(0, 1);
    const rate = fertiliser.whole(40, 120);
    const row = [
      `P-${size}`,
      'fertiliser',
      named.map(({ crop }) => crop).join(';'),
      '',
      size,
      'kg',
      '',
      '',
      '',
      '',
      '',
    ];
    products.push([...row, size / 2, '', rate, fertiliser.one([8.7, 20, ''])]);
    for (let depot = 1; depot <= depotCount; depot++) {
      const packs = ample ? 4000 : fertiliser.whole(0, 60);
      lots.push([
        `P${i}-D${depot}`,
        `P-${size}`,
        `D${depot}`,
        packs,
        'cleared',
        '2026-10-01',
        '2029-10-01',
        '',
        '',
        '',
      ]);
    }
  }
  return {
    'products.csv': csv(
      'product_id,kind,crops,carrier,pack_size,pack_unit,dose_g_per_kg,count_per_g,max_storage_c,thousand_seed_g,seed_rate_kg_ha,price_per_pack,litres_per_pack,rate_kg_ha,p_percent',
      products.map((row) => [...row, ...Array<string>(15 - row.length).fill('')]),
    ),
    'lots.csv': csv(
      'lot_id,product_id,depot_id,packs,status,available_from,expires,tested_count_per_g,tested_on,germination_percent',
      lots,
    ),
  };
}

function vehicles(draws: Draws, ample: boolean, depotCount: number): string {
  const roadsAllowed = 'trunk;primary;secondary;tertiary;unclassified;track';
  const rows: (string | number)[][] = [];
  for (let depot = 1; depot <= depotCount; depot++) {
    const id = `D${depot}`;
    rows.push([
      `PICKUP-${id}`,
      'pickup',
      id,
      draws.whole(500, 1000),
      40,
      0.6,
      9.6,
      'covered_bed',
      0.8,
      60,
      9,
      roadsAllowed,
      ample ? 4 : draws.whole(1, 2),
    ]);
    if (draws.chance(0.6))
      rows.push([`MOTO-${id}`, 'motorcycle', id, 60, 8, 0.25, 1.6, 'pannier', 0.2, 15, 8, `${roadsAllowed};path`, 1]);
    if (ample || draws.chance(0.5))
      rows.push([
        `LORRY-${id}`,
        'lorry',
        id,
        5000,
        100,
        1,
        19,
        'covered_bed',
        1.5,
        110,
        9,
        roadsAllowed.replace(';track', ''),
        2,
      ]);
  }
  return csv(
    'vehicle_id,kind,depot_id,payload_kg,cool_litres,cool_ua_w_per_k,ice_kg,carriage,cost_per_km,cost_per_day,max_hours,roads_allowed,count',
    rows,
  );
}

/**
 * Four past seasons and the days up to the forecast: dry and hot until the rains, which come between early November and
 * early December; in ample scenarios soon enough, and without long breaks, for every season to have an onset.
 */
function weather(draws: Draws, ample: boolean, [lon, lat]: Point): string {
  const rows: (string | number)[][] = [];
  for (let year = 2022; year <= 2026; year++) {
    const rains = dayFromCivil(year, 11, 1) + draws.whole(8, ample ? 15 : 35);
    const first = dayFromCivil(year, 10, 1);
    const last = year === 2026 ? dayFromCivil(2026, 11, 20) : dayFromCivil(year + 1, 3, 1);
    for (let day: number = first; day <= last; day++) {
      const wet = day >= rains && draws.chance(ample ? 0.8 : 0.55);
      const tmax = (wet ? 26 : 31) + draws.between(0, ample ? 3 : 8, 1);
      rows.push([
        'STATION',
        lat,
        lon,
        isoDate(day as DayNumber),
        draws.between(14, 19, 1),
        tmax,
        wet ? draws.between(2, ample ? 9 : 30, 1) : 0,
      ]);
    }
  }
  return csv('station_id,lat,lon,date,tmin_c,tmax_c,rain_mm', rows);
}
