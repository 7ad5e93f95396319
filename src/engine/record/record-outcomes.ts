import type { Bounds, Outcomes, Plan, Range, Spread } from '../vocabulary/index.ts';
import { type FigureKind, round, roundAll, roundAllOrNull } from './rounding.ts';

type Recorded = Plan['outcomes'];

export function recordOutcomes({ crops, zones, seasons, headline }: Outcomes): Recorded {
  return {
    crops: {
      seedHa: roundAll(crops.seedHa, 'hectares'),
      seedInTimeHa: roundAll(crops.seedInTimeHa, 'hectares'),
      inoculatedHa: roundAll(crops.inoculatedHa, 'hectares'),
      reachedHa: roundAll(crops.reachedHa, 'hectares'),
      log10PerSeed: roundAllOrNull(crops.log10PerSeed, 'log10'),
      storeLog10: roundAllOrNull(crops.storeLog10, 'log10'),
      roadLog10: roundAllOrNull(crops.roadLog10, 'log10'),
      communityLog10: roundAllOrNull(crops.communityLog10, 'log10'),
      seedLog10: roundAllOrNull(crops.seedLog10, 'log10'),
      nitrogenKg: roundAll(crops.nitrogenKg, 'kilograms'),
      grainT: roundAll(crops.grainT, 'tonnes'),
    },
    zones: {
      zone: zones.map(({ zone }) => zone),
      communities: zones.map(({ communities }) => communities),
      farmers: zones.map(({ farmers }) => round(farmers, 'people')),
      plannedHa: zones.map(({ plannedHa }) => round(plannedHa, 'hectares')),
      seedKg: zones.map(({ seedKg }) => round(seedKg, 'kilograms')),
      inoculantPacks: zones.map(({ inoculantPacks }) => round(inoculantPacks, 'packs')),
      shareMet: zones.map(({ shareMet }) => round(shareMet, 'share')),
      reachedHa: zones.map(({ reachedHa }) => round(reachedHa, 'hectares')),
      reachedRange: zones.map(({ reachedRange }) => roundRange(reachedRange, 'hectares')),
      nitrogenKg: zones.map(({ nitrogenKg }) => roundRange(nitrogenKg, 'kilograms')),
      signedForHa: zones.map(({ signedForHa }) => round(signedForHa, 'hectares')),
      sownHa: zones.map(({ sownHa }) => round(sownHa, 'hectares')),
    },
    seasons: {
      year: Array.from(seasons.year),
      reachedHa: roundAll(seasons.reachedHa, 'hectares'),
      noOnsetHa: roundAll(seasons.noOnsetHa, 'hectares'),
      lateHa: roundAll(seasons.lateHa, 'hectares'),
      waitingHa: roundAll(seasons.waitingHa, 'hectares'),
      weakHa: roundAll(seasons.weakHa, 'hectares'),
      cost: seasons.cost,
    },
    headline: recordHeadline(headline),
  };
}

function recordHeadline(headline: Outcomes['headline']): Recorded['headline'] {
  const money = (amount: number | null) => (amount === null ? null : round(amount, 'money'));
  return {
    plannedHa: round(headline.plannedHa, 'hectares'),
    seedHa: round(headline.seedHa, 'hectares'),
    inoculatedHa: round(headline.inoculatedHa, 'hectares'),
    reachedHa: roundSpread(headline.reachedHa, 'hectares'),
    nitrogenKg: roundSpread(headline.nitrogenKg, 'kilograms'),
    programmeNitrogenKg: roundSpread(headline.programmeNitrogenKg, 'kilograms'),
    inoculationNitrogenKg: roundSpread(headline.inoculationNitrogenKg, 'kilograms'),
    grainT: roundSpread(headline.grainT, 'tonnes'),
    farmers: round(headline.farmers, 'people'),
    farmersReached: roundSpread(headline.farmersReached, 'people'),
    womenShare: headline.womenShare === null ? null : round(headline.womenShare, 'share'),
    signedForHa: round(headline.signedForHa, 'hectares'),
    sownHa: round(headline.sownHa, 'hectares'),
    costPerHectare: headline.costPerHectare && roundRange(headline.costPerHectare, 'money'),
    deliveryPerHectare: money(headline.deliveryPerHectare),
    broughtSeedHa: round(headline.broughtSeedHa, 'hectares'),
    residualNitrogenKg: roundBounds(headline.residualNitrogenKg, 'kilograms'),
    residualWorth: headline.residualWorth && roundBounds(headline.residualWorth, 'money'),
    goodsCost: money(headline.goodsCost),
    deliveryCost: money(headline.deliveryCost),
    nitrogenWorth: money(headline.nitrogenWorth),
    communitiesReached: headline.communitiesReached,
    communities: headline.communities,
  };
}

function roundSpread(spread: Spread, kind: FigureKind): Spread {
  return { ...roundRange(spread, kind), p25: round(spread.p25, kind), p75: round(spread.p75, kind) };
}

function roundBounds({ least, most }: Bounds, kind: FigureKind): Bounds {
  return { least: round(least, kind), most: round(most, kind) };
}

function roundRange({ p10, p50, p90 }: Range, kind: FigureKind): Range {
  return { p10: round(p10, kind), p50: round(p50, kind), p90: round(p90, kind) };
}
