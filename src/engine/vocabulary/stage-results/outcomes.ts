import type { SeasonCost } from '../reasons.ts';

/** One row per row of Shares. Hectares: expected over the season's members. */
export interface CropOutcomes {
  /** Sown with seed, own or brought. */
  readonly seedHa: Float64Array;
  /** Of those, seed in hand before the window closes. */
  readonly seedInTimeHa: Float64Array;
  /** Inoculated, packs handed over. */
  readonly inoculatedHa: Float64Array;
  /** Inoculated, in time, and at or above the floor of rhizobia per seed. */
  readonly reachedHa: Float64Array;
  /** log10 rhizobia per seed at sowing, expected; NaN where nothing is inoculated. */
  readonly log10PerSeed: Float64Array;
  /** Losses in log10, expected: store, road, community, seed. */
  readonly storeLog10: Float64Array;
  readonly roadLog10: Float64Array;
  readonly communityLog10: Float64Array;
  readonly seedLog10: Float64Array;
  readonly nitrogenKg: Float64Array;
  readonly grainT: Float64Array;
}

export interface Range {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** A range with its quarters. */
export interface Spread extends Range {
  readonly p25: number;
  readonly p75: number;
}

/** Bounds that are no quantiles. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

export interface ZoneOutcome {
  /** -1: outside all zones. */
  readonly zone: number;
  readonly communities: number;
  readonly farmers: number;
  readonly plannedHa: number;
  readonly seedKg: number;
  readonly inoculantPacks: number;
  readonly shareMet: number;
  readonly reachedHa: number;
  /**
   * Share of seasons and draws in which at least half of the zone's inoculated land is sown in time with live rhizobia; NaN where
   * the zone is sent no inoculant or nothing can be played.
   */
  readonly inTimeChance: number;
  /** Over seasons and draws; `reachedHa` is the mean over seasons at the central parameters. */
  readonly reachedRange: Range;
  readonly nitrogenKg: Range;
  /** Hectares that the packs signed for coat, and of those the hectares reported sown. */
  readonly signedForHa: number;
  readonly sownHa: number;
}

/**
 * The plan in each member of its season at the central parameters, in hectares. Reached, and why the rest of the inoculated
 * land was not: they add up to the land inoculated.
 */
export interface PastSeasons {
  readonly year: Int32Array;
  readonly reachedHa: Float64Array;
  /** The season had no onset. */
  readonly noOnsetHa: Float64Array;
  /** The window closed before the goods could be sown. */
  readonly lateHa: Float64Array;
  /** The packs may have reached 40 °C in that season's heat and stay on hold. */
  readonly hotHa: Float64Array;
  /** Above the floor when handed over, below it at sowing: what the wait for rain cost. */
  readonly waitingHa: Float64Array;
  /** Below the floor however soon it is sown, or of unknown count. */
  readonly weakHa: Float64Array;
  readonly cost: readonly SeasonCost[];
}

/** What makes up the cost, in the scenario's currency; null where a part is not priced. */
export interface CostParts {
  readonly inoculant: number | null;
  readonly otherGoods: number | null;
  readonly kilometres: number | null;
  readonly vehicleDays: number | null;
  readonly crews: number | null;
  readonly ice: number | null;
  /** By the programme's own `training.costPerCommunity` and `testing.costPerLot` in its assumptions. */
  readonly training: number | null;
  readonly testing: number | null;
}

/** Hectares, kg, t and money of the whole plan; NaN where a price is missing. */
export interface CentralTotals {
  readonly reachedHa: number;
  /** Inoculated hectares, each by the yield kept when late times the worth of its live rhizobia. */
  readonly valueHa: number;
  readonly farmersReached: number;
  readonly nitrogenKg: number;
  readonly programmeNitrogenKg: number;
  readonly inoculationNitrogenKg: number;
  readonly inoculationAtMostKg: number;
  readonly netNitrogenKg: number;
  /** In crop residues, by the inventory method of the IPCC: another quantity than nitrogen fixed. */
  readonly residueNitrogenKg: number;
  /** Nitrogen fixed by the method of 2008, for comparison. */
  readonly earlierNitrogenKg: number;
  readonly grainT: number;
  readonly programmeGrainT: number;
  readonly inoculationGrainT: number;
  readonly programmeGrainWorth: number;
  readonly inoculationGrainWorth: number;
  /** What the same land would not give without its fertiliser: a part of what is owed to the programme. */
  readonly phosphorusNitrogenKg: number;
  readonly phosphorusGrainT: number;
}

