import type { Crop, Plan, Scenario } from '../../engine/index.ts';
import type { Words } from '../wording/words.ts';
import { type Cell, cellsOf, type Holds } from './stock-cells.ts';
import { productOfLot } from './stock-goods.ts';
import { groupParts, type LandPart, landShare, sumLand } from './stock-land.ts';
import type { Shortage } from './stock-shortages.ts';

/** One zone, one community, or all, by crops. */
export interface GridRow {
  readonly key: string;
  readonly name: string;
  /** Null where the row is not a zone of the map. */
  readonly zoneId: string | null;
  readonly communityId: string | null;
  readonly communities: number;
  readonly plannedHa: number;
  readonly cells: readonly Cell[];
  /** Packs of the scarcest inoculant. */
  readonly packsNeeded: number;
  readonly packsGiven: number;
  /** All crops: share of planned land with seed and inoculant, 0 to 1. */
  readonly share: number;
  /** Communities in it that no vehicle reaches. */
  readonly cutOff: number;
}

export interface StockGrid {
  readonly crops: readonly Crop[];
  /** Crop whose inoculant is shortest; null where none is needed. */
  readonly scarce: Crop | null;
  readonly zones: readonly GridRow[];
  readonly all: GridRow;
}

/** Zones by crops, in the order of the plan; land outside all zones comes last. */
export function stockGrid(
  plan: Plan,
  scenario: Scenario,
  parts: readonly LandPart[],
  short: readonly Shortage[],
  holds: Holds,
  words: Words,
): StockGrid {
  const scarce = scarcestInoculant(plan, short);
  const rowOf = rowMaker(plan, scenario, parts, scarce, holds);
  const byZone = groupParts(parts, ({ zone }) => zone);
  const zones = [...plan.ids.zones.keys(), -1].flatMap((zone) => {
    const ofZone = byZone.get(zone);
    if (!ofZone) return [];
    const zoneId = plan.ids.zones[zone] ?? null;
    const name = scenario.zones[zone]?.name ?? zoneId ?? words.stock.outside;
    return [rowOf(`zone ${zone}`, name, zoneId, null, ofZone)];
  });
  return {
    crops: plan.ids.crops,
    scarce,
    zones,
    all: rowOf('all', words.stock.allZonesRow, null, null, parts),
  };
}

/** The row of one community; null where the plan has no land of it. */
export function communityRow(
  plan: Plan,
  scenario: Scenario,
  parts: readonly LandPart[],
  scarce: Crop | null,
  holds: Holds,
  communityId: string | null,
): GridRow | null {
  const index = communityId === null ? -1 : plan.ids.communities.indexOf(communityId);
  const ofCommunity = parts.filter(({ community }) => community === index);
  if (ofCommunity.length === 0) return null;
  const name = scenario.communities[index]?.name ?? communityId ?? '';
  const zoneId = plan.ids.zones[homeZones(ofCommunity).get(index) ?? -1] ?? null;
  return rowMaker(plan, scenario, parts, scarce, holds)(`community ${index}`, name, zoneId, communityId, ofCommunity);
}

type RowMaker = (
  key: string,
  name: string,
  zoneId: string | null,
  communityId: string | null,
  parts: readonly LandPart[],
) => GridRow;

function rowMaker(
  plan: Plan,
  scenario: Scenario,
  parts: readonly LandPart[],
  scarce: Crop | null,
  holds: Holds,
): RowMaker {
  const given = packsByShareRow(plan, scenario);
  const scarceIndex = scarce === null ? -1 : plan.ids.crops.indexOf(scarce);
  const cutOff = cutOffCommunities(plan);
  const homes = homeZones(parts);
  return (key, name, zoneId, communityId, own) => {
    const land = sumLand(own);
    const ofScarce = own.filter(({ crop }) => crop === scarceIndex);
    const members = [...new Set(own.map(({ community }) => community))];
    const zone = own[0]?.zone ?? -1;
    const isZone = key.startsWith('zone');
    const living = isZone ? members.filter((community) => homes.get(community) === zone) : members;
    return {
      key,
      name,
      zoneId,
      communityId,
      communities: living.length,
      plannedHa: land.plannedHa,
      cells: cellsOf(plan, own, holds),
      packsNeeded: sum(ofScarce, ({ need }) => plan.needs.packsNeeded[need] ?? 0),
      packsGiven: sum(ofScarce, ({ shareRow, part }) => part * (given.get(shareRow) ?? 0)),
      share: landShare(land, 'inoculant'),
      cutOff: living.filter((community) => cutOff.has(community)).length,
    };
  };
}

const sum = (parts: readonly LandPart[], of: (part: LandPart) => number) =>
  parts.reduce((total, part) => total + of(part), 0);

/** A community counts in the zone that holds most of its planned land. */
function homeZones(parts: readonly LandPart[]): Map<number, number> {
  return new Map(
    [...groupParts(parts, ({ community }) => community)].map(([community, own]) => {
      const byZone = [...groupParts(own, ({ zone }) => zone)].map(
        ([zone, of]) => [zone, sumLand(of).plannedHa] as const,
      );
      const [home] = byZone.reduce((best, one) => (one[1] > best[1] ? one : best));
      return [community, home];
    }),
  );
}

/** Inoculant packs granted by row of the shares. */
function packsByShareRow({ allocation: { grants, shares } }: Plan, scenario: Scenario): Map<number, number> {
  const rows = new Map(shares.community.map((community, row) => [`${community} ${shares.crop[row]}`, row]));
  const packs = new Map<number, number>();
  const isInoculant = scenario.lots.map((_, lot) => productOfLot(scenario, lot)?.kind === 'inoculant');
  grants.community.forEach((community, i) => {
    const row = rows.get(`${community} ${grants.crop[i]}`);
    if (row === undefined || !isInoculant[grants.lot[i] ?? -1]) return;
    packs.set(row, (packs.get(row) ?? 0) + (grants.packs[i] ?? 0));
  });
  return packs;
}

/** The inoculant that most land waits for; where none is short, the one of which most is needed. */
function scarcestInoculant({ ids, needs }: Plan, short: readonly Shortage[]): Crop | null {
  const shortest = short.find(({ crop, commodity }) => crop !== null && commodity === 'inoculant')?.crop;
  if (shortest) return shortest;
  const packs = ids.crops.map((_, crop) =>
    needs.packsNeeded.reduce((total, count, row) => (needs.crop[row] === crop ? total + count : total), 0),
  );
  const most = Math.max(0, ...packs);
  return most > 0 ? (ids.crops[packs.indexOf(most)] ?? null) : null;
}

/** Communities that some goods were meant for and no vehicle reaches. */
export function cutOffCommunities({ allocation: { shortfalls, shares } }: Plan): Set<number> {
  const rows = shortfalls.shareRow.filter((_, i) => shortfalls.reason[i] === 'not-reachable');
  return new Set(rows.map((row) => shares.community[row] ?? -1));
}
