import type { Bounds, CentralTotals, CostParts, Outcomes, Plan, Range, Spread } from '../vocabulary/index.ts';
import { type FigureKind, round, roundAll, roundAllOrNull, roundOrNull } from './rounding.ts';

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
      inTimeChance: zones.map(({ inTimeChance }) => roundOrNull(inTimeChance, 'share')),
      signedForHa: zones.map(({ signedForHa }) => round(signedForHa, 'hectares')),
      sownHa: zones.map(({ sownHa }) => round(sownHa, 'hectares')),
    },
    seasons: {
      year: Array.from(seasons.year),
      reachedHa: roundAll(seasons.reachedHa, 'hectares'),
      noOnsetHa: roundAll(seasons.noOnsetHa, 'hectares'),
      lateHa: roundAll(seasons.lateHa, 'hectares'),
      hotHa: roundAll(seasons.hotHa, 'hectares'),
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
    fertilisedHa: round(headline.fertilisedHa, 'hectares'),
    reachedHa: roundSpread(headline.reachedHa, 'hectares'),
    nitrogenKg: roundSpread(headline.nitrogenKg, 'kilograms'),
    programmeNitrogenKg: roundSpread(headline.programmeNitrogenKg, 'kilograms'),
    inoculationNitrogenKg: roundSpread(headline.inoculationNitrogenKg, 'kilograms'),
    inoculationAtMostKg: roundSpread(headline.inoculationAtMostKg, 'kilograms'),
    netNitrogenKg: roundSpread(headline.netNitrogenKg, 'kilograms'),
    grainT: roundSpread(headline.grainT, 'tonnes'),
    programmeGrainT: roundSpread(headline.programmeGrainT, 'tonnes'),
    inoculationGrainT: roundSpread(headline.inoculationGrainT, 'tonnes'),
    phosphorusNitrogenKg: roundSpread(headline.phosphorusNitrogenKg, 'kilograms'),
    phosphorusGrainT: roundSpread(headline.phosphorusGrainT, 'tonnes'),
    central: recordCentral(headline.central),
    cost: recordCost(headline.cost),
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
    programmeGrainWorth: headline.programmeGrainWorth && roundRange(headline.programmeGrainWorth, 'money'),
    inoculationGrainWorth: headline.inoculationGrainWorth && roundRange(headline.inoculationGrainWorth, 'money'),
    valueCostRatio: headline.valueCostRatio && roundRange(headline.valueCostRatio, 'ratio'),
    inoculantValueCostRatio: headline.inoculantValueCostRatio && roundRange(headline.inoculantValueCostRatio, 'ratio'),
    communitiesReached: headline.communitiesReached,
    communities: headline.communities,
  };
}

const CENTRAL_KINDS: Readonly<Record<keyof CentralTotals, FigureKind>> = {
  reachedHa: 'hectares',
  valueHa: 'hectares',
  farmersReached: 'people',
  nitrogenKg: 'kilograms',
  programmeNitrogenKg: 'kilograms',
  inoculationNitrogenKg: 'kilograms',
  inoculationAtMostKg: 'kilograms',
  netNitrogenKg: 'kilograms',
  residueNitrogenKg: 'kilograms',
  earlierNitrogenKg: 'kilograms',
  grainT: 'tonnes',
  programmeGrainT: 'tonnes',
  inoculationGrainT: 'tonnes',
  programmeGrainWorth: 'money',
  inoculationGrainWorth: 'money',
  phosphorusNitrogenKg: 'kilograms',
  phosphorusGrainT: 'tonnes',
};

function recordCentral(central: CentralTotals): Recorded['headline']['central'] {
  const rows = Object.entries(CENTRAL_KINDS) as [keyof CentralTotals, FigureKind][];
  return Object.fromEntries(rows.map(([name, kind]) => [name, roundOrNull(central[name], kind)])) as Record<
    keyof CentralTotals,
    number | null
  >;
}

function recordCost(cost: CostParts): CostParts {
  const rows = Object.entries(cost).map(([name, amount]) => [name, amount === null ? null : round(amount, 'money')]);
  return Object.fromEntries(rows) as unknown as CostParts;
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
