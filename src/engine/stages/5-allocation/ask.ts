import type { ProductKind } from '../../vocabulary/supply.ts';
import type { DemandRows } from './demand-rows.ts';
import type { Holds } from './read-holds.ts';

/** Smaller amounts than this, kg, are rounding noise of the linear program and not asked for (a milligram). */
export const NOISE_KG = 1e-6;

/** What is asked of one commodity, in kg of seed per demand row; of fertiliser in hectares (`count-by-land`). */
export interface Ask {
  readonly commodity: ProductKind;
  /** The need raised by the contingency; 0: takes no part. */
  readonly askedKg: Float64Array;
  /** Already given and promised (second round). */
  readonly keptKg: Float64Array;
  /** Least and most that a decision or the second round lets the row have. */
  readonly lowKg: Float64Array;
  readonly highKg: Float64Array;
  /** 1 where the row gets its `highKg` and stands outside the equal share. */
  readonly held: Uint8Array;
  /** 1 where the first round could not bring all: the row has no claim to an equal share of the rest. */
  readonly leftBehind: Uint8Array;
}

/**
 * Bounds of each row: what is asked, within what a decision allows. A decision's share is the share that a plan shows: of
 * all seed the planned land asks for, the growers' own included. */
export function boundAsk(
  demand: DemandRows,
  commodity: Ask['commodity'],
  needKg: Float64Array,
  contingencyPercent: number,
  holds: Holds,
  keptKg: Float64Array,
  leftBehind: Uint8Array,
): Ask {
  const askedKg = needKg.map((kg) => (kg > NOISE_KG ? kg * (1 + contingencyPercent / 100) : 0));
  const lowKg = new Float64Array(demand.count);
  const highKg = askedKg.slice();
  const held = new Uint8Array(demand.count);
  for (let r = 0; r < demand.count; r++) {
    const hold = commodity === 'seed' || commodity === 'inoculant' ? holds.byRow[commodity].get(r) : undefined;
    if (hold) {
      const own = commodity === 'seed' ? (demand.ownSeedKg[r] as number) : 0;
      const kgAt = (share: number) => Math.max(0, share * (demand.seedNeedKg[r] as number) - own);
      highKg[r] = Math.min(askedKg[r] as number, kgAt(hold.high));
      lowKg[r] = Math.min(highKg[r] as number, kgAt(hold.low));
      if (hold.low === hold.high) held[r] = 1;
    }
    highKg[r] = Math.max(highKg[r] as number, keptKg[r] as number);
    lowKg[r] = Math.min(highKg[r] as number, Math.max(lowKg[r] as number, keptKg[r] as number));
  }
  return { commodity, askedKg, keptKg, lowKg, highKg, held, leftBehind };
}
