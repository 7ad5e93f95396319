import { RandomStream } from '../../src/engine/numerics/random-stream.ts';

/** An invented scenario of many communities: squares on a grid, 300 zones, three crops; stock, roads and weather as small as can be. */
export function bigScenario(communities: number): Map<string, Uint8Array> {
  const random = new RandomStream(7);
  const across = Math.ceil(Math.sqrt(communities));
  const step = 0.02;
  const [west, south] = [25, -16];
  const square = (x: number, y: number, size: number) => [
    [
      [x, y],
      [x + size, y],
      [x + size, y + size],
      [x, y + size],
      [x, y],
    ].map(([lon, lat]) => [Number((lon as number).toFixed(6)), Number((lat as number).toFixed(6))]),
  ];
  const feature = (properties: object, type: string, coordinates: unknown) => ({
    type: 'Feature',
    properties,
    geometry: { type, coordinates },
  });
  const zoneSide = Math.ceil(across / 17.3);
  const zonesAcross = Math.ceil(across / zoneSide);
  const zones = Array.from({ length: zonesAcross * zonesAcross }, (_, i) =>
    feature(
      { zone_id: `Z${i + 1}`, name: `Zone ${i + 1}` },
      'Polygon',
      square(
        west + (i % zonesAcross) * zoneSide * step,
        south + Math.floor(i / zonesAcross) * zoneSide * step,
        zoneSide * step,
      ),
    ),
  );
  const places = Array.from({ length: communities }, (_, i) => {
    const [column, row] = [i % across, Math.floor(i / across)];
    const zone = Math.floor(row / zoneSide) * zonesAcross + Math.floor(column / zoneSide);
    const hectares = () => Number((random.next() * 12).toFixed(1));
    return feature(
      {
        community_id: `C${i + 1}`,
        name: `Community ${i + 1}`,
        zone_id: `Z${zone + 1}`,
        farmers: 20 + random.below(60),
        soybean_ha: hectares(),
        groundnut_ha: hectares(),
        cowpea_ha: hectares(),
      },
      'Polygon',
      square(west + column * step + 0.001, south + row * step + 0.001, 0.018),
    );
  });
  const middle = [west + (across * step) / 2, south + (across * step) / 2] as const;
  const road = feature({ class: 'secondary', oneway: 'no' }, 'LineString', [middle, [middle[0] + 0.05, middle[1]]]);
  const csv = (...lines: string[]) => `${lines.join('\n')}\n`;
  const weather = Array.from(
    { length: 20 },
    (_, day) => `S,${middle[1]},${middle[0]},2026-11-${String(day + 1).padStart(2, '0')},17,30,${day % 3}`,
  );
  const collection = (features: readonly object[]) => JSON.stringify({ type: 'FeatureCollection', features });
  const files = {
    'scenario.json': JSON.stringify({
      format: 'nodulary-scenario/1',
      name: `${communities} communities`,
      seasonYear: 2026,
      asOf: '2026-11-10',
      timeZone: 'Etc/GMT-2',
      currency: 'XTS',
      planning: { from: '2026-11-11', to: '2026-11-20' },
      seasons: [{ name: 'main', searchFrom: '11-01', searchTo: '01-15' }],
      files: {
        communities: 'communities.geojson',
        zones: 'zones.geojson',
        roads: 'roads.geojson',
        depots: 'depots.csv',
        products: 'products.csv',
        lots: 'lots.csv',
        vehicles: 'vehicles.csv',
        weather: 'weather.csv',
      },
    }),
    'communities.geojson': collection(places),
    'zones.geojson': collection(zones),
    'roads.geojson': collection([road]),
    'depots.csv': csv('depot_id,name,lat,lon,cool_store_litres', `D1,Depot,${middle[1]},${middle[0]},90000`),
    'products.csv': csv(
      'product_id,kind,crops,carrier,pack_size,pack_unit,dose_g_per_kg,count_per_g,thousand_seed_g,seed_rate_kg_ha,price_per_pack,litres_per_pack',
      'INO-S,inoculant,soybean,peat,100,g,5,1000000000,,,5,0.2',
      'SEED-S,seed,soybean,,10,kg,,,140,60,12,15',
      'SEED-G,seed,groundnut,,10,kg,,,420,80,12,15',
      'SEED-C,seed,cowpea,,5,kg,,,150,20,8,8',
    ),
    'lots.csv': csv(
      'lot_id,product_id,depot_id,packs,status,available_from,expires,tested_count_per_g,tested_on,germination_percent',
      'L1,INO-S,D1,200000,cleared,2026-10-01,2027-10-01,2000000000,2026-10-01,',
      'L2,SEED-S,D1,400000,cleared,2026-10-01,2027-10-01,,,88',
      'L3,SEED-G,D1,500000,cleared,2026-10-01,2027-10-01,,,85',
      'L4,SEED-C,D1,300000,cleared,2026-10-01,2027-10-01,,,82',
    ),
    'vehicles.csv': csv(
      'vehicle_id,kind,depot_id,payload_kg,cool_litres,ice_kg,roads_allowed',
      'V1,lorry,D1,5000,60,10,trunk;primary;secondary;tertiary',
    ),
    'weather.csv': csv('station_id,lat,lon,date,tmin_c,tmax_c,rain_mm', ...weather),
  };
  return new Map(Object.entries(files).map(([name, text]) => [name, new TextEncoder().encode(text)]));
}
