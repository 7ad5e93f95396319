import { at, type CheckedCase, lotAndProduct, planningDayOf } from './checked-case.ts';

/** Packs of one lot handed over for one community and crop on one planning day. */
export interface Handed {
  readonly lot: number;
  readonly kind: string;
  /** Row of the stops. */
  readonly stop: number;
  readonly day: number;
  readonly packs: number;
  readonly kg: number;
  /** Seed that they are or coat. */
  readonly seedKg: number;
  readonly roadLog10: number;
}

/** What the stops of the plan hand over, by `community * crops + crop`. */
export function handedGoods(c: CheckedCase): ReadonlyMap<number, readonly Handed[]> {
  const { stops, trips, loads } = c.plan.delivery;
  const { grants } = c.plan.allocation;
  const goods = new Map<number, Handed[]>();
  stops.loads.forEach((rows, stop) => {
    const day = planningDayOf(c, at(trips.date, at(stops.trip, stop)));
    for (const load of rows)
      at(loads.grants, load).forEach((grant, i) => {
        const product = lotAndProduct(c, at(grants.lot, grant))?.product;
        if (!product) return;
        const packs = at(at(loads.packs, load), i);
        const part = packs / Math.max(1, at(grants.packs, grant));
        const key = at(grants.community, grant) * c.scenario.crops.length + at(grants.crop, grant);
        const list = goods.get(key) ?? [];
        list.push({
          lot: at(grants.lot, grant),
          kind: product.kind,
          stop,
          day,
          packs,
          kg: (packs * product.packG) / 1000,
          seedKg: at(grants.servesSeedKg, grant) * part,
          roadLog10: product.kind === 'inoculant' ? (stops.log10Loss[stop] ?? 0) : 0,
        });
        goods.set(key, list);
      });
  });
  return goods;
}

interface Portion {
  readonly hectares: number;
  /** Stop that brings its last goods; -1 for own seed alone. */
  readonly stop: number;
  readonly inoculant: Handed | null;
  readonly bags: Handed | null;
}

/** Land of a community and crop as it is sown: hectares with the same goods on the same day. */
export interface OwnLand {
  /** Sown from own seed whatever is brought. */
  readonly ownHa: number;
  readonly seedHa: number;
  readonly inoculatedHa: number;
  readonly fertilisedHa: number;
  /** Seed by the day it is there. */
  readonly seed: readonly Portion[];
  readonly portions: readonly Portion[];
}

/**
 * Seed covers planned land in the order it is there, own seed and what was handed over before first; inoculant and fertiliser cover
 * seeded land in the order they come, fertiliser a like part of all of it.
 */
export function coverLand(
  plannedHa: number,
  needKg: number,
  ownKg: number,
  thereKg: number,
  goods: readonly Handed[],
): OwnLand {
  const byDay = [...goods].sort((a, b) => a.day - b.day);
  const hectares = (kg: number) => (needKg > 0 ? (kg / needKg) * plannedHa : 0);
  const take = (limitHa: number, from: readonly Portion[]): readonly Portion[] => {
    let left = limitHa;
    return from.map((portion) => {
      const taken = Math.min(left, portion.hectares);
      left -= taken;
      return { ...portion, hectares: taken };
    });
  };
  const total = (portions: readonly Portion[]) => portions.reduce((sum, portion) => sum + portion.hectares, 0);
  const none = { inoculant: null, bags: null };
  const own: Portion = { hectares: hectares(ownKg), stop: -1, ...none };
  const brought = byDay.filter(({ kind }) => kind === 'seed');
  const seed = take(plannedHa, [
    own,
    { ...own, hectares: hectares(thereKg) },
    ...brought.map(({ seedKg, stop }) => ({ hectares: hectares(seedKg), stop, ...none })),
  ]);
  const seedHa = total(seed);
  const packs = byDay.filter(({ kind }) => kind === 'inoculant');
  const coated = take(
    seedHa,
    packs.map((inoculant) => ({
      hectares: hectares(inoculant.seedKg),
      stop: inoculant.stop,
      inoculant,
      bags: null,
    })),
  );
  const inoculatedHa = total(coated);
  const bare = seedHa > 0 ? 1 - inoculatedHa / seedHa : 0;
  const fed = take(
    seedHa,
    byDay
      .filter(({ kind }) => kind === 'fertiliser')
      .map((bags) => ({ hectares: hectares(bags.seedKg), stop: -1, inoculant: null, bags })),
  );
  const fertilisedHa = total(fed);
  const feed = (portion: Portion): readonly Portion[] =>
    fertilisedHa === 0
      ? [portion]
      : [
          { ...portion, hectares: portion.hectares * (1 - fertilisedHa / seedHa) },
          ...fed.map(({ hectares: ha, bags }) => ({ ...portion, hectares: (portion.hectares * ha) / seedHa, bags })),
        ];
  return {
    ownHa: Math.min(plannedHa, hectares(ownKg)),
    seedHa,
    inoculatedHa,
    fertilisedHa,
    seed,
    portions: [...seed.map((portion) => ({ ...portion, hectares: portion.hectares * bare })), ...coated].flatMap(feed),
  };
}
