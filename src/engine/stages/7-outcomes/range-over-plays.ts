import { quantile } from '../../numerics/quantile.ts';
import type { Spread } from '../../vocabulary/index.ts';
import { DRAW_SEED, DRAWS, drawParameters } from './draw-parameters.ts';
import { makePlayResult, type PreparedPlay, playSeason } from './play-season.ts';

/** Quantiles over every member of the season played with every draw. */
export interface PlanRanges {
  readonly reachedHa: Spread;
  readonly nitrogenKg: Spread;
  readonly programmeNitrogenKg: Spread;
  readonly inoculationNitrogenKg: Spread;
  readonly grainT: Spread;
  readonly farmersReached: Spread;
  /** Per zone, the last for outside all zones. */
  readonly zoneReachedHa: readonly Spread[];
  readonly zoneNitrogenKg: readonly Spread[];
}

export function rangeOverPlays(prepared: PreparedPlay): PlanRanges {
  const plays = prepared.members * DRAWS;
  const column = () => new Float64Array(plays);
  const [reachedHa, nitrogenKg, programmeNitrogenKg, grainT] = [column(), column(), column(), column()];
  const [inoculationNitrogenKg, farmersReached] = [column(), column()];
  const zoneReachedHa = Array.from({ length: prepared.zones + 1 }, column);
  const zoneNitrogenKg = Array.from({ length: prepared.zones + 1 }, column);
  const result = makePlayResult(prepared);
  let play = 0;
  for (const draw of drawParameters(DRAWS, prepared.drawWidth, DRAW_SEED)) {
    for (let member = 0; member < prepared.members; member++, play++) {
      playSeason(prepared, member, draw, result);
      reachedHa[play] = result.reachedHa;
      nitrogenKg[play] = result.nitrogenKg;
      programmeNitrogenKg[play] = result.programmeNitrogenKg;
      inoculationNitrogenKg[play] = result.inoculationNitrogenKg;
      grainT[play] = result.grainT;
      farmersReached[play] = result.farmersReached;
      setPlay(zoneReachedHa, play, result.zoneReachedHa);
      setPlay(zoneNitrogenKg, play, result.zoneNitrogenKg);
    }
  }
  return {
    reachedHa: spreadOf(reachedHa),
    nitrogenKg: spreadOf(nitrogenKg),
    programmeNitrogenKg: spreadOf(programmeNitrogenKg),
    inoculationNitrogenKg: spreadOf(inoculationNitrogenKg),
    grainT: spreadOf(grainT),
    farmersReached: spreadOf(farmersReached),
    zoneReachedHa: zoneReachedHa.map(spreadOf),
    zoneNitrogenKg: zoneNitrogenKg.map(spreadOf),
  };
}

function setPlay(zones: readonly Float64Array[], play: number, values: Float64Array): void {
  for (let zone = 0; zone < zones.length; zone++) (zones[zone] as Float64Array)[play] = values[zone] as number;
}

/** Nought where nothing was played. */
function spreadOf(values: Float64Array): Spread {
  const at = (p: number) => (values.length > 0 ? quantile(values, p) : 0);
  return { p10: at(0.1), p25: at(0.25), p50: at(0.5), p75: at(0.75), p90: at(0.9) };
}
