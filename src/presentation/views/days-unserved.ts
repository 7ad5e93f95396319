import type { Plan, Scenario, UnservedReason } from '../../engine/index.ts';
import { zonesOfCommunities } from './days-land.ts';

/** Communities that get nothing, or not all, of what they were given, for one reason. */
export interface NotServed {
  readonly reason: UnservedReason;
  /** Indexes of communities. */
  readonly communities: readonly number[];
  readonly names: readonly string[];
  readonly zones: readonly string[];
  readonly hectares: number;
  /** Growers who live in those communities; null where one does not say. */
  readonly growers: number | null;
}

/** Who is not served and why: loads left at the depot, and communities that no vehicle reaches. Most land first. */
export function notServed(plan: Plan, scenario: Scenario): readonly NotServed[] {
  const found = new Map<UnservedReason, Map<number, number>>();
  const add = (reason: UnservedReason, community: number, hectares: number) => {
    const communities = found.get(reason) ?? new Map<number, number>();
    // Seed and inoculant serve the same land: the larger of the two counts.
    communities.set(community, Math.max(communities.get(community) ?? 0, hectares));
    found.set(reason, communities);
  };
  for (const [community, hectares] of cutOffLand(plan)) add('not-reachable', community, hectares);
  for (const { community, reason, hectares } of loadsLeft(plan)) add(reason, community, hectares);
  return [...found]
    .map(([reason, communities]) => describe(plan, scenario, reason, communities))
    .sort((a, b) => b.hectares - a.hectares);
}

/** Planned hectares of communities whose need falls short because no vehicle reaches them. */
function cutOffLand({ allocation: { shares, shortfalls } }: Plan): ReadonlyMap<number, number> {
  const rows = new Set(
    shortfalls.shareRow.filter(
      (_, i) => shortfalls.reason[i] === 'not-reachable' && shortfalls.commodity[i] === 'seed',
    ),
  );
  const land = new Map<number, number>();
  for (const row of rows) {
    const community = shares.community[row] ?? -1;
    land.set(community, (land.get(community) ?? 0) + (shares.plannedHa[row] ?? 0));
  }
  return land;
}

/** Loads left, summed by community, kind of goods and reason. Fertiliser left behind keeps nobody from sowing: it is told apart. */
function loadsLeft({ delivery: { unserved, loads }, allocation: { consignments } }: Plan) {
  const sums = new Map<string, { community: number; reason: UnservedReason; hectares: number }>();
  unserved.load.forEach((load, i) => {
    const consignment = loads.consignment[load] ?? -1;
    if (consignments.group[consignment] === 'fertiliser') return;
    const community = consignments.community[consignment] ?? -1;
    const reason = unserved.reason[i] ?? 'not-reachable';
    const key = `${community} ${consignments.group[consignment]} ${reason}`;
    const hectares = (sums.get(key)?.hectares ?? 0) + (unserved.hectares[i] ?? 0);
    sums.set(key, { community, reason, hectares });
  });
  return [...sums.values()];
}

/** Land whose fertiliser stays at the depots, ha, and the reason that holds back most of it; null where none stays. */
export function fertiliserLeft({ delivery: { unserved, loads }, allocation: { consignments } }: Plan): {
  readonly hectares: number;
  readonly reason: UnservedReason;
} | null {
  const byReason = new Map<UnservedReason, number>();
  unserved.load.forEach((load, i) => {
    const reason = unserved.reason[i];
    if (reason === undefined || consignments.group[loads.consignment[load] ?? -1] !== 'fertiliser') return;
    byReason.set(reason, (byReason.get(reason) ?? 0) + (unserved.hectares[i] ?? 0));
  });
  const [most] = [...byReason].sort(([, a], [, b]) => b - a);
  if (most === undefined) return null;
  return { hectares: [...byReason.values()].reduce((sum, ha) => sum + ha, 0), reason: most[0] };
}

function describe(
  plan: Plan,
  scenario: Scenario,
  reason: UnservedReason,
  land: ReadonlyMap<number, number>,
): NotServed {
  const communities = [...land.keys()];
  const told = communities.map((community) => scenario.communities[community]);
  const farmers = told.map((one) => one?.farmers ?? null);
  return {
    reason,
    communities,
    names: told.map((one) => one?.name ?? ''),
    zones: zonesOfCommunities(plan, scenario, communities),
    hectares: [...land.values()].reduce((sum, hectares) => sum + hectares, 0),
    growers: farmers.some((count) => count === null)
      ? null
      : farmers.reduce<number>((sum, count) => sum + (count ?? 0), 0),
  };
}

/** Communities that are handed nothing on any day, though goods are meant for them or land is planned there. */
export function servedNothing(plan: Plan, left: readonly NotServed[]): ReadonlySet<number> {
  const { delivery, allocation } = plan;
  const loads = delivery.stops.loads.flat();
  const served = new Set(
    loads.map((load) => allocation.consignments.community[delivery.loads.consignment[load] ?? -1]),
  );
  return new Set(left.flatMap(({ communities }) => communities).filter((community) => !served.has(community)));
}
