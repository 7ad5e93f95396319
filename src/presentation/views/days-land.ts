import type { Plan, Scenario } from '../../engine/index.ts';

/** Names of the zones in which most of each community's land lies, each once, in the order of the zones. */
export function zonesOfCommunities(plan: Plan, scenario: Scenario, communities: readonly number[]): string[] {
  const wanted = new Set(communities);
  const main = new Map<number, { readonly zone: number; readonly share: number }>();
  const { community, zone, share } = plan.places.shares;
  community.forEach((one, row) => {
    const part = share[row] ?? 0;
    if (wanted.has(one) && part > (main.get(one)?.share ?? 0)) main.set(one, { zone: zone[row] ?? -1, share: part });
  });
  const zones = new Set([...main.values()].map((most) => most.zone));
  return scenario.zones.flatMap(({ name }, index) => (zones.has(index) ? [name] : []));
}
