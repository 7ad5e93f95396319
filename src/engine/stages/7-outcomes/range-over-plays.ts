import { quantile } from '../../numerics/quantile.ts';
import type { Range } from '../../vocabulary/index.ts';
import { DRAW_SEED, DRAWS, drawParameters } from './draw-parameters.ts';
import { makePlayResult, type PreparedPlay, playSeason } from './play-season.ts';

/** Quantiles over every member of the season played with every draw. */
export interface PlanRanges {
  readonly reachedHa: Range;
  readonly nitrogenKg: Range;
  readonly programmeNitrogenKg: Range;
  readonly grainT: Range;
  /** Per zone, the last for outside all zones. */
  readonly zoneNitrogenKg: readonly Range[];
}

export function rangeOverPlays(prepared: PreparedPlay): PlanRanges {
  const plays = prepared.members * DRAWS;
  const column = () => new Float64Array(plays);
  const [reachedHa, nitrogenKg, programmeNitrogenKg, grainT] = [column(), column(), column(), column()];
  const zoneNitrogenKg = Array.from({ length: prepared.zones + 1 }, column);
  const result = makePlayResult(prepared);
  let play = 0;
  for (const draw of drawParameters(DRAWS, prepared.drawWidth, DRAW_SEED)) {
    for (let member = 0; member < prepared.members; member++, play++) {
      playSeason(prepared, member, draw, result);
      reachedHa[play] = result.reachedHa;
      nitrogenKg[play] = result.nitrogenKg;
      programmeNitrogenKg[play] = result.programmeNitrogenKg;
      grainT[play] = result.grainT;
      zoneNitrogenKg.forEach((zone, z) => {
        zone[play] = result.zoneNitrogenKg[z] as number;
      });
    }
  }
  return {
    reachedHa: rangeOf(reachedHa),
    nitrogenKg: rangeOf(nitrogenKg),
    programmeNitrogenKg: rangeOf(programmeNitrogenKg),
    grainT: rangeOf(grainT),
    zoneNitrogenKg: zoneNitrogenKg.map(rangeOf),
  };
}

/** Nought where nothing was played. */
function rangeOf(values: Float64Array): Range {
  const at = (p: number) => (values.length > 0 ? quantile(values, p) : 0);
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
