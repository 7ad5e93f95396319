import { quantile } from '../../numerics/quantile.ts';
import { type Sourced, type Spread, sourced } from '../../vocabulary/index.ts';
import { DRAW_SEED, DRAWS, drawParameters } from './draw-parameters.ts';
import { makePlayResult, PLAY_TOTALS, type PlayTotal } from './play-result.ts';
import { playSeason } from './play-season.ts';
import type { PreparedPlay } from './prepare-play.ts';

/** A zone counts as having got live stock in time where at least this part of its inoculated land is reached. */
export const ZONE_IN_TIME_SHARE: Sourced<number> = sourced(0.5, 'assumed', 'half of the land that packs were sent for');

/** Quantiles over every member of the season played with every draw. */
export interface PlanRanges {
  readonly totals: Readonly<Record<PlayTotal, Spread>>;
  /** Per zone, the last for outside all zones. */
  readonly zoneReachedHa: readonly Spread[];
  readonly zoneNitrogenKg: readonly Spread[];
  /** Share of plays in which a zone got live stock in time; NaN where it is sent none. */
  readonly zoneInTimeChance: Float64Array;
}

export function rangeOverPlays(prepared: PreparedPlay): PlanRanges {
  const plays = prepared.members * DRAWS;
  const column = () => new Float64Array(plays);
  const totals = PLAY_TOTALS.map(column);
  const zoneReachedHa = Array.from({ length: prepared.zones + 1 }, column);
  const zoneNitrogenKg = Array.from({ length: prepared.zones + 1 }, column);
  const result = makePlayResult(prepared);
  let play = 0;
  for (const draw of drawParameters(DRAWS, prepared.shape, DRAW_SEED)) {
    for (let member = 0; member < prepared.members; member++, play++) {
      playSeason(prepared, member, draw, result);
      for (let t = 0; t < totals.length; t++) (totals[t] as Float64Array)[play] = result[PLAY_TOTALS[t] as PlayTotal];
      setPlay(zoneReachedHa, play, result.zoneReachedHa);
      setPlay(zoneNitrogenKg, play, result.zoneNitrogenKg);
    }
  }
  const inoculatedHa = zoneInoculatedHa(prepared);
  return {
    totals: Object.fromEntries(PLAY_TOTALS.map((name, t) => [name, spreadOf(totals[t] as Float64Array)])) as Record<
      PlayTotal,
      Spread
    >,
    zoneReachedHa: zoneReachedHa.map(spreadOf),
    zoneNitrogenKg: zoneNitrogenKg.map(spreadOf),
    zoneInTimeChance: inoculatedHa.map((ha, zone) => {
      const reached = zoneReachedHa[zone] as Float64Array;
      const least = ZONE_IN_TIME_SHARE.value * ha;
      return ha > 0 && plays > 0 ? reached.filter((each) => each >= least).length / plays : Number.NaN;
    }),
  };
}

function zoneInoculatedHa({ parcels, fields, zones }: PreparedPlay): Float64Array {
  const hectares = new Float64Array(zones + 1);
  parcels.field.forEach((field, parcel) => {
    const zone = fields.zone[field] as number;
    if (parcels.inoculated[parcel] === 1)
      hectares[zone] = (hectares[zone] as number) + (parcels.hectares[parcel] as number);
  });
  return hectares;
}

function setPlay(zones: readonly Float64Array[], play: number, values: Float64Array): void {
  for (let zone = 0; zone < zones.length; zone++) (zones[zone] as Float64Array)[play] = values[zone] as number;
}

/** Nought where nothing was played; NaN where a price is missing. */
function spreadOf(values: Float64Array): Spread {
  const at = (p: number) => (values.length > 0 ? quantile(values, p) : 0);
  return { p10: at(0.1), p25: at(0.25), p50: at(0.5), p75: at(0.75), p90: at(0.9) };
}
