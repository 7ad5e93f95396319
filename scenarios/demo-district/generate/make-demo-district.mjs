// Writes the files of the demonstration district beside this folder: node scenarios/demo-district/generate/make-demo-district.mjs
// Everything is invented: land, names, people, stock and weather. Same seed, same files.
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { draws, rounded } from './draws.mjs';
import { makeLand, toLonLat } from './land.mjs';
import { makeRiver, makeRoads } from './roads.mjs';
import { makeWeather } from './weather.mjs';

const SEED = 2026;
const CORNER = [27.9, -14.05]; // middle of the district, on a plateau of the southern hemisphere
const HALF_KM = [46, 34];
const COMMUNITIES = 180;
const ZONES = 14;
const CROPS = [
  { crop: 'soybean', rate: 60, ha: [3, 14], grows: 0.8 },
  { crop: 'groundnut', rate: 80, ha: [1, 8], grows: 0.75 },
  { crop: 'cowpea', rate: 20, ha: [0.5, 5], grows: 0.5 },
  { crop: 'common_bean', rate: 70, ha: [0.5, 4], grows: 0.4 },
];
const ZONE_NAMES = ['Aldevu', 'Brisolo', 'Cheverin', 'Dorumel', 'Esparo', 'Fendowa', 'Gelindra', 'Hovaret', 'Istemu', 'Jorvala', 'Kelthoro', 'Lumivar', 'Mestoru', 'Novadel'];

/** Names put together from syllables that belong to no language in particular. */
function makeNames(random, count) {
  const starts = ['Zel', 'Vor', 'Tav', 'Mis', 'Ker', 'Dov', 'Lun', 'Phe', 'Ruv', 'Sel', 'Yor', 'Nev', 'Bro', 'Cal', 'Del', 'Fen', 'Gor', 'Hul'];
  const middles = ['a', 'e', 'i', 'o', 'u', 'an', 'el', 'or'];
  const ends = ['dara', 'moth', 'vick', 'lune', 'tisa', 'vero', 'polo', 'shari', 'gel', 'mire', 'dust', 'weld'];
  const names = new Set();
  while (names.size < count) names.add(random.one(starts) + random.one(middles) + random.one(ends));
  return [...names];
}

/** Receivers, as invented as their places; the numbers are no country's. */
function makeReceivers(random, count) {
  const first = ['Rutelo', 'Elvasi', 'Agatho', 'Petrun', 'Lodisa', 'Joshan', 'Mirela', 'Tomave', 'Sabeth', 'Orlandu', 'Nesira', 'Davolo'];
  const last = ['Chivoru', 'Tamvelo', 'Molevan', 'Nsamero', 'Karuvel', 'Mwendor', 'Sitelo', 'Velumar', 'Bandrosi', 'Phirenu'];
  return Array.from({ length: count }, () => `${random.one(first)} ${random.one(last)}; 000 ${random.whole(100, 999)} ${random.whole(100, 999)}`);
}

const folder = fileURLToPath(new URL('..', import.meta.url));
const write = (name, text) => writeFileSync(`${folder}${name}`, text);
const csv = (columns, rows) => `${[columns, ...rows.map((row) => row.join(','))].join('\n')}\n`;
const collection = (features) => `{"type":"FeatureCollection","features":[\n${features.map((f) => JSON.stringify(f)).join(',\n')}\n]}\n`;
const feature = (properties, type, coordinates) => ({ type: 'Feature', properties, geometry: { type, coordinates } });

