import type { PaperCase } from './paper-case.ts';

export const communityName = ({ scenario }: PaperCase, id: string): string =>
  scenario.communities.find((one) => one.id === id)?.name ?? id;

/** Names of zones as they stand in a list of names or ids. */
export const zoneNames = ({ scenario }: PaperCase, zones: readonly string[]): string =>
  zones.map((zone) => scenario.zones.find(({ id }) => id === zone)?.name ?? zone).join(', ');

/** The zone that holds most of a community's land; the one it names where its land lies in none. Empty where there is neither. */
export function zoneOfCommunity({ plan, scenario }: PaperCase, communityId: string): string {
  const index = plan.ids.communities.indexOf(communityId);
  const { community, zone, share } = plan.places.shares;
  const rows = community.flatMap((of, row) => (of === index && (zone[row] ?? -1) >= 0 ? [row] : []));
  const [most] = rows.sort((a, b) => (share[b] ?? 0) - (share[a] ?? 0) || a - b);
  const named = scenario.communities.find(({ id }) => id === communityId)?.zoneId ?? '';
  return most === undefined ? named : (plan.ids.zones[zone[most] ?? -1] ?? named);
}

/** Who receives at a hand-over place, and the phone; null where the files do not say. */
export const contactOf = ({ plan, scenario }: PaperCase, place: number): string | null =>
  scenario.handoverPoints.find(({ id }) => id === plan.ids.places[place])?.contact ?? null;
