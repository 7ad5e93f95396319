import {
  type Allocation,
  type Consignment,
  dayNumber,
  isoDate,
  type LotVerdict,
  type Plan,
  type Scenario,
} from '../vocabulary/index.ts';
import { round, roundAll, roundOrNull, roundPrices } from './rounding.ts';

type Recorded = Plan['allocation'];

export function recordAllocation(scenario: Scenario, allocation: Allocation): Recorded {
  const { grants, shares, shortfalls, packShares, remedies } = allocation;
  return {
    lots: recordLots(scenario, allocation.lots),
    grants: {
      community: Array.from(grants.community),
      crop: Array.from(grants.crop),
      lot: Array.from(grants.lot),
      packs: Array.from(grants.packs),
      kg: roundAll(grants.kg, 'kilograms'),
      servesSeedKg: roundAll(grants.servesSeedKg, 'kilograms'),
    },
    shares: {
      community: Array.from(shares.community),
      crop: Array.from(shares.crop),
      plannedHa: roundAll(shares.plannedHa, 'hectares'),
      seedNeedKg: roundAll(shares.seedNeedKg, 'kilograms'),
      ownSeedKg: roundAll(shares.ownSeedKg, 'kilograms'),
      seedThereKg: roundAll(shares.seedThereKg, 'kilograms'),
      seedGivenKg: roundAll(shares.seedGivenKg, 'kilograms'),
      inoculantNeedSeedKg: roundAll(shares.inoculantNeedSeedKg, 'kilograms'),
      inoculantGivenSeedKg: roundAll(shares.inoculantGivenSeedKg, 'kilograms'),
      seedShare: roundAll(shares.seedShare, 'share'),
      inoculantShare: roundAll(shares.inoculantShare, 'share'),
    },
    proofs: recordProofs(allocation),
    shortfalls: {
      shareRow: shortfalls.map(({ shareRow }) => shareRow),
      commodity: shortfalls.map(({ commodity }) => commodity),
      shortKg: shortfalls.map(({ shortKg }) => round(shortKg, 'kilograms')),
      hectares: shortfalls.map(({ hectares }) => round(hectares, 'hectares')),
      reason: shortfalls.map(({ reason }) => reason),
      product: shortfalls.map(({ product }) => product),
    },
    remedies: remedies.map((remedy) => ({
      ...remedy,
      packs: round(remedy.packs, 'packs'),
      hectares: round(remedy.hectares, 'hectares'),
      cost: remedy.cost === null ? null : round(remedy.cost, 'money'),
    })),
    orders: recordOrders(allocation),
    packShares: {
      grant: packShares.map(({ grant }) => grant),
      growers: packShares.map(({ growers }) => roundOrNull(growers, 'people')),
      growersPerPack: packShares.map(({ growersPerPack }) => roundOrNull(growersPerPack, 'people')),
      openedPackDays: packShares.map(({ openedPackDays }) => openedPackDays),
      sowTogether: packShares.map(({ sowTogether }) => (sowTogether ? 1 : 0)),
    },
    consignments: recordConsignments(scenario, allocation.consignments),
  };
}

/** Verdicts stand in the order of the lots. */
function recordLots(scenario: Scenario, verdicts: readonly LotVerdict[]): Recorded['lots'] {
  const byLot = new Map(verdicts.map((verdict) => [verdict.lot, verdict]));
  const inOrder = scenario.lots.map((_, lot) => byLot.get(lot));
  return {
    reasons: inOrder.map((verdict) => verdict?.reasons ?? []),
    packsReserved: inOrder.map((verdict) => verdict?.packsReserved ?? 0),
    packsHeld: inOrder.map((verdict) => verdict?.packsHeld ?? 0),
    packsOffered: inOrder.map((verdict) => verdict?.packsOffered ?? 0),
    chanceSownBeforeExpiry: inOrder.map((verdict) =>
      roundOrNull(verdict?.chanceSownBeforeExpiry ?? Number.NaN, 'share'),
    ),
    countPerG: inOrder.map((verdict) => roundOrNull(verdict?.countPerG ?? Number.NaN, 'counts')),
  };
}

