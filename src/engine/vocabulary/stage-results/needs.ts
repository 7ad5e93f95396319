/** One row per zone, community and crop with planned hectares above nought; sorted by community, zone, crop. */
export interface Needs {
  readonly zone: Int32Array;
  readonly community: Int32Array;
  /** Index into scenario.crops. */
  readonly crop: Int32Array;
  readonly plannedHa: Float64Array;
  /** Seed to be sown, kg at reference germination, the growers' own included. */
  readonly seedKg: Float64Array;
  readonly ownSeedKg: Float64Array;
  /** Seed the programme must bring: seedKg less ownSeedKg, never below nought. */
  readonly programmeSeedKg: Float64Array;
  /** By the dose of the reference product, for all seed sown, the growers' own included. */
  readonly inoculantG: Float64Array;
  /** Index into scenario.products of the reference inoculant; -1 where no compatible product exists. */
  readonly product: Int32Array;
  /** Fractions allowed. */
  readonly packsNeeded: Float64Array;
  readonly stickerPacks: Float64Array;
  readonly waterL: Float64Array;
  readonly fertiliserKg: Float64Array;
  /** Per crop, seeds in one kilogram and seed rate used where the community gives none. */
  readonly seedsPerKg: Float64Array;
}
