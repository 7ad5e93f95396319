import { exactSum } from '../../numerics/exact-sum.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';

/**
 * What is asked for, one row per community and crop with planned hectares above nought, by community, then crop: the rows
 * that `Shares` will have. Parts of row r in zones stand at partOffsets[r] to partOffsets[r + 1].
 */
export interface DemandRows {
  readonly count: number;
  readonly community: Int32Array;
  readonly crop: Int32Array;
  readonly plannedHa: Float64Array;
  readonly seedNeedKg: Float64Array;
  readonly ownSeedKg: Float64Array;
  readonly programmeSeedKg: Float64Array;
  /** Kilograms of seed for one hectare. */
  readonly kgPerHa: Float64Array;
  readonly partOffsets: Int32Array;
  /** -1 outside all zones. */
  readonly partZone: Int32Array;
  /** Part of the row's planned hectares, 0 to 1. */
  readonly partFraction: Float64Array;
}

/** Sums the needs of each community and crop over zones. */
export function gatherDemand(needs: Needs): DemandRows {
  const lines = linesByRow(needs);
  const count = lines.length;
  const sum = (column: Float64Array) =>
    Float64Array.from(lines, (line) => exactSum(line.map((n) => column[n] as number)));
  const plannedHa = sum(needs.plannedHa);
  const seedNeedKg = sum(needs.seedKg);
  const partOffsets = new Int32Array(count + 1);
  lines.forEach((line, r) => {
    partOffsets[r + 1] = (partOffsets[r] as number) + line.length;
  });
  const parts = lines.flatMap((line, r) =>
    line.map((n) => ({
      zone: needs.zone[n] as number,
      fraction: (needs.plannedHa[n] as number) / (plannedHa[r] as number),
    })),
  );
  return {
    count,
    community: Int32Array.from(lines, (line) => needs.community[line[0] as number] as number),
    crop: Int32Array.from(lines, (line) => needs.crop[line[0] as number] as number),
    plannedHa,
    seedNeedKg,
    ownSeedKg: sum(needs.ownSeedKg),
    programmeSeedKg: sum(needs.programmeSeedKg),
    kgPerHa: seedNeedKg.map((kg, r) => kg / (plannedHa[r] as number)),
    partOffsets,
    partZone: Int32Array.from(parts, ({ zone }) => zone),
    partFraction: Float64Array.from(parts, ({ fraction }) => fraction),
  };
}

/** Lines of the needs that make up each row, by community, then crop. */
function linesByRow(needs: Needs): number[][] {
  const rows = new Map<number, number[]>();
  const crops = needs.seedsPerKg.length;
  for (let n = 0; n < needs.community.length; n++) {
    const key = (needs.community[n] as number) * crops + (needs.crop[n] as number);
    const line = rows.get(key);
    if (line) line.push(n);
    else rows.set(key, [n]);
  }
  return [...rows].sort(([a], [b]) => a - b).map(([, line]) => line);
}
