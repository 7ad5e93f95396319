import type { Plan, Scenario, UnservedReason } from '../../engine/index.ts';

/** Communities that are not handed all of their goods, for one reason. */
export interface LeftOut {
  readonly reason: UnservedReason;
  /** Indexes, each once. */
  readonly communities: readonly number[];
  readonly names: readonly string[];
  /** Land that waits for seed or inoculant; a community's land counts once. */
  readonly hectares: number;
}

/** Who is left out and why, most land first: places that no vehicle reaches, and loads that stay at the depot. */
export function leftOut(plan: Plan, scenario: Scenario): LeftOut[] {
  const found = new Map<UnservedReason, Map<number, number>>();
  const add = (reason: UnservedReason, community: number, hectares: number) => {
    const land = found.get(reason) ?? new Map<number, number>();
    found.set(reason, land.set(community, Math.max(land.get(community) ?? 0, hectares)));
  };
  for (const [community, hectares] of cutOff(plan)) add('not-reachable', community, hectares);
  const { unserved, loads } = plan.delivery;
  const { community, group } = plan.allocation.consignments;
  const staying = new Map<string, number>();
  unserved.load.forEach((load, i) => {
    const consignment = loads.consignment[load] ?? -1;
    const [who, reason] = [community[consignment] ?? -1, unserved.reason[i] ?? 'not-reachable'];
    const key = `${reason} ${group[consignment]} ${who}`;
    staying.set(key, (staying.get(key) ?? 0) + (unserved.hectares[i] ?? 0));
    add(reason, who, staying.get(key) ?? 0);
  });
  return [...found]
    .map(([reason, land]) => ({
      reason,
      communities: [...land.keys()],
      names: [...land.keys()].map((index) => scenario.communities[index]?.name ?? ''),
      hectares: [...land.values()].reduce((sum, hectares) => sum + hectares, 0),
    }))
    .sort((a, b) => b.hectares - a.hectares);
}

/** Planned land of communities that no vehicle reaches. */
function cutOff({ allocation: { shortfalls, shares } }: Plan): Map<number, number> {
  const rows = new Set(shortfalls.shareRow.filter((_, i) => shortfalls.reason[i] === 'not-reachable'));
  const land = new Map<number, number>();
  for (const row of rows) {
    const community = shares.community[row] ?? -1;
    land.set(community, (land.get(community) ?? 0) + (shares.plannedHa[row] ?? 0));
  }
  return land;
}