export function makeDemoDistrict(emit) {
  const random = draws(SEED);
  const land = makeLand({ seed: SEED, communities: COMMUNITIES, zones: ZONES, halfKm: HALF_KM });
  const lonLat = toLonLat(CORNER);
  const place = (point) => lonLat(point);
  const names = makeNames(random, COMMUNITIES);
  const nearestHome = (x, y) => land.homes.reduce((best, p, i) => (dist(p, [x, y]) < dist(land.homes[best], [x, y]) ? i : best), 0);
  const dist = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);
  const depotHomes = [nearestHome(-14, 6), nearestHome(20, -8), nearestHome(-6, -18)];
  const river = makeRiver(SEED + 1, HALF_KM);
  const roads = makeRoads({ seed: SEED + 2, homes: land.homes, neighbours: land.neighbours, depots: depotHomes.slice(0, 2), river });

  const communities = land.rings.map((ring, i) => {
    const properties = { community_id: `C${String(i + 1).padStart(3, '0')}`, name: names[i], zone_id: `Z${String(land.zoneOf[i] + 1).padStart(2, '0')}` };
    const farmers = random.whole(18, 75);
    properties.farmers = farmers;
    properties.farmers_women = Math.round(farmers * random.between(0.38, 0.66));
    for (const { crop, ha, grows, rate } of CROPS) {
      const planted = random.chance(grows);
      const hectares = planted ? rounded(random.between(...ha), 1) : 0;
      properties[`${crop}_ha`] = hectares;
      if (planted) properties[`${crop}_growers`] = Math.min(farmers, Math.max(3, Math.round(hectares * random.between(2, 4.5))));
      if (planted && random.chance(0.35)) properties[`${crop}_own_seed_kg`] = Math.round(hectares * rate * random.between(0.1, 0.5));
    }
    properties.priority = random.one([1, 1, 2, 3]);
    properties.market_day = random.whole(1, 6);
    if (random.chance(0.6)) properties.last_inoculated_year = random.whole(2021, 2025);
    properties.store = random.one(['room', 'room', 'room', 'clay_pot', 'fridge']);
    return feature(properties, 'Polygon', [ring.map(place)]);
  });
  emit('communities.geojson', collection(communities));
  emit('zones.geojson', collection(land.zoneRings.map((loops, zone) => feature({ zone_id: `Z${String(zone + 1).padStart(2, '0')}`, name: ZONE_NAMES[zone] }, 'MultiPolygon', loops.map((loop) => [loop.map(place)])))));
  const receivers = makeReceivers(draws(SEED + 5), COMMUNITIES);
  emit('handover-points.csv', csv('point_id,name,lat,lon,communities,opens,closes,store,contact', land.homes.map((home, i) => {
    const [lon, lat] = place(home);
    const { community_id: id, store } = communities[i].properties;
    return [`P${id.slice(1)}`, `${names[i]} ${random.one(['school', 'store', 'hall', 'clinic yard', 'market'])}`, lat, lon, id, '06:30', '17:00', store, receivers[i]];
  })));
  emit('roads.geojson', collection(roads.map(({ line, roadClass, surface, isDrift }) => feature({ class: roadClass, surface, oneway: 'no', ...(isDrift ? { closed_from: '2026-11-09', closed_to: '2026-12-14', name: 'The drift' } : {}) }, 'LineString', line.map(place)))));
  emit('river.geojson', collection([feature({ name: 'Ovelu' }, 'LineString', river.map(place))]));

  const [main, east, group] = depotHomes.map((home) => place(land.homes[home]));
  emit('depots.csv', csv('depot_id,name,lat,lon,kind,opens,closes,cool_store_litres,cool_store_c,ice_kg_per_day,loading_minutes_per_t,elevation_m', [
    ['D-CENTRAL', 'Central store', main[1], main[0], 'depot', '05:30', '17:30', 900, 6, 30, 25, 1190],
    ['D-EAST', 'East store', east[1], east[0], 'depot', '05:30', '17:30', 420, 10, 12, 25, 1140],
    ['D-GROUP', 'Southern seed group', group[1], group[0], 'seed_group', '06:00', '16:00', 0, '', 0, 30, 1165],
  ]));

  const { products, lots } = makeStock(totals(communities));
  emit('products.csv', csv(products.columns, products.rows));
  emit('lots.csv', csv(lots.columns, lots.rows));
  const hard = 'trunk;primary;secondary;tertiary;unclassified';
  emit('vehicles.csv', csv('vehicle_id,kind,depot_id,payload_kg,cool_litres,cool_ua_w_per_k,ice_kg,carriage,cost_per_km,cost_per_day,crew,per_diem,shift_start,max_hours,roads_allowed,count', [
    ['LORRY-A', 'lorry', 'D-CENTRAL', 7000, 96, 1.1, 14, 'covered_bed', 1.9, 120, 3, 12, '05:30', 9, hard, 1],
    ['LORRY-B', 'lorry', 'D-EAST', 5000, 60, 1.0, 10, 'covered_bed', 1.6, 105, 3, 12, '05:30', 9, hard, 1],
    ['PICKUP-A', 'pickup', 'D-CENTRAL', 1000, 45, 0.6, 9, 'covered_bed', 0.85, 62, 2, 12, '05:30', 9, `${hard};track`, 2],
    ['PICKUP-B', 'pickup', 'D-EAST', 900, 40, 0.6, 8, 'open_bed', 0.85, 58, 2, 12, '05:30', 9, `${hard};track`, 1],
    ['PICKUP-C', 'pickup', 'D-GROUP', 900, 0, '', '', 'open_bed', 0.85, 58, 2, 12, '06:00', 9, `${hard};track`, 1],
    ['MOTO-A', 'motorcycle', 'D-CENTRAL', 60, 8, 0.25, 1.6, 'pannier', 0.16, 16, 1, 12, '05:30', 8, `${hard};track;path`, 1],
    ['MOTO-B', 'motorcycle', 'D-EAST', 60, 8, 0.25, '', 'pannier', 0.16, 16, 1, 12, '05:30', 8, `${hard};track;path`, 1],
  ]));
  const station = (id, point, elevationM, warmerC, wetter) => {
    const [lon, lat] = place(point);
    return { id, lon, lat, elevationM, warmerC, wetter };
  };
  const stations = [station('MET-RIDGE', [-20, 14], 1260, -0.6, 1.05), station('MET-MIDDLE', [2, -2], 1180, 0, 1), station('MET-VALLEY', [28, -16], 1080, 0.9, 0.93)];
  emit('weather.csv', csv('station_id,lat,lon,elevation_m,date,tmin_c,tmax_c,rain_mm', makeWeather({ seed: SEED + 3, stations, from: [1996, 6, 1], to: [2026, 10, 22] })));
  emit('scenario.json', `${JSON.stringify(scenarioDocument(), null, 2)}\n`);
}

