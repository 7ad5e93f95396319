import type { PastSeasons, SeasonCost } from '../../vocabulary/index.ts';
import { type Sourced, sourced } from '../../vocabulary/index.ts';
import { type LostHectares, makePlayResult, SEASON_LOSSES } from './play-result.ts';
import { playSeason } from './play-season.ts';
import type { PreparedPlay } from './prepare-play.ts';

/** A season that loses less than this share of the inoculated land counts as one in which little was lost. */
export const LITTLE_LOST_SHARE: Sourced<number> = sourced(0.05, 'assumed', 'a twentieth: less is not worth a name');

/** The plan in every member of its season, each played once at the central parameters. */
export function playPastSeasons(prepared: PreparedPlay, years: readonly number[]): PastSeasons {
  const { members } = prepared;
  const column = () => new Float64Array(members);
  const seasons = {
    reachedHa: column(),
    noOnsetHa: column(),
    lateHa: column(),
    hotHa: column(),
    waitingHa: column(),
    weakHa: column(),
  };
  const cost: SeasonCost[] = [];
  const result = makePlayResult(prepared);
  const centre = new Float64Array(prepared.drawWidth);
  for (let member = 0; member < members; member++) {
    playSeason(prepared, member, centre, result);
    const { reachedHa, lostHa } = result;
    seasons.reachedHa[member] = reachedHa;
    seasons.noOnsetHa[member] = lostHa.noOnset;
    seasons.lateHa[member] = lostHa.late;
    seasons.hotHa[member] = lostHa.hot;
    seasons.waitingHa[member] = lostHa.waiting;
    seasons.weakHa[member] = lostHa.weak;
    cost.push(costliest(reachedHa, lostHa));
  }
  return { year: Int32Array.from(years), ...seasons, cost };
}

const COSTS: Readonly<Record<(typeof SEASON_LOSSES)[number], SeasonCost>> = {
  noOnset: 'no-onset',
  late: 'late',
  hot: 'hot',
  waiting: 'waiting',
  weak: 'weak',
};

/** What took most of the inoculated land, the first of equals. */
export function costliest(reachedHa: number, lostHa: LostHectares): SeasonCost {
  const losses = SEASON_LOSSES.map((name) => lostHa[name]);
  const lost = losses.reduce((sum, ha) => sum + ha, 0);
  if (lost <= LITTLE_LOST_SHARE.value * (reachedHa + lost)) return 'little';
  const worst = SEASON_LOSSES[losses.indexOf(Math.max(...losses))];
  return worst ? COSTS[worst] : 'little';
}