function recordProofs({ proofs }: Allocation): Recorded['proofs'] {
  return proofs.map((proof) => ({
    commodity: proof.commodity,
    crops: proof.crops,
    shareRows: proof.shareRows,
    needKg: roundAll(proof.needKg, 'kilograms'),
    keptKg: roundAll(proof.keptKg, 'kilograms'),
    communityPrices: roundPrices(proof.communityPrices),
    lots: proof.lots,
    offeredKg: roundAll(proof.offeredKg, 'kilograms'),
    lotPrices: roundPrices(proof.lotPrices),
    capPrice: roundPrices([proof.capPrice])[0] ?? 0,
    leastShare: round(proof.leastShare, 'share'),
    bound: round(proof.bound, 'share'),
    roundingKg: round(proof.roundingKg, 'kilograms'),
  }));
}

function recordOrders({ orders }: Allocation): Recorded['orders'] {
  const date = (days: (order: Allocation['orders'][number]) => number) =>
    orders.map((order) => isoDate(dayNumber(days(order))));
  return {
    product: orders.map(({ product }) => product),
    depot: orders.map(({ depot }) => depot),
    verdict: orders.map(({ verdict }) => verdict),
    packs: orders.map(({ packs }) => packs),
    packsWanted: orders.map(({ packsWanted }) => packsWanted),
    hectares: orders.map(({ hectares }) => round(hectares, 'hectares')),
    hectaresWanted: orders.map(({ hectaresWanted }) => round(hectaresWanted, 'hectares')),
    cost: orders.map(({ cost }) => (cost === null ? null : round(cost, 'money'))),
    orderBy: date(({ orderBy }) => orderBy),
    arrives: date(({ arrives }) => arrives),
    usefulUntil: date(({ usefulUntil }) => usefulUntil),
    lastOrderDay: date(({ lastOrderDay }) => lastOrderDay),
    chanceInTime: orders.map(({ chanceInTime }) => round(chanceInTime, 'share')),
    packsAtOnce: orders.map(({ packsAtOnce }) => (packsAtOnce < 0 ? null : packsAtOnce)),
  };
}

function recordConsignments(scenario: Scenario, consignments: readonly Consignment[]): Recorded['consignments'] {
  const best = consignments.map(bestDayOf);
  const date = (offset: number) => isoDate(dayNumber(scenario.planning.from + offset));
  return {
    community: consignments.map(({ community }) => community),
    place: consignments.map(({ place }) => place),
    depot: consignments.map(({ depot }) => depot),
    group: consignments.map(({ group }) => group),
    grants: consignments.map(({ grants }) => grants),
    kg: consignments.map(({ kg }) => round(kg, 'kilograms')),
    coolLitres: consignments.map(({ coolLitres }) => round(coolLitres, 'litres')),
    inoculantKg: consignments.map(({ inoculantKg }) => round(inoculantKg, 'kilograms')),
    maxStorageC: consignments.map(({ maxStorageC }) => maxStorageC),
    hectares: consignments.map(({ hectares }) => round(hectares, 'hectares')),
    worth: consignments.map(({ worth }) => (worth === null ? null : round(worth, 'money'))),
    earliest: consignments.map(({ earliest }) => date(earliest)),
    latest: consignments.map(({ latest }) => date(latest)),
    reachByDay: consignments.map(({ reach }) => reachByDay(reach)),
    bestReach: best.map(({ value }) => round(value, 'share')),
    bestDay: best.map(({ day }) => date(day)),
  };
}

/** Value at no loss on the road, by planning day. */
function reachByDay({ value, lossBreaks }: Consignment['reach']): readonly number[] {
  const days = value.length / lossBreaks.length;
  return Array.from({ length: days }, (_, day) => round(value[day * lossBreaks.length] as number, 'share'));
}

/** First day of the highest value at no loss on the road. */
function bestDayOf({ reach, earliest }: Consignment): { readonly day: number; readonly value: number } {
  const breaks = reach.lossBreaks.length;
  let best = { day: earliest, value: reach.value[earliest * breaks] ?? 0 };
  for (let day = 0; day * breaks < reach.value.length; day++) {
    const value = reach.value[day * breaks] as number;
    if (value > best.value) best = { day, value };
  }
  return best;
}
