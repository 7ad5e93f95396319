import type { Allocation, ProductKind, Scenario } from '../../vocabulary/index.ts';
import type { DrivenLoads } from './prepare-play.ts';

/** Packs of one lot, handed over to a community for one crop at one visit. */
export interface HandedGoods {
  /** Row of the allocation's shares. */
  readonly shareRow: number;
  readonly lot: number;
  readonly kind: ProductKind;
  /** Planning day, offset from planning.from. */
  readonly day: number;
  /** Index among the visits. */
  readonly visit: number;
  readonly packs: number;
  /** Contents of the packs. */
  readonly kg: number;
  /** Seed that these packs are (seed) or coat (inoculant), kg. */
  readonly seedKg: number;
  /** log10 of the cells lost on the road; nought for dry goods. */
  readonly roadLog10: number;
}

/** One stop of a trip, as planned. */
export interface Visit {
  readonly vehicle: number;
  /** Counts the trips of the delivery. */
  readonly trip: number;
  readonly day: number;
  readonly site: number;
  readonly loads: readonly number[];
  readonly hasInoculant: boolean;
  /** Hottest that the packs have been by the end of the stop, °C, and where the air is hotter by the hot band; NaN without inoculant. */
  readonly packMaxC: number;
  readonly hotBandMaxC: number;
  readonly log10Loss: number;
}

/** Every stop, in the order of the delivery. */
export function listVisits({ vehicleDays, loads }: DrivenLoads): Visit[] {
  let trip = -1;
  return vehicleDays.flatMap(({ vehicle, day, trips }) =>
    trips.flatMap(({ stops }) => {
      trip++;
      const own = trip;
      return stops.map((stop) => ({
        vehicle,
        trip: own,
        day,
        site: stop.site,
        loads: stop.loads,
        hasInoculant: stop.loads.some((load) => (loads[load]?.inoculantKg ?? 0) > 0),
        packMaxC: stop.packMaxC,
        hotBandMaxC: stop.hotBandMaxC,
        log10Loss: stop.log10Loss,
      }));
    }),
  );
}

/** Everything that a served load holds, in the order of the visits. Loads that are not served do not occur. */
export function gatherHandedGoods(
  scenario: Scenario,
  allocation: Pick<Allocation, 'grants' | 'shares'>,
  delivery: DrivenLoads,
  visits: readonly Visit[],
): HandedGoods[] {
  const { grants, shares } = allocation;
  const shareRows = new Map(Array.from(shares.community, (c, row) => [`${c} ${shares.crop[row]}`, row]));
  const productKinds = new Map(scenario.products.map(({ id, kind }) => [id, kind]));
  const goods: HandedGoods[] = [];
  visits.forEach(({ loads, day, log10Loss }, visit) => {
    for (const load of loads)
      delivery.loads[load]?.grants.forEach((grant, i) => {
        const packs = delivery.loads[load]?.packs[i] ?? 0;
        const lot = grants.lot[grant] ?? -1;
        const shareRow = shareRows.get(`${grants.community[grant]} ${grants.crop[grant]}`);
        const kind = productKinds.get(scenario.lots[lot]?.productId ?? '');
        if (shareRow === undefined || kind === undefined) return;
        const part = packs / (grants.packs[grant] ?? packs);
        const kg = (grants.kg[grant] ?? 0) * part;
        const seedKg = (grants.servesSeedKg[grant] ?? 0) * part;
        const roadLog10 = kind === 'inoculant' && !Number.isNaN(log10Loss) ? log10Loss : 0;
        goods.push({ shareRow, lot, kind, day, visit, packs, kg, seedKg, roadLog10 });
      });
  });
  return goods;
}
