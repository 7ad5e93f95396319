import type { Plan, Range, Scenario } from '../../engine/index.ts';

/** A zone from plan to field. Hectares; nitrogen in kg. */
export interface ZoneCoverage {
  /** Null outside all zones. */
  readonly id: string | null;
  readonly name: string | null;
  readonly farmers: number;
  readonly plannedHa: number;
  /** Inoculated, packs handed over. */
  readonly suppliedHa: number;
  readonly expected: Range;
  /** Percent of the outcomes in which at least half of the land that packs are sent for is in time and alive; null where none is sent. */
  readonly chancePercent: number | null;
  readonly signedForHa: number | null;
  readonly sownHa: number | null;
  readonly nitrogenKg: number;
  /** Communities of the zone that plan land and get no inoculant. */
  readonly cutOff: number;
}

export interface CoverageZones {
  readonly rows: readonly ZoneCoverage[];
  /** Largest planned hectares of a zone: the length of the bars' scale. */
  readonly scaleHa: number;
  /** Communities, each once, that plan land and get no inoculant. */
  readonly cutOff: number;
}

export function coverageZones(plan: Plan, scenario: Scenario): CoverageZones {
  const { zones } = plan.outcomes;
  const bare = communitiesWithoutInoculant(plan);
  const isSigned = scenario.handovers.length > 0;
  const rows = zones.zone.map((zone, row): ZoneCoverage => {
    const plannedHa = zones.plannedHa[row] ?? 0;
    const inZone = new Set(plan.needs.community.filter((_, need) => plan.needs.zone[need] === zone));
    return {
      id: plan.ids.zones[zone] ?? null,
      name: scenario.zones[zone]?.name ?? null,
      farmers: zones.farmers[row] ?? 0,
      plannedHa,
      suppliedHa: plannedHa * (zones.shareMet[row] ?? 0),
      expected: zones.reachedRange[row] ?? { p10: 0, p50: 0, p90: 0 },
      chancePercent: percentOf(zones.inTimeChance[row] ?? null),
      signedForHa: isSigned ? (zones.signedForHa[row] ?? 0) : null,
      sownHa: isSigned ? (zones.sownHa[row] ?? 0) : null,
      nitrogenKg: zones.nitrogenKg[row]?.p50 ?? 0,
      cutOff: bare.filter((community) => inZone.has(community)).length,
    };
  });
  return { rows, scaleHa: Math.max(1e-9, ...rows.map(({ plannedHa }) => plannedHa)), cutOff: bare.length };
}

const percentOf = (share: number | null) => (share === null ? null : 100 * share);

/** Communities that plan land of a crop and are handed no inoculant at all. */
function communitiesWithoutInoculant({ allocation, outcomes }: Plan): number[] {
  const { community, plannedHa } = allocation.shares;
  const planned = new Set(community.filter((_, row) => (plannedHa[row] ?? 0) > 0));
  for (const [row, ha] of outcomes.crops.inoculatedHa.entries()) if (ha > 0) planned.delete(community[row] ?? -1);
  return [...planned];
}

/** Share of planned land expected in time, by community of the plan; null where no land is planned. */
export function communityShares({ ids, allocation, outcomes }: Plan): (number | null)[] {
  const planned = new Array<number>(ids.communities.length).fill(0);
  const expected = [...planned];
  allocation.shares.community.forEach((community, row) => {
    planned[community] = (planned[community] ?? 0) + (allocation.shares.plannedHa[row] ?? 0);
    expected[community] = (expected[community] ?? 0) + (outcomes.crops.reachedHa[row] ?? 0);
  });
  return planned.map((ha, community) => (ha > 0 ? Math.min(1, (expected[community] ?? 0) / ha) : null));
}
