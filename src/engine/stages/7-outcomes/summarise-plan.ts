import { exactSum } from '../../numerics/exact-sum.ts';
import { RESIDUAL_BENEFIT } from '../../reference/residual-benefit.ts';
import type { Bounds, Headline, Range, Spread, ZoneOutcome } from '../../vocabulary/index.ts';
import type { SeasonAverage } from './average-seasons.ts';
import type { HandedOver } from './handed-over.ts';
import type { PlayParts, PreparedPlay } from './prepare-play.ts';
import type { PlanRanges } from './range-over-plays.ts';
import { summariseMoney } from './summarise-money.ts';

/** The whole plan in a few figures. Money is null where a price it needs is not given. */
export function summarisePlan(
  { scenario, allocation, delivery }: PlayParts,
  prepared: PreparedPlay,
  average: SeasonAverage,
  { totals }: PlanRanges,
  handedOver: HandedOver,
): Headline {
  const { goods, land } = prepared;
  const { crops } = average;
  const { community, plannedHa } = allocation.shares;
  const reached = new Set(goods.map(({ shareRow }) => community[shareRow]));
  const price = scenario.prices.nitrogenPerKg;
  const broughtSeedHa = exactSum(land.map(({ seedHa, ownHa }) => Math.max(0, seedHa - ownHa)));
  const residualNitrogenKg = timesBounds(broughtSeedHa, RESIDUAL_BENEFIT.value);
  return {
    plannedHa: exactSum(plannedHa),
    seedHa: exactSum(land.map(({ seedHa }) => seedHa)),
    inoculatedHa: exactSum(crops.inoculatedHa),
    fertilisedHa: exactSum(land.map(({ fertilisedHa }) => fertilisedHa)),
    reachedHa: totals.reachedHa,
    nitrogenKg: totals.nitrogenKg,
    programmeNitrogenKg: totals.programmeNitrogenKg,
    inoculationNitrogenKg: totals.inoculationNitrogenKg,
    inoculationAtMostKg: totals.inoculationAtMostKg,
    netNitrogenKg: totals.netNitrogenKg,
    grainT: totals.grainT,
    programmeGrainT: totals.programmeGrainT,
    inoculationGrainT: totals.inoculationGrainT,
    phosphorusNitrogenKg: totals.phosphorusNitrogenKg,
    phosphorusGrainT: totals.phosphorusGrainT,
    central: average.totals,
    farmers: countFarmers(scenario, community, plannedHa),
    farmersReached: totals.farmersReached,
    womenShare: womenAmongReached(scenario, prepared, average),
    signedForHa: exactSum(handedOver.signedForHa),
    sownHa: exactSum(handedOver.sownHa),
    broughtSeedHa,
    residualNitrogenKg,
    residualWorth: price === null ? null : timesBounds(price, residualNitrogenKg),
    ...summariseMoney(scenario, delivery, goods, community, totals),
    communitiesReached: reached.size,
    communities: new Set(community).size,
  };
}

const timesBounds = (factor: number, { least, most }: Bounds): Bounds => ({
  least: factor * least,
  most: factor * most,
});

/** Farmers of the communities that plan land, where they are counted. */
function countFarmers({ communities }: PlayParts['scenario'], community: Int32Array, plannedHa: Float64Array): number {
  const planning = new Set(community.filter((_, row) => (plannedHa[row] as number) > 0));
  return exactSum([...planning].map((c) => communities[c]?.farmers ?? 0));
}

/** Women among the farmers expected to be reached, over the communities that count both; null where none does. */
function womenAmongReached(
  { communities }: PlayParts['scenario'],
  { fields }: PreparedPlay,
  { fieldReachedHa }: SeasonAverage,
): number | null {
  let [women, all] = [0, 0];
  fieldReachedHa.forEach((reachedHa, field) => {
    const { farmers, farmersWomen } = communities[fields.community[field] as number] ?? {};
    if (!farmers || farmersWomen === null || farmersWomen === undefined) return;
    const people = reachedHa * (fields.farmersPerHa[field] as number);
    all += people;
    women += people * (farmersWomen / farmers);
  });
  return all > 0 ? women / all : null;
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
  handedOver: HandedOver,
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
      reachedRange: rangeOf(ranges.zoneReachedHa[zone]),
      nitrogenKg: rangeOf(ranges.zoneNitrogenKg[zone]),
      inTimeChance: ranges.zoneInTimeChance[zone] as number,
      signedForHa: exactSum(fields.map((field) => ofRow(prepared, field, handedOver.signedForHa))),
      sownHa: exactSum(fields.map((field) => ofRow(prepared, field, handedOver.sownHa))),
    };
  });
  return zones.filter(({ zone }, i) => zone >= 0 || (partsOf[i] ?? []).length > 0);
}

/** Without the quarters, which zones do not show. */
function rangeOf(spread: Spread | undefined): Range {
  return { p10: spread?.p10 ?? 0, p50: spread?.p50 ?? 0, p90: spread?.p90 ?? 0 };
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