function totals(communities) {
  return Object.fromEntries(CROPS.map(({ crop, rate }) => {
    const hectares = communities.reduce((sum, { properties }) => sum + properties[`${crop}_ha`], 0);
    const own = communities.reduce((sum, { properties }) => sum + (properties[`${crop}_own_seed_kg`] ?? 0), 0);
    return [crop, { hectares, seedKg: hectares * rate, broughtKg: hectares * rate - own }];
  }));
}

/** Stock as shares of need: soybean inoculant and cowpea seed are short; one lot expires early, one is on hold. */
function makeStock(need) {
  const products = {
    columns: 'product_id,kind,crops,carrier,carrier_sterile,pack_size,pack_unit,dose_g_per_kg,count_per_g,max_storage_c,opened_pack_days,water_ml_per_kg,grams_per_level_cap,thousand_seed_g,seed_rate_kg_ha,min_germination,shelled,treated_seed,price_per_pack,lead_days,order_multiple,litres_per_pack',
    rows: [
      ['INO-SOY-100G', 'inoculant', 'soybean', 'peat', 'yes', 100, 'g', 5, 1e9, 30, 7, 15, 4.5, '', '', '', '', '', 6, 21, 20, 0.2],
      ['INO-GNUT-100G', 'inoculant', 'groundnut', 'peat', 'yes', 100, 'g', 5, 1e9, 30, 7, 15, 4.5, '', '', '', '', '', 6, 21, 20, 0.2],
      ['INO-COWP-100G', 'inoculant', 'cowpea;mung_bean;bambara', 'peat', '', 100, 'g', 5, 1e9, 30, 7, 15, 4.5, '', '', '', '', '', 6, 21, 20, 0.2],
      ['INO-BEAN-100G', 'inoculant', 'common_bean', 'peat', '', 100, 'g', 5, 1e9, 30, 7, 15, 4.5, '', '', '', '', '', 6, 21, 20, 0.2],
      ['SEED-SOY-25KG', 'seed', 'soybean', '', '', 25, 'kg', '', '', '', '', '', '', 140, 60, 80, '', 'no', 32, 14, 10, 38],
      ['SEED-SOY-5KG', 'seed', 'soybean', '', '', 5, 'kg', '', '', '', '', '', '', 140, 60, 80, '', 'no', 7, 14, 10, 8],
      ['SEED-GNUT-10KG', 'seed', 'groundnut', '', '', 10, 'kg', '', '', '', '', '', '', 420, 80, 75, 'yes', 'no', 19, 14, 10, 20],
      ['SEED-GNUT-5KG', 'seed', 'groundnut', '', '', 5, 'kg', '', '', '', '', '', '', 420, 80, 75, 'yes', 'no', 10, 14, 10, 10],
      ['SEED-COWP-5KG', 'seed', 'cowpea', '', '', 5, 'kg', '', '', '', '', '', '', 150, 20, 75, '', 'no', 8, 14, 10, 8],
      ['SEED-COWP-2KG', 'seed', 'cowpea', '', '', 2, 'kg', '', '', '', '', '', '', 150, 20, 75, '', 'no', 3.5, 14, 10, 3.2],
      ['SEED-BEAN-10KG', 'seed', 'common_bean', '', '', 10, 'kg', '', '', '', '', '', '', 380, 70, 75, '', 'no', 17, 14, 10, 15],
      ['SEED-BEAN-5KG', 'seed', 'common_bean', '', '', 5, 'kg', '', '', '', '', '', '', 380, 70, 75, '', 'no', 9, 14, 10, 8],
    ],
  };
  const rows = [];
  const lot = (id, product, depot, packs, status, from, expires, count, tested, germination) => rows.push([id, product, depot, Math.round(packs), status, from, expires, count, tested, germination]);
  const inoculant = (crop, share) => (need[crop].seedKg * share * 5) / 100;
  const packsOf = (crop, share, kg) => (need[crop].broughtKg * share) / kg;
  lot('SB-0702', 'INO-SOY-100G', 'D-CENTRAL', inoculant('soybean', 0.38), 'cleared', '2026-10-12', '2027-04-30', 1.9e9, '2026-10-02', '');
  lot('SB-0688', 'INO-SOY-100G', 'D-CENTRAL', inoculant('soybean', 0.12), 'cleared', '2026-07-01', '2026-12-18', 1.1e9, '2026-09-28', '');
  lot('SB-0699', 'INO-SOY-100G', 'D-EAST', inoculant('soybean', 0.22), 'cleared', '2026-10-12', '2027-03-31', 1.7e9, '2026-10-02', '');
  lot('SB-0671', 'INO-SOY-100G', 'D-EAST', inoculant('soybean', 0.15), 'on_hold', '2026-06-10', '2027-01-31', '', '', '');
  lot('GN-0615', 'INO-GNUT-100G', 'D-CENTRAL', inoculant('groundnut', 0.62), 'cleared', '2026-10-12', '2027-05-31', 2.1e9, '2026-10-02', '');
  lot('GN-0618', 'INO-GNUT-100G', 'D-EAST', inoculant('groundnut', 0.46), 'cleared', '2026-10-12', '2027-05-31', 2.1e9, '2026-10-02', '');
  lot('CP-0304', 'INO-COWP-100G', 'D-CENTRAL', inoculant('cowpea', 1.1), 'cleared', '2026-10-12', '2027-05-31', 1.6e9, '2026-10-02', '');
  lot('CB-0120', 'INO-BEAN-100G', 'D-EAST', inoculant('common_bean', 1.08), 'cleared', '2026-10-12', '2027-05-31', 1.4e9, '2026-10-02', '');
  for (const [depot, share] of [['D-CENTRAL', 0.56], ['D-EAST', 0.4]]) {
    const tail = depot.slice(2, 3);
    lot(`S-SOY-25-${tail}`, 'SEED-SOY-25KG', depot, packsOf('soybean', share * 0.8, 25), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 88);
    lot(`S-SOY-5-${tail}`, 'SEED-SOY-5KG', depot, packsOf('soybean', share * 0.25, 5), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 88);
    lot(`S-GN-10-${tail}`, 'SEED-GNUT-10KG', depot, packsOf('groundnut', share * 0.7, 10), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 84);
    lot(`S-GN-5-${tail}`, 'SEED-GNUT-5KG', depot, packsOf('groundnut', share * 0.2, 5), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 84);
    lot(`S-CP-5-${tail}`, 'SEED-COWP-5KG', depot, packsOf('cowpea', share * 0.5, 5), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 81);
    lot(`S-CP-2-${tail}`, 'SEED-COWP-2KG', depot, packsOf('cowpea', share * 0.26, 2), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 81);
    lot(`S-CB-10-${tail}`, 'SEED-BEAN-10KG', depot, packsOf('common_bean', share * 0.8, 10), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 86);
    lot(`S-CB-5-${tail}`, 'SEED-BEAN-5KG', depot, packsOf('common_bean', share * 0.3, 5), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 86);
  }
  lot('S-GN-GROUP', 'SEED-GNUT-10KG', 'D-GROUP', packsOf('groundnut', 0.12, 10), 'cleared', '2026-09-20', '2027-06-30', '', '2026-09-12', 82);
  lot('S-CP-HELD', 'SEED-COWP-5KG', 'D-CENTRAL', packsOf('cowpea', 0.2, 5), 'cleared', '2026-09-15', '2027-06-30', '', '2026-09-01', 58);
  return { products, lots: { columns: 'lot_id,product_id,depot_id,packs,status,available_from,expires,tested_count_per_g,tested_on,germination_percent', rows } };
}

