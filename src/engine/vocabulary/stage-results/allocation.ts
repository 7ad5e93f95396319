import type { LotReason, ShortfallReason } from '../reasons.ts';

export type Commodity = 'seed' | 'inoculant';

export interface LotVerdict {
  readonly lot: number;
  /** Empty: the lot may be given. */
  readonly reasons: readonly LotReason[];
  readonly packsReserved: number;
  readonly packsOffered: number;
  /** Packs there that are on hold: by a decision, or because they came back from a hot box; all where the lot is on hold. */
  readonly packsHeld: number;
  /** Chance that the last sowing it serves comes before it expires; NaN where that does not apply. */
  readonly chanceSownBeforeExpiry: number;
  /** Rhizobia per gram on the first planning day; NaN for what is no inoculant and where nobody states a count. */
  readonly countPerG: number;
}

/** Whole packs of one lot for one community and crop; columns, sorted by community, crop, lot. */
export interface Grants {
  readonly community: Int32Array;
  readonly crop: Int32Array;
  readonly lot: Int32Array;
  readonly packs: Int32Array;
  /** Pack contents in kg. */
  readonly kg: Float64Array;
  /** Seed these packs are (seed), coat (inoculant, sticker) or that grows on the land they are for (fertiliser), kg, not more than asked for. */
  readonly servesSeedKg: Float64Array;
}

/** What a community gets of one crop; columns, one row per community and crop with planned hectares above nought. */
export interface Shares {
  readonly community: Int32Array;
  readonly crop: Int32Array;
  readonly plannedHa: Float64Array;
  readonly seedNeedKg: Float64Array;
  readonly ownSeedKg: Float64Array;
  /** Seed handed over before, at most the need. */
  readonly seedThereKg: Float64Array;
  readonly seedGivenKg: Float64Array;
  /** Seed to coat: seed given, there and own, at most seedNeedKg. */
  readonly inoculantNeedSeedKg: Float64Array;
  readonly inoculantGivenSeedKg: Float64Array;
  /** (seed given + own seed) / need, 0 to 1. */
  readonly seedShare: Float64Array;
  /** Seed coated / all seed the planned land asks for, 0 to 1. */
  readonly inoculantShare: Float64Array;
}

/**
 * Proof that no allocation from this pool of stock gives every community a larger least share: prices on communities
 * and lots with Sum(need * communityPrice) + capPrice >= 1, communityPrice <= lotPrice wherever the lot may go to the
 * community, so the least share is at most Sum(offered * lotPrice) + Sum(kept * communityPrice) + capPrice (linear
 * programming duality). In a second round the packs already promised are kept, and only the rest is offered.
 */
export interface FairShareProof {
  readonly commodity: Commodity;
  readonly crops: readonly number[];
  /** Rows of `Shares` in the pool that some lot may reach, their need in kg of seed, and their prices. */
  readonly shareRows: readonly number[];
  readonly needKg: readonly number[];
  /** What each row was promised in the first round, kg of seed. */
  readonly keptKg: readonly number[];
  readonly communityPrices: readonly number[];
  readonly lots: readonly number[];
  readonly offeredKg: readonly number[];
  readonly lotPrices: readonly number[];
  readonly capPrice: number;
  /** Least share before packs are made whole, and the bound that the prices prove. */
  readonly leastShare: number;
  readonly bound: number;
  /** Largest pack in the pool, kg of seed: how far rounding to whole packs may fall short. */
  readonly roundingKg: number;
}

export interface Shortfall {
  readonly shareRow: number;
  readonly commodity: Commodity;
  readonly shortKg: number;
  readonly hectares: number;
  readonly reason: ShortfallReason;
  /** Product whose stock binds, -1 where none. */
  readonly product: number;
}

/** Something that would lift shortfalls, best value first. */
export interface Remedy {
  readonly kind: 'more-packs' | 'release-lot' | 'replace-lot' | 'lower-reserve';
  readonly product: number;
  readonly lot: number;
  readonly packs: number;
  readonly hectares: number;
  readonly communities: number;
  readonly cost: number | null;
}

/** Idle packs carried to another depot, and what that would serve; found by sharing out again. */
export interface TransferIdea {
  readonly lot: number;
  readonly product: number;
  /** Where to. */
  readonly depot: number;
  /** Packs that would be given from there. */
  readonly packs: number;
  /** More hectares with seed and more inoculated, together. */
  readonly hectares: number;
  /** One round trip; null where no road between the depots is known. */
  readonly cost: number | null;
  /** Expected grain of that land; null where a grain price is missing. It pays for itself where this is above the cost. */
  readonly worth: number | null;
}

