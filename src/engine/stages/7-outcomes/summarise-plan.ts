import { exactSum } from '../../numerics/exact-sum.ts';
import type { Headline, ZoneOutcome } from '../../vocabulary/index.ts';
import type { SeasonAverage } from './average-seasons.ts';
import type { PlayParts, PreparedPlay } from './play-season.ts';
import type { PlanRanges } from './range-over-plays.ts';

/** The whole plan in a few figures. Money is null where a price it needs is not given. */
export function summarisePlan(
  { scenario, allocation, delivery }: PlayParts,
  { goods, land }: PreparedPlay,
  { crops }: SeasonAverage,
  ranges: PlanRanges,
): Headline {
  const { community, plannedHa } = allocation.shares;
  const reached = new Set(goods.map(({ shareRow }) => community[shareRow]));
  const price = scenario.prices.nitrogenPerKg;
  return {
    plannedHa: exactSum(plannedHa),
    seedHa: exactSum(land.map(({ seedHa }) => seedHa)),
    inoculatedHa: exactSum(crops.inoculatedHa),
    reachedHa: ranges.reachedHa,
    nitrogenKg: ranges.nitrogenKg,
    programmeNitrogenKg: ranges.programmeNitrogenKg,
    grainT: ranges.grainT,
    goodsCost: goodsCost(scenario, goods),
    deliveryCost: delivery.cost,
    nitrogenWorth: price === null ? null : price * ranges.programmeNitrogenKg.p50,
    communitiesReached: reached.size,
    communities: new Set(community).size,
  };
}

/** Price of every pack handed over; null where one of them has no price. */
function goodsCost({ lots, products }: PlayParts['scenario'], goods: PreparedPlay['goods']): number | null {
  const prices = new Map(products.map(({ id, pricePerPack }) => [id, pricePerPack]));
  const costs = goods.map(({ lot, packs }) => {
    const price = prices.get(lots[lot]?.productId ?? '') ?? null;
    return price === null ? Number.NaN : price * packs;
  });
  return costs.some(Number.isNaN) ? null : exactSum(costs);
}

/**
 * One row per zone, and one for outside all zones where land lies there. Land, seed and packs are divided as the land of
 * each community and crop is; a community counts in the zone that holds the largest part of it, its farmers by area.
 */
export function zoneOutcomes(
  parts: PlayParts,
  prepared: PreparedPlay,
  average: SeasonAverage,
  ranges: PlanRanges,
): ZoneOutcome[] {
  const { scenario, needs, places } = parts;
  const outside = scenario.zones.length;
  const fieldsOf = groupBy(prepared.fields.zone, outside + 1);
  const partsOf = groupBy(
    places.shares.zone.map((zone) => (zone < 0 ? outside : zone)),
    outside + 1,
  );
  const homes = homeZones(parts);
  const zones = fieldsOf.map((fields, zone) => {
    const plannedHa = exactSum(fields.map((field) => needs.plannedHa[field] as number));
    const inoculatedHa = exactSum(fields.map((field) => ofRow(prepared, field, average.crops.inoculatedHa)));
    const farmers = (partsOf[zone] ?? []).map((row) => {
      const community = scenario.communities[places.shares.community[row] as number];
      return (community?.farmers ?? 0) * (places.shares.share[row] as number);
    });
    const handed = handedTo(prepared, fields);
    return {
      zone: zone === outside ? -1 : zone,
      communities: homes.filter((home) => home === zone).length,
      farmers: exactSum(farmers),
      plannedHa,
      seedKg: handed.seedKg,
      inoculantPacks: handed.inoculantPacks,
      shareMet: plannedHa > 0 ? inoculatedHa / plannedHa : 0,
      reachedHa: exactSum(fields.map((field) => average.fieldReachedHa[field] as number)),
      nitrogenKg: ranges.zoneNitrogenKg[zone] ?? { p10: 0, p50: 0, p90: 0 },
    };
  });
  return zones.filter(({ zone }, i) => zone >= 0 || (partsOf[i] ?? []).length > 0);
}

/** Seed in kg and packs of inoculant handed over on fields, each community's by the part of its land that they are. */
function handedTo({ goods, fields, land }: PreparedPlay, of: readonly number[]) {
  const partOfRow = new Float64Array(land.length);
  for (const field of of) partOfRow[fields.shareRow[field] as number] = fields.part[field] as number;
  const part = (shareRow: number) => partOfRow[shareRow] as number;
  return {
    seedKg: exactSum(goods.map((g) => (g.kind === 'seed' ? g.kg * part(g.shareRow) : 0))),
    inoculantPacks: exactSum(goods.map((g) => (g.kind === 'inoculant' ? g.packs * part(g.shareRow) : 0))),
  };
}

function ofRow({ fields }: PreparedPlay, field: number, column: Float64Array): number {
  return (column[fields.shareRow[field] as number] as number) * (fields.part[field] as number);
}

/** Zone that holds the largest part of each community, the first of equals; outside counts as a zone, the last. */
function homeZones({ scenario, places }: PlayParts): number[] {
  const { community, zone, share } = places.shares;
  const homes = scenario.communities.map(() => ({ zone: scenario.zones.length, share: 0 }));
  community.forEach((c, row) => {
    const part = share[row] as number;
    const z = zone[row] as number;
    if (part > (homes[c]?.share ?? 0)) homes[c] = { zone: z < 0 ? scenario.zones.length : z, share: part };
  });
  return homes.map((home) => home.zone);
}

function groupBy(keys: Int32Array, groups: number): number[][] {
  const members: number[][] = Array.from({ length: groups }, () => []);
  keys.forEach((key, i) => {
    members[key]?.push(i);
  });
  return members;
}
