import type { Shares } from '../../vocabulary/index.ts';
import type { HandedGoods } from './handed-goods.ts';

/** Hectares of one community and crop that get the same goods on the same day. */
export interface LandPortion {
  readonly shareRow: number;
  readonly hectares: number;
  /** Visit that hands over the last goods for this land; -1 where growers sow what they have already. */
  readonly visit: number;
  /** Inoculant for it; null where it is sown uncoated. */
  readonly inoculant: HandedGoods | null;
  /** Fertiliser for it; null where it gets none. */
  readonly bags: HandedGoods | null;
}

/** What one community has of one crop: land with seed by the day the seed is there, and the land as it is sown. */
export interface CropLand {
  /** Sown from the growers' own seed, whatever the programme does. */
  readonly ownHa: number;
  readonly seed: readonly { readonly hectares: number; readonly visit: number }[];
  readonly seedHa: number;
  readonly inoculatedHa: number;
  readonly fertilisedHa: number;
  readonly portions: readonly LandPortion[];
}

/**
 * Turns kilograms into hectares for one row of shares. Seed covers land in the order it is there, the growers' own and what was handed
 * over before first, up to the planned hectares. Inoculant covers seeded land in the order it comes. Growers who are handed inoculant wait
 * for it (assumed), so that land is sown after its hand-over; the rest is sown as its seed comes, each day's seed in
 * proportion (assumed: inoculant goes to growers alike, whatever the day of their seed). So does fertiliser, to land that has seed;
 * nobody waits for it.
 */
export function divideLand(shares: Shares, shareRow: number, goods: readonly HandedGoods[]): CropLand {
  const plannedHa = shares.plannedHa[shareRow] ?? 0;
  const needKg = shares.seedNeedKg[shareRow] ?? 0;
  const hectaresOf = (kg: number) => (needKg > 0 ? (kg / needKg) * plannedHa : 0);
  const byDay = [...goods].sort((a, b) => a.day - b.day);
  const seedComes = byDay.filter(({ kind }) => kind === 'seed');
  const ownKg = shares.ownSeedKg[shareRow] ?? 0;

  const seed = coverLand(
    [
      { hectares: hectaresOf(ownKg), visit: -1 },
      { hectares: hectaresOf(shares.seedThereKg[shareRow] ?? 0), visit: -1 },
      ...seedComes.map(({ seedKg, visit }) => ({ hectares: hectaresOf(seedKg), visit })),
    ],
    plannedHa,
  );
  const seedHa = sumHectares(seed);
  const coated = coverLand(
    byDay
      .filter(({ kind }) => kind === 'inoculant')
      .map((inoculant) => ({ hectares: hectaresOf(inoculant.seedKg), visit: inoculant.visit, inoculant })),
    seedHa,
  );
  const inoculatedHa = sumHectares(coated);
  const uncoated = seedHa > 0 ? 1 - inoculatedHa / seedHa : 0;
  const fertilised = coverLand(
    byDay.filter(({ kind }) => kind === 'fertiliser').map((bags) => ({ hectares: hectaresOf(bags.seedKg), bags })),
    seedHa,
  );
  return {
    ownHa: Math.min(plannedHa, hectaresOf(ownKg)),
    seed,
    seedHa,
    inoculatedHa,
    fertilisedHa: sumHectares(fertilised),
    portions: [
      ...seed.map(({ hectares, visit }) => ({ shareRow, hectares: hectares * uncoated, visit, inoculant: null })),
      ...coated.map((portion) => ({ shareRow, ...portion })),
    ]
      .flatMap((portion) => cutByBags(portion, fertilised, seedHa))
      .filter(({ hectares }) => hectares > 0),
  };
}

/** Parts a portion by the fertiliser it gets: of each delivery as much as of all the land. */
function cutByBags(
  portion: Omit<LandPortion, 'bags'>,
  fertilised: readonly { readonly hectares: number; readonly bags: HandedGoods }[],
  seedHa: number,
): LandPortion[] {
  if (fertilised.length === 0) return [{ ...portion, bags: null }];
  const withBags = fertilised.map(({ hectares, bags }) => ({
    ...portion,
    hectares: (portion.hectares * hectares) / seedHa,
    bags,
  }));
  return [{ ...portion, hectares: Math.max(0, portion.hectares - sumHectares(withBags)), bags: null }, ...withBags];
}

/** Takes portions in order until the land is covered; the one that reaches the limit is cut, later ones are left out. */
function coverLand<T extends { readonly hectares: number }>(portions: readonly T[], limitHa: number): T[] {
  let left = limitHa;
  return portions.flatMap((portion) => {
    const hectares = Math.min(portion.hectares, left);
    left -= hectares;
    return hectares > 0 ? [{ ...portion, hectares }] : [];
  });
}

function sumHectares(portions: readonly { readonly hectares: number }[]): number {
  return portions.reduce((sum, { hectares }) => sum + hectares, 0);
}
