import type { Plan } from '../../engine/index.ts';

/** Planned land and what the plan does for it, hectares; each amount includes the next. */
export interface Land {
  readonly plannedHa: number;
  /** With seed, the growers' own or handed over. */
  readonly seedHa: number;
  /** Of it, inoculated. */
  readonly inoculatedHa: number;
}

/** The land of one crop of one community in one zone: one row of the plan's needs. */
export interface LandPart extends Land {
  /** Index into the plan's zones; -1 outside all zones. */
  readonly zone: number;
  readonly community: number;
  readonly crop: number;
  /** Row of `allocation.shares` and `outcomes.crops`, and the part of its land that this is, 0 to 1. */
  readonly shareRow: number;
  readonly part: number;
  /** Row of `needs`. */
  readonly need: number;
}

/** The plan's land in its smallest parts. The outcome of a community and crop is divided as its planned land is. */
export function landParts({ needs, allocation: { shares }, outcomes: { crops } }: Plan): LandPart[] {
  const rows = new Map(shares.community.map((community, row) => [rowKey(community, shares.crop[row] ?? -1), row]));
  return needs.community.flatMap((community, need) => {
    const crop = needs.crop[need] ?? -1;
    const shareRow = rows.get(rowKey(community, crop));
    const plannedHa = needs.plannedHa[need] ?? 0;
    if (shareRow === undefined || plannedHa <= 0) return [];
    const part = plannedHa / (shares.plannedHa[shareRow] ?? plannedHa);
    const seedHa = part * (crops.seedHa[shareRow] ?? 0);
    const inoculatedHa = part * (crops.inoculatedHa[shareRow] ?? 0);
    return [{ zone: needs.zone[need] ?? -1, community, crop, shareRow, part, need, plannedHa, seedHa, inoculatedHa }];
  });
}

const rowKey = (community: number, crop: number) => `${community} ${crop}`;

export function sumLand(parts: readonly Land[]): Land {
  let [plannedHa, seedHa, inoculatedHa] = [0, 0, 0];
  for (const part of parts) {
    plannedHa += part.plannedHa;
    seedHa += part.seedHa;
    inoculatedHa += part.inoculatedHa;
  }
  return { plannedHa, seedHa, inoculatedHa };
}

/** Share of the planned land that has a kind of goods, 0 to 1; 0 where nothing is planned. */
export function landShare({ plannedHa, seedHa, inoculatedHa }: Land, commodity: 'seed' | 'inoculant'): number {
  if (plannedHa <= 0) return 0;
  return Math.min(1, (commodity === 'seed' ? seedHa : inoculatedHa) / plannedHa);
}

/** Parts under a key, keys in the order met. */
export function groupParts<K>(parts: readonly LandPart[], keyOf: (part: LandPart) => K): Map<K, LandPart[]> {
  const groups = new Map<K, LandPart[]>();
  for (const part of parts) {
    const key = keyOf(part);
    const group = groups.get(key);
    if (group) group.push(part);
    else groups.set(key, [part]);
  }
  return groups;
}
