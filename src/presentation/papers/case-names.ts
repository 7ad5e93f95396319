import type { PaperCase } from './paper-case.ts';

export const communityName = ({ scenario }: PaperCase, id: string): string =>
  scenario.communities.find((one) => one.id === id)?.name ?? id;

/** Names of zones as they stand in a list of names or ids. */
export const zoneNames = ({ scenario }: PaperCase, zones: readonly string[]): string =>
  zones.map((zone) => scenario.zones.find(({ id }) => id === zone)?.name ?? zone).join(', ');

/** Who receives at a hand-over place, and the phone; null where the files do not say. */
export const contactOf = ({ plan, scenario }: PaperCase, place: number): string | null =>
  scenario.handoverPoints.find(({ id }) => id === plan.ids.places[place])?.contact ?? null;