/**
 * One line of the order list: packs of a product for a depot. Days are day numbers.
 *
 * `in-time`: there by the first planning day if ordered by `orderBy`. `late`: it can no longer be, but comes while it is of use.
 * `too-late`: it would come after the last useful day and is not bought. `ask-lead-time`: the supplier's lead time is not known.
 */
export interface StockOrder {
  readonly product: number;
  readonly depot: number;
  readonly verdict: 'in-time' | 'late' | 'too-late' | 'ask-lead-time';
  /** To buy: 0 where it would come too late, fewer than wanted where the budget does not reach. */
  readonly packs: number;
  readonly packsWanted: number;
  /** Land that the packs bought, and those wanted, would serve, ha. */
  readonly hectares: number;
  readonly hectaresWanted: number;
  /** Of the packs to buy; null where no price is known. */
  readonly cost: number | null;
  readonly orderBy: number;
  /** Ordered by `orderBy`, or today where that is past. */
  readonly arrives: number;
  readonly usefulUntil: number;
  /** Ordered after this day, nothing of it is of use. */
  readonly lastOrderDay: number;
  /** Share of seasons in which goods handed over on the day of arrival are in time for the sowing window, by hectares. */
  readonly chanceInTime: number;
  /** Packs of inoculant for which the cool store has room at once beside today's stock; -1 for other goods. */
  readonly packsAtOnce: number;
}

/**
 * The smallest change that lifts the whole shortfall of a row, found by solving again. Days are day numbers; `product`,
 * `depot` and `index` (of the decisions) are places in their lists.
 */
export type SmallestChange =
  | {
      readonly kind: 'more-packs';
      readonly product: number;
      readonly depot: number;
      /** With one pack less, some of the shortfall stays. */
      readonly packs: number;
      readonly arrives: number;
      readonly liftsKg: number;
      readonly cost: number | null;
    }
  | { readonly kind: 'release-decision'; readonly index: number; readonly liftsKg: number }
  /** The seed comes first: without it there is nothing to coat. */
  | { readonly kind: 'seed-first' }
  /** Every product that fits would come after the last useful day; the first would be there on this day. */
  | { readonly kind: 'too-late'; readonly arrives: number }
  | { readonly kind: 'no-product' }
  | { readonly kind: 'not-by-stock'; readonly reason: ShortfallReason }
  | { readonly kind: 'none-needed' };

/** How the packs of one lot are shared out inside a community: which growers use which packs. */
export interface PackShare {
  readonly grant: number;
  /** Growers that share, in equal parts; NaN where the number of growers is not known. */
  readonly growers: number;
  /** Whole packs opened and emptied within one day's batch, and growers to each pack. */
  readonly growersPerPack: number;
  /** An opened pack must be used within this many days (label, else reference). */
  readonly openedPackDays: number;
  readonly sowTogether: boolean;
}

/** What moves: goods of one kind for one hand-over place from one depot. */
export interface Consignment {
  readonly community: number;
  readonly place: number;
  readonly depot: number;
  /** `apart`: seed and other dry goods, or inoculant. `both`: carried together. Fertiliser always stands by itself. */
  readonly group: 'dry' | 'inoculant' | 'both' | 'fertiliser';
  /** Rows of Grants. */
  readonly grants: readonly number[];
  readonly kg: number;
  readonly coolLitres: number;
  /** Kilograms of inoculant in it, the thermal mass in the box. */
  readonly inoculantKg: number;
  /** Lowest storage limit among its packs, °C; null where no label states one. */
  readonly maxStorageC: number | null;
  /** Hectares it serves: sown with its seed, inoculated with its packs, or fertilised. */
  readonly hectares: number;
  /** What its packs cost, in the scenario's currency; null where a price is missing. */
  readonly worth: number | null;
  /** First and last planning day (offset from planning.from) on which handing it over is of use. */
  readonly earliest: number;
  readonly latest: number;
  readonly reach: ReachCurve;
}

/**
 * Share of its hectares' value still had, by hand-over day and log10 loss on the road: value[day * lossBreaks.length + k]
 * at loss lossBreaks[k]; straight lines between, never rising; flat beyond the last break. Days count from planning.from.
 */
export interface ReachCurve {
  readonly lossBreaks: Float64Array;
  readonly value: Float64Array;
  /** Chance of being in time for the sowing window, by hand-over day. */
  readonly inTime: Float64Array;
}

export interface Allocation {
  /** 1, or 2 where stock freed by what could not be delivered was given again. */
  readonly round: number;
  readonly lots: readonly LotVerdict[];
  readonly grants: Grants;
  readonly shares: Shares;
  readonly proofs: readonly FairShareProof[];
  readonly shortfalls: readonly Shortfall[];
  readonly remedies: readonly Remedy[];
  readonly orders: readonly StockOrder[];
  readonly packShares: readonly PackShare[];
  readonly consignments: readonly Consignment[];
}
