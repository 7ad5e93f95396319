import { NOISE_KG } from './ask.ts';
import type { Pool } from './form-pools.ts';
import type { PackSize } from './stock-groups.ts';

/** What rounding needs to know of each row of a pool, in kg of seed. */
export interface RowBounds {
  readonly keptKg: Float64Array;
  readonly askedKg: Float64Array;
  readonly highKg: Float64Array;
  /** Rows of a lower rank are served first with what is left over. */
  readonly rank: Int32Array;
}

/** Whole packs per arc and pack size of its group: `packs[arc][size]`. */
export type PacksOfArcs = readonly Int32Array[];

/**
 * Makes whole packs of the shares, once.
 *
 * Down: in each group the largest packs first, as many as fit below each row's share; a size that runs out is rationed by
 * how many each row could take. Up: what is left over goes pack by pack, the row farthest below its share first (measured
 * against what it asked, so that a small community is not rounded to nothing), then to any row still short.
 *
 * What this proves: after the way down a size is either used up or larger than every row's remainder in its group; the
 * remainders sum to no more than the stock left. So from each group a row draws on it falls short of its share by less
 * than one pack of that group, and where all packs are used up by nothing. No row gets as much as a whole smallest pack
 * that may go to it beyond what it may have. No pack that fits is left lying while a row is short.
 */
export function makeWholePacks(
  pool: Pool,
  arcKg: Float64Array,
  sizes: readonly (readonly PackSize[])[],
  bounds: RowBounds,
): PacksOfArcs {
  const packs = Array.from(pool.arcGroup, (g) => new Int32Array((sizes[g] as readonly PackSize[]).length));
  const left = sizes.map((own) => Int32Array.from(own, (size) => size.packs));
  const arcsOfGroup: number[][] = sizes.map(() => []);
  pool.arcGroup.forEach((g, a) => {
    arcsOfGroup[g]?.push(a);
  });
  arcsOfGroup.forEach((arcs, g) => {
    roundDown(arcs, arcKg, sizes[g] as readonly PackSize[], left[g] as Int32Array, packs);
  });
  const given = bounds.keptKg.slice();
  const shareKg = bounds.keptKg.slice();
  pool.arcRow.forEach((r, a) => {
    const own = sizes[pool.arcGroup[a] as number] as readonly PackSize[];
    own.forEach(({ kg }, s) => {
      given[r] = (given[r] as number) + kg * ((packs[a] as Int32Array)[s] as number);
    });
    shareKg[r] = (shareKg[r] as number) + (arcKg[a] as number);
  });
  const state: Rounding = { pool, arcKg, sizes, bounds, packs, left, given, arcsOfRow: arcsByRow(pool) };
  roundUp(state, shareKg);
  roundUp(state, bounds.highKg);
  return packs;
}

/** Gives packs of one group without passing any row's share, largest first. */
function roundDown(
  arcs: readonly number[],
  arcKg: Float64Array,
  sizes: readonly PackSize[],
  left: Int32Array,
  packs: readonly Int32Array[],
): void {
  const remainder = arcs.map((a) => arcKg[a] as number);
  sizes.forEach(({ kg }, s) => {
    const wanted = remainder.map((rest) => Math.floor((rest + NOISE_KG) / kg));
    const given = rationPacks(wanted, left[s] as number);
    given.forEach((count, i) => {
      (packs[arcs[i] as number] as Int32Array)[s] = count;
      remainder[i] = Math.max(0, (remainder[i] as number) - count * kg);
      left[s] = (left[s] as number) - count;
    });
  });
}

/** All that is wanted where stock allows; else in proportion to it, by largest remainder (Hamilton's method). */
export function rationPacks(wanted: readonly number[], stock: number): number[] {
  const total = wanted.reduce((sum, count) => sum + count, 0);
  if (total <= stock) return [...wanted];
  const given = wanted.map((count) => Math.floor((count * stock) / total));
  let spare = stock - given.reduce((sum, count) => sum + count, 0);
  const byRemainder = wanted
    .map((count, i) => ({ i, remainder: (count * stock) % total }))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  for (const { i } of byRemainder) {
    if (spare-- <= 0) break;
    given[i] = (given[i] as number) + 1;
  }
  return given;
}

