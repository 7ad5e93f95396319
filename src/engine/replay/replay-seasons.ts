import {
  costliest,
  makePlayResult,
  type PlayRule,
  type PlayTotal,
  type PreparedPlay,
  playSeason,
  SEASON_LOSSES,
} from '../pipeline.ts';
import type { SeasonCost } from '../vocabulary/index.ts';
import type { Replay } from './open-replay.ts';

/** Hectares inoculated that a season kept from being reached, by cause. */
export type SeasonLosses = Readonly<Record<(typeof SEASON_LOSSES)[number], number>>;

/** What went wrong in one zone. */
export interface ZoneLoss {
  /** Index of the zone; the number of zones stands for outside all of them. */
  readonly zone: number;
  readonly cause: (typeof SEASON_LOSSES)[number];
  readonly hectares: number;
}

/** A plan in one past season, at the central parameters. */
export interface ReplayedSeason {
  readonly year: number;
  /** Sown in time and alive. */
  readonly reachedHa: number;
  /** Hectares inoculated, each by what its lateness and its rhizobia leave of its value, over all inoculated, 0 to 1. */
  readonly valueKept: number;
  readonly programmeNitrogenKg: number;
  readonly lostHa: SeasonLosses;
  readonly cost: SeasonCost;
  /** Trips that waited for the road or the rain, and the days they waited; trips that never went. */
  readonly tripsMoved: number;
  readonly daysMoved: number;
  readonly tripsNever: number;
  /** Stops whose packs may have reached 40 °C and stay on hold. */
  readonly stopsOnHold: number;
  /** Worst first. */
  readonly zoneLosses: readonly ZoneLoss[];
}

export interface ReplayedPlan {
  readonly rule: PlayRule;
  readonly inoculatedHa: number;
  readonly seasons: readonly ReplayedSeason[];
}

/** Plays the plan once in every season, in that season's rain, heat and roads. */
export function replaySeasons(replay: Replay, rule: PlayRule): ReplayedPlan {
  const prepared = replay.play(rule);
  const { parcels } = prepared;
  const inoculatedHa = parcels.hectares.reduce((sum, ha, i) => sum + (parcels.inoculated[i] === 1 ? ha : 0), 0);
  const result = makePlayResult(prepared);
  const centre = new Float64Array(prepared.drawWidth);
  const seasons = replay.years.map((year, member): ReplayedSeason => {
    playSeason(prepared, member, centre, result);
    const total = (name: PlayTotal) => result[name];
    return {
      year,
      reachedHa: asWritten(total('reachedHa')),
      valueKept: inoculatedHa > 0 ? total('valueHa') / inoculatedHa : 0,
      programmeNitrogenKg: total('programmeNitrogenKg'),
      lostHa: Object.fromEntries(SEASON_LOSSES.map((name) => [name, asWritten(result.lostHa[name])])) as SeasonLosses,
      cost: costliest(result.reachedHa, result.lostHa),
      ...countTrips(prepared, member),
      zoneLosses: lossesByZone(prepared, result.parcelLoss),
    };
  });
  return { rule, inoculatedHa, seasons };
}

/** To the decimals of hectares in a plan document, so that a play of it reads like what it records. */
const asWritten = (hectares: number): number => Math.round(hectares * 1e6) / 1e6;

function countTrips({ visits, visitDay, visitOnHold }: PreparedPlay, member: number) {
  const counts = { tripsMoved: 0, daysMoved: 0, tripsNever: 0, stopsOnHold: 0 };
  const seen = new Set<number>();
  visits.forEach(({ trip, day }, visit) => {
    const at = member * visits.length + visit;
    counts.stopsOnHold += visitOnHold[at] as number;
    const came = visitDay[at] as number;
    if (came === day || seen.has(trip)) return;
    seen.add(trip);
    if (Number.isNaN(came)) counts.tripsNever++;
    else {
      counts.tripsMoved++;
      counts.daysMoved += came - day;
    }
  });
  return counts;
}

function lossesByZone({ parcels, fields, zones }: PreparedPlay, parcelLoss: Int8Array): ZoneLoss[] {
  const lost = new Float64Array((zones + 1) * SEASON_LOSSES.length);
  parcelLoss.forEach((loss, parcel) => {
    if (loss < 0) return;
    const at = (fields.zone[parcels.field[parcel] as number] as number) * SEASON_LOSSES.length + loss;
    lost[at] = (lost[at] as number) + (parcels.hectares[parcel] as number);
  });
  return Array.from(lost, (hectares, i) => ({
    zone: Math.floor(i / SEASON_LOSSES.length),
    cause: SEASON_LOSSES[i % SEASON_LOSSES.length] as ZoneLoss['cause'],
    hectares,
  }))
    .filter(({ hectares }) => hectares > 0)
    .sort((a, b) => b.hectares - a.hectares || a.zone - b.zone);
}

/** The worst seasons, worst first: fewest hectares reached, then least value kept, then the earlier. */
export function worstSeasons({ seasons }: ReplayedPlan, count: number): ReplayedSeason[] {
  return [...seasons]
    .sort((a, b) => a.reachedHa - b.reachedHa || a.valueKept - b.valueKept || a.year - b.year)
    .slice(0, count);
}

/** Two plans in one season; what the second has beyond the first. */
export interface SeasonDifference {
  readonly year: number;
  readonly reachedHa: number;
  readonly valueKept: number;
}

export interface PlanDifference {
  readonly seasons: readonly SeasonDifference[];
  readonly better: number;
  readonly worse: number;
  readonly meanHa: number;
}

/** Compares two plans season by season. @throws RangeError where they were not played in the same seasons */
export function comparePlans(first: ReplayedPlan, second: ReplayedPlan): PlanDifference {
  if (first.seasons.map(({ year }) => year).join() !== second.seasons.map(({ year }) => year).join())
    throw new RangeError('the plans were not played in the same seasons');
  const seasons = first.seasons.map((one, i): SeasonDifference => {
    const other = second.seasons[i] as ReplayedSeason;
    return {
      year: one.year,
      reachedHa: other.reachedHa - one.reachedHa,
      valueKept: other.valueKept - one.valueKept,
    };
  });
  const sum = seasons.reduce((all, { reachedHa }) => all + reachedHa, 0);
  return {
    seasons,
    better: seasons.filter(({ reachedHa }) => reachedHa > 1e-6).length,
    worse: seasons.filter(({ reachedHa }) => reachedHa < -1e-6).length,
    meanHa: seasons.length > 0 ? sum / seasons.length : 0,
  };
}