function scenarioDocument() {
  return {
    format: 'nodulary-scenario/1',
    name: 'Ovelu plateau (invented)',
    seasonYear: 2026,
    asOf: '2026-11-12',
    timeZone: 'Etc/GMT-2',
    currency: 'USD',
    planning: { from: '2026-11-16', to: '2026-12-12', workdays: [1, 2, 3, 4, 5, 6], holidays: [] },
    seasons: [{ name: 'main', searchFrom: '10-15', searchTo: '01-15' }],
    policy: { fairness: 'equal-share', reservePercent: 2, contingencyPercent: 0, cellsPerSeedFloor: 100000, heatRule: 'label', trainingMinutes: 20, carry: 'apart' },
    prices: { nitrogen: 1.52, grain: { soybean: 420, groundnut: 780, cowpea: 560, common_bean: 700 }, ice: 0.1 },
    yields: { soybean: 1.1, groundnut: 0.9, cowpea: 0.5, common_bean: 0.7 },
    assumptions: {},
    files: Object.fromEntries([
      ['communities', 'communities.geojson'],
      ['zones', 'zones.geojson'],
      ['handoverPoints', 'handover-points.csv'],
      ['depots', 'depots.csv'],
      ['products', 'products.csv'],
      ['lots', 'lots.csv'],
      ['vehicles', 'vehicles.csv'],
      ['roads', 'roads.geojson'],
      ['weather', 'weather.csv'],
    ]),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(folder, { recursive: true });
  makeDemoDistrict(write);
}
