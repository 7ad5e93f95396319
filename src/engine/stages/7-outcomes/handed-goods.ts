import type { Allocation, Delivery, ProductKind, Scenario } from '../../vocabulary/index.ts';

/** Packs of one lot, handed over to a community for one crop on one day. */
export interface HandedGoods {
  /** Row of the allocation's shares. */
  readonly shareRow: number;
  readonly lot: number;
  readonly kind: ProductKind;
  /** Planning day, offset from planning.from. */
  readonly day: number;
  readonly packs: number;
  /** Contents of the packs. */
  readonly kg: number;
  /** Seed that these packs are (seed) or coat (inoculant), kg. */
  readonly seedKg: number;
  /** log10 of the cells lost on the road; nought for dry goods. */
  readonly roadLog10: number;
}

/** Everything that a served load holds, in the order of the delivery. Loads that are not served do not occur. */
export function gatherHandedGoods(scenario: Scenario, allocation: Allocation, delivery: Delivery): HandedGoods[] {
  const { grants, shares } = allocation;
  const shareRows = new Map(Array.from(shares.community, (c, row) => [`${c} ${shares.crop[row]}`, row]));
  const productKinds = new Map(scenario.products.map(({ id, kind }) => [id, kind]));
  const goods: HandedGoods[] = [];
  for (const { load, day, roadLog10 } of servedLoads(delivery)) {
    delivery.loads[load]?.grants.forEach((grant, i) => {
      const packs = delivery.loads[load]?.packs[i] ?? 0;
      const lot = grants.lot[grant] ?? -1;
      const shareRow = shareRows.get(`${grants.community[grant]} ${grants.crop[grant]}`);
      const kind = productKinds.get(scenario.lots[lot]?.productId ?? '');
      if (shareRow === undefined || kind === undefined) return;
      const part = packs / (grants.packs[grant] ?? packs);
      const kg = (grants.kg[grant] ?? 0) * part;
      const seedKg = (grants.servesSeedKg[grant] ?? 0) * part;
      goods.push({ shareRow, lot, kind, day, packs, kg, seedKg, roadLog10: kind === 'inoculant' ? roadLog10 : 0 });
    });
  }
  return goods;
}

function servedLoads({ vehicleDays }: Delivery) {
  return vehicleDays.flatMap(({ day, trips }) =>
    trips.flatMap(({ stops }) =>
      stops.flatMap(({ loads, log10Loss }) =>
        loads.map((load) => ({ load, day, roadLog10: Number.isNaN(log10Loss) ? 0 : log10Loss })),
      ),
    ),
  );
}
