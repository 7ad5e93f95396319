import { dayNumber, isoDate, type Plan, type Scenario } from '../../engine/index.ts';

/** What one community has signed for, by its records. Packs and bags as whole numbers, what came back taken off. */
export interface CommunitySoFar {
  readonly communityId: string;
  readonly name: string;
  readonly zoneId: string | null;
  readonly seedBags: number;
  readonly inoculantPacks: number;
  readonly returned: number;
  /** ISO dates of the first and the last hand-over, and of the last sowing told. */
  readonly first: string;
  readonly last: string;
  readonly sownOn: string | null;
  /** Growers who took part and women among them, as far as the records count them. */
  readonly growers: number | null;
  readonly growersWomen: number | null;
  /** Inoculant still planned for it. */
  readonly packsToCome: number;
}

/** Communities with records, by name; those of one zone where one is named. */
export function soFarByCommunity(plan: Plan, scenario: Scenario, zoneId: string | null): CommunitySoFar[] {
  const kindOfLot = new Map(
    scenario.lots.map(({ id, productId }) => [id, scenario.products.find((one) => one.id === productId)?.kind]),
  );
  const toCome = inoculantToCome(plan, (lotId) => kindOfLot.get(lotId) === 'inoculant');
  const zones = zonesOf(plan);
  const byCommunity = new Map<string, Scenario['handovers'][number][]>();
  for (const one of scenario.handovers) {
    byCommunity.set(one.communityId, [...(byCommunity.get(one.communityId) ?? []), one]);
  }
  return [...byCommunity]
    .map(([communityId, records]): CommunitySoFar => {
      const kept = (isKind: (kind: string | undefined) => boolean) =>
        records.reduce(
          (sum, { lotId, packs, returnedPacks }) => (isKind(kindOfLot.get(lotId)) ? sum + packs - returnedPacks : sum),
          0,
        );
      const days = records.map(({ date }) => date).sort((a, b) => a - b);
      const sown = records.flatMap(({ sownOn }) => (sownOn === null ? [] : [sownOn]));
      return {
        communityId,
        name: scenario.communities.find(({ id }) => id === communityId)?.name ?? communityId,
        zoneId: zones.get(communityId) ?? null,
        seedBags: kept((kind) => kind === 'seed'),
        inoculantPacks: kept((kind) => kind === 'inoculant'),
        returned: records.reduce((sum, { returnedPacks }) => sum + returnedPacks, 0),
        first: isoDate(days[0] as (typeof days)[number]),
        last: isoDate(days.at(-1) as (typeof days)[number]),
        sownOn: sown.length === 0 ? null : isoDate(dayNumber(Math.max(...sown))),
        growers: most(records.map(({ growers }) => growers)),
        growersWomen: most(records.map(({ growersWomen }) => growersWomen)),
        packsToCome: toCome.get(communityId) ?? 0,
      };
    })
    .filter((one) => zoneId === null || one.zoneId === zoneId)
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The same growers come to each hand-over: the best attended one counts. */
function most(counts: readonly (number | null)[]): number | null {
  const told = counts.filter((count) => count !== null);
  return told.length === 0 ? null : Math.max(...told);
}

function inoculantToCome(
  { ids, allocation: { grants } }: Plan,
  isLiving: (lotId: string) => boolean,
): Map<string, number> {
  const packs = new Map<string, number>();
  grants.lot.forEach((lot, grant) => {
    if (!isLiving(ids.lots[lot] ?? '')) return;
    const id = ids.communities[grants.community[grant] ?? -1] ?? '';
    packs.set(id, (packs.get(id) ?? 0) + (grants.packs[grant] ?? 0));
  });
  return packs;
}

/** Zone that holds most of each community. */
function zonesOf({ ids, places: { shares } }: Plan): Map<string, string> {
  const best = new Map<string, readonly [zone: string, share: number]>();
  shares.community.forEach((community, row) => {
    const id = ids.communities[community] ?? '';
    const [zone, share] = [ids.zones[shares.zone[row] ?? -1], shares.share[row] ?? 0];
    if (zone !== undefined && share > (best.get(id)?.[1] ?? 0)) best.set(id, [zone, share]);
  });
  return new Map([...best].map(([id, [zone]]) => [id, zone]));
}