interface Rounding {
  readonly pool: Pool;
  readonly arcKg: Float64Array;
  readonly sizes: readonly (readonly PackSize[])[];
  readonly bounds: RowBounds;
  readonly packs: readonly Int32Array[];
  /** Packs left by group and size. */
  readonly left: readonly Int32Array[];
  /** Given so far per row, kg. */
  readonly given: Float64Array;
  readonly arcsOfRow: readonly (readonly number[])[];
}

/** Gives left-over packs to rows below their target, one a turn, until none fits. */
function roundUp(state: Rounding, target: Float64Array): void {
  const { bounds, given } = state;
  const shortOf = (r: number) => ((target[r] as number) - (given[r] as number)) / (bounds.askedKg[r] as number);
  let open = Array.from(given, (_, r) => r).filter((r) => (target[r] as number) - (given[r] as number) > NOISE_KG);
  while (open.length > 0 && state.left.some((own) => own.some((count) => count > 0))) {
    const turn = open
      .map((r) => ({ r, short: shortOf(r), rank: bounds.rank[r] as number }))
      .sort((a, b) => a.rank - b.rank || b.short - a.short || a.r - b.r);
    open = turn.flatMap(({ r }) =>
      giveOnePack(state, r) && (target[r] as number) - (given[r] as number) > NOISE_KG ? [r] : [],
    );
  }
}

/** One pack to a row: from where it is served already, the smallest that fits, the nearest depot. False where none fits. */
function giveOnePack({ pool, arcKg, sizes, bounds, packs, left, given, arcsOfRow }: Rounding, r: number): boolean {
  const arcs = arcsOfRow[r] as readonly number[];
  const most = mostAllowed(pool, sizes, arcs, bounds.highKg[r] as number);
  let best: { readonly a: number; readonly s: number; readonly kg: number } | null = null;
  for (const a of arcs) {
    const g = pool.arcGroup[a] as number;
    const own = sizes[g] as readonly PackSize[];
    for (let s = own.length - 1; s >= 0; s--) {
      const { kg } = own[s] as PackSize;
      if (((left[g] as Int32Array)[s] as number) <= 0) continue;
      if ((given[r] as number) + kg > most) break;
      if (best === null || comesBefore(pool, arcKg, { a, kg }, best)) best = { a, s, kg };
      break;
    }
  }
  if (best === null) return false;
  const own = left[pool.arcGroup[best.a] as number] as Int32Array;
  own[best.s] = (own[best.s] as number) - 1;
  const arcPacks = packs[best.a] as Int32Array;
  arcPacks[best.s] = (arcPacks[best.s] as number) + 1;
  given[r] = (given[r] as number) + best.kg;
  return true;
}

/** What the row may have, and less than one smallest pack that may go to it beyond. */
export function mostAllowed(
  pool: Pool,
  sizes: readonly (readonly PackSize[])[],
  arcs: readonly number[],
  highKg: number,
): number {
  const smallest = arcs.reduce((least, a) => {
    const own = sizes[pool.arcGroup[a] as number] as readonly PackSize[];
    return Math.min(least, own[own.length - 1]?.kg ?? least);
  }, Number.POSITIVE_INFINITY);
  return highKg + smallest - NOISE_KG;
}

function comesBefore(
  pool: Pool,
  arcKg: Float64Array,
  one: { readonly a: number; readonly kg: number },
  other: { readonly a: number; readonly kg: number },
): boolean {
  const serves = (a: number) => ((arcKg[a] as number) > NOISE_KG ? 0 : 1);
  const order =
    serves(one.a) - serves(other.a) ||
    one.kg - other.kg ||
    (pool.arcMinutes[one.a] as number) - (pool.arcMinutes[other.a] as number);
  return order < 0;
}

function arcsByRow(pool: Pool): number[][] {
  const arcs: number[][] = pool.rows.map(() => []);
  pool.arcRow.forEach((r, a) => {
    arcs[r]?.push(a);
  });
  return arcs;
}

/** How far whole packs may leave a row below its share: one largest pack of each group that its share is drawn from, kg. */
export function roundingKg(pool: Pool, arcKg: Float64Array, sizes: readonly (readonly PackSize[])[]): number {
  const byRow = new Float64Array(pool.rows.length);
  pool.arcRow.forEach((r, a) => {
    const largest = sizes[pool.arcGroup[a] as number]?.[0]?.kg ?? 0;
    if ((arcKg[a] as number) > NOISE_KG) byRow[r] = (byRow[r] as number) + largest;
  });
  return byRow.reduce((most, kg) => Math.max(most, kg), 0);
}