export interface Headline {
  readonly plannedHa: number;
  readonly seedHa: number;
  readonly inoculatedHa: number;
  /** Of the hectares with seed, those for which fertiliser is handed over. */
  readonly fertilisedHa: number;
  readonly reachedHa: Spread;
  readonly nitrogenKg: Spread;
  /**
   * Nitrogen owed to the programme: fixed with the plan, less what the growers' own seed alone would fix, uncoated, in the
   * same season and draw. Counts what the inoculant adds and all that grows from seed brought.
   */
  readonly programmeNitrogenKg: Spread;
  /**
   * Of all nitrogen fixed, what inoculation itself adds: fixed with the plan, less the same land sown on the same days without
   * its inoculant, in the same season and draw. Comes from the gain in yield alone and may be below nought in a draw.
   */
  readonly inoculationNitrogenKg: Spread;
  /**
   * The second bound of the same, where no field held compatible rhizobia of its own and the method cannot show what inoculation
   * does: all that is fixed on the hectares reached.
   */
  readonly inoculationAtMostKg: Spread;
  /** Fixed less what leaves the fields with the grain; below nought where the crop draws on the soil. */
  readonly netNitrogenKg: Spread;
  readonly grainT: Spread;
  /** Grain beyond what own seed alone would give, and what inoculation adds on the land it coats. */
  readonly programmeGrainT: Spread;
  readonly inoculationGrainT: Spread;
  /** Nitrogen (through the yield alone) and grain that the same land would not give without its fertiliser. */
  readonly phosphorusNitrogenKg: Spread;
  readonly phosphorusGrainT: Spread;
  /** Means over the seasons at the central parameters: what another hand can work out again. */
  readonly central: CentralTotals;
  /** In communities that plan land, where their number is given. */
  readonly farmers: number;
  /** Farmers of each community, in proportion to the part of its planned hectares that is reached. */
  readonly farmersReached: Spread;
  /** Women among the farmers expected to be reached, 0 to 1, where both are counted; null where nowhere. */
  readonly womenShare: number | null;
  /** Hectares that the packs signed for coat, and of those the hectares reported sown. */
  readonly signedForHa: number;
  readonly sownHa: number;
  readonly cost: CostParts;
  /** All cost over the hectares reached: least where most are reached. Null where a price is missing or none is reached. */
  readonly costPerHectare: Range | null;
  /** The same of delivery alone, at the middle. */
  readonly deliveryPerHectare: number | null;
  /** Hectares sown because the programme brought the seed. */
  readonly broughtSeedHa: number;
  /** Fertiliser nitrogen that a cereal after those hectares can do without, and its price. */
  readonly residualNitrogenKg: Bounds;
  readonly residualWorth: Bounds | null;
  /** Null where prices are not given. */
  readonly goodsCost: number | null;
  readonly deliveryCost: number | null;
  /** Grain owed to the programme and to inoculation at the prices given; null where a price it needs is not. */
  readonly programmeGrainWorth: Range | null;
  readonly inoculationGrainWorth: Range | null;
  /** Worth of the grain owed to the programme over all its cost; of that owed to inoculation over the price of its packs. */
  readonly valueCostRatio: Range | null;
  readonly inoculantValueCostRatio: Range | null;
  readonly communitiesReached: number;
  readonly communities: number;
}

export interface Outcomes {
  readonly crops: CropOutcomes;
  readonly zones: readonly ZoneOutcome[];
  readonly seasons: PastSeasons;
  readonly headline: Headline;
}
