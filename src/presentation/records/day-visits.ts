import type { Plan, ProductKind, Scenario } from '../../engine/index.ts';

/** One lot of a visit, as the plan has it. */
export interface VisitGoods {
  readonly lotId: string;
  readonly productId: string;
  readonly kind: ProductKind;
  readonly packs: number;
}

/** What one vehicle was to bring to one community on a day. */
export interface DayVisit {
  readonly vehicleId: string;
  readonly communityId: string;
  readonly community: string;
  /** Minutes from midnight. */
  readonly arrives: number;
  readonly goods: readonly VisitGoods[];
}

/** Visits that a plan has for a day, by vehicle and hour. */
export function visitsOfDay({ ids, allocation, delivery }: Plan, scenario: Scenario, date: string): DayVisit[] {
  const { stops, trips, loads } = delivery;
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  const visits = new Map<string, DayVisit & { readonly goods: VisitGoods[] }>();
  stops.loads.forEach((aboard, stop) => {
    const trip = stops.trip[stop] ?? -1;
    if (trips.date[trip] !== date) return;
    const vehicleId = ids.vehicles[trips.vehicle[trip] ?? -1] ?? '';
    for (const load of aboard) {
      const consignment = loads.consignment[load] ?? -1;
      const communityId = ids.communities[allocation.consignments.community[consignment] ?? -1] ?? '';
      const community = scenario.communities.find(({ id }) => id === communityId)?.name ?? communityId;
      const key = `${vehicleId} ${communityId}`;
      const visit = visits.get(key) ?? {
        vehicleId,
        communityId,
        community,
        arrives: stops.arriveMinute[stop] ?? 0,
        goods: [],
      };
      visits.set(key, visit);
      (loads.grants[load] ?? []).forEach((grant, i) => {
        const lot = scenario.lots.find(({ id }) => id === ids.lots[allocation.grants.lot[grant] ?? -1]);
        const product = products.get(lot?.productId ?? '');
        if (!lot || !product) return;
        const packs = loads.packs[load]?.[i] ?? 0;
        const at = visit.goods.findIndex(({ lotId }) => lotId === lot.id);
        const before = visit.goods[at];
        if (before) visit.goods[at] = { ...before, packs: before.packs + packs };
        else visit.goods.push({ lotId: lot.id, productId: product.id, kind: product.kind, packs });
      });
    }
  });
  return [...visits.values()].sort((a, b) =>
    a.vehicleId === b.vehicleId ? a.arrives - b.arrives : a.vehicleId < b.vehicleId ? -1 : 1,
  );
}

export interface SoFar {
  readonly packs: number;
  readonly returned: number;
  readonly communities: number;
  readonly days: number;
}

/** What has been recorded so far, in packs and bags. */
export function recordedSoFar({ handovers }: Scenario): SoFar {
  const sum = (pick: (one: Scenario['handovers'][number]) => number) =>
    handovers.reduce((total, one) => total + pick(one), 0);
  return {
    packs: sum(({ packs, returnedPacks }) => packs - returnedPacks),
    returned: sum(({ returnedPacks }) => returnedPacks),
    communities: new Set(
      handovers.filter(({ packs, returnedPacks }) => packs > returnedPacks).map((one) => one.communityId),
    ).size,
    days: new Set(handovers.map(({ date }) => date)).size,
  };
}
