import { log10 } from '../numerics/elementary.ts';
import { COATED_SEED_WAIT, type SurvivalSet } from '../reference/survival-sets.ts';
import type { ReachCurve } from '../vocabulary/stage-results/allocation.ts';
import { onSeedLog10Loss, packLog10PerDay } from './survival.ts';

/** log10 losses on the road at which a curve is drawn; straight lines between. */
export const LOSS_BREAKS: readonly number[] = [0, 0.05, 0.2, 0.5, 1, 2, 4];

/** A consignment's crop in one zone. Days of sowing count as `from` does: day numbers, or offsets where `from` is 0. */
export interface ReachInput {
  /** Day of the first planning day. */
  readonly from: number;
  readonly planningDays: number;
  /** First and last good sowing day per member of the season; NaN where that season had no onset. */
  readonly firstDay: ArrayLike<number>;
  readonly lastDay: ArrayLike<number>;
  readonly delayLossPerDay: number;
  readonly delayFreeDays: number;
  /** Null: dry goods, which neither heat nor waiting harms. */
  readonly inoculant: InoculantLife | null;
}

export interface InoculantLife {
  /** log10 rhizobia each seed would carry if coated on the first planning day, what sticks to it reckoned in. */
  readonly log10PerSeed: number;
  readonly survival: SurvivalSet;
  /** Temperature of the packs at the depot, °C per planning day. */
  readonly depotCelsius: ArrayLike<number>;
  /** Temperature of the community's store, °C per day from the first planning day on; its last value holds for later days. */
  readonly communityCelsius: ArrayLike<number>;
  /** Living rhizobia per seed at sowing below which value falls steeply. */
  readonly floorCellsPerSeed: number;
}

/** Fraction of the yield kept when sown so many days after the window (agronomy of each crop: reference/crops.ts). */
export function delayFactor(delayDays: number, lossPerDay: number, freeDays: number): number {
  return Math.max(0, 1 - lossPerDay * Math.max(0, delayDays - freeDays));
}

const GOAL_LOG10 = 6;
const VALUE_AT_FLOOR = 0.8;

/**
 * Worth of rhizobia on the seed at sowing, 0 to 1, by their log10 per seed: full at 10⁶, 0.8 at the floor, none one log10
 * below it, straight lines between (assumed). An unknown count (NaN) is worth nothing.
 */
export function lifeValue(log10PerSeed: number, floorLog10: number): number {
  if (Number.isNaN(log10PerSeed)) return 0;
  const goal = Math.max(GOAL_LOG10, floorLog10);
  if (log10PerSeed >= goal) return 1;
  if (log10PerSeed < floorLog10) return Math.max(0, VALUE_AT_FLOOR * (1 - (floorLog10 - log10PerSeed)));
  return VALUE_AT_FLOOR + (1 - VALUE_AT_FLOOR) * ((log10PerSeed - floorLog10) / (goal - floorLog10));
}

/**
 * What handing goods over on each planning day is worth, as a share of its hectares' value: the mean over the season's
 * members of (yield kept for late sowing) * (worth of the rhizobia left at sowing). Goods handed over on day h are sown on
 * the first good day after it, never on the same day; a member without onset counts as nothing. Losses are looked up in
 * running totals made once, so the cost is days * members * breaks.
 */
export function reachCurve(input: ReachInput): ReachCurve {
  const { from, planningDays, delayLossPerDay, delayFreeDays } = input;
  const members = Math.max(1, input.firstDay.length);
  const value = new Float64Array(planningDays * LOSS_BREAKS.length);
  const inTime = new Float64Array(planningDays);
  const life = input.inoculant && prepareLife(input.inoculant);
  for (let h = 0; h < planningDays; h++) {
    for (let m = 0; m < input.firstDay.length; m++) {
      const first = (input.firstDay[m] as number) - from;
      const last = (input.lastDay[m] as number) - from;
      if (Number.isNaN(first) || Number.isNaN(last)) continue;
      const sown = Math.max(first, h + 1);
      if (sown <= last) inTime[h] = (inTime[h] as number) + 1;
      const kept = delayFactor(sown - last, delayLossPerDay, delayFreeDays);
      if (kept > 0) addWorth(value, h, kept, life, sown);
    }
  }
  const mean = (sum: number) => sum / members;
  return { lossBreaks: Float64Array.from(LOSS_BREAKS), value: value.map(mean), inTime: inTime.map(mean) };
}

/** Adds one member's worth of handing over on day h and sowing on day `sown`, at each loss on the road. */
function addWorth(value: Float64Array, h: number, kept: number, life: PreparedLife | null, sown: number): void {
  const row = h * LOSS_BREAKS.length;
  const left = life ? log10Left(life, h, sown) : 0;
  for (let k = 0; k < LOSS_BREAKS.length; k++) {
    const alive = life ? lifeValue(left - (LOSS_BREAKS[k] as number), life.floorLog10) : 1;
    value[row + k] = (value[row + k] as number) + kept * alive;
  }
}

/** Curves of several crops or zones as one, by the weight (hectares) of each; of equal length and breaks. */
export function blendReachCurves(curves: readonly ReachCurve[], weights: readonly number[]): ReachCurve {
  const first = curves[0];
  if (first === undefined) throw new RangeError('blendReachCurves needs a curve');
  const total = weights.reduce((sum, weight) => sum + weight, 0) || 1;
  const blend = (columnOf: (curve: ReachCurve) => Float64Array): Float64Array =>
    columnOf(first).map((_, i) =>
      curves.reduce((sum, curve, c) => sum + ((weights[c] as number) / total) * (columnOf(curve)[i] as number), 0),
    );
  return { lossBreaks: first.lossBreaks, value: blend((c) => c.value), inTime: blend((c) => c.inTime) };
}

/**
 * Running totals of log10 loss: entry d is the loss over the days before day d. A day without a temperature, or hotter than
 * its set reaches, leaves every later day unknown, which is worth nothing: no count is claimed that nobody can know.
 */
export interface PreparedLife {
  readonly log10PerSeed: number;
  readonly onSeedLog10: number;
  readonly floorLog10: number;
  readonly depot: Float64Array;
  readonly community: Float64Array;
}

export function prepareLife(inoculant: InoculantLife): PreparedLife {
  const { hours, celsius } = COATED_SEED_WAIT.value;
  return {
    log10PerSeed: inoculant.log10PerSeed,
    onSeedLog10: onSeedLog10Loss(hours, celsius),
    floorLog10: log10(inoculant.floorCellsPerSeed),
    depot: runningLoss(inoculant.depotCelsius, inoculant.survival),
    community: runningLoss(inoculant.communityCelsius, inoculant.survival),
  };
}

function runningLoss(celsius: ArrayLike<number>, set: SurvivalSet): Float64Array {
  const total = new Float64Array(celsius.length + 1);
  for (let d = 0; d < celsius.length; d++) {
    total[d + 1] = (total[d] as number) + packLog10PerDay(celsius[d] as number, set);
  }
  return total;
}

/** Loss over the days before day d; days beyond the record lose as its last day. */
export function lossBefore(total: Float64Array, day: number): number {
  const end = total.length - 1;
  if (day <= end) return total[day] as number;
  const lastDayLoss = end > 0 ? (total[end] as number) - (total[end - 1] as number) : 0;
  return (total[end] as number) + (day - end) * lastDayLoss;
}

/** log10 rhizobia per seed at sowing on day `sown` when handed over on day `h`, before any loss on the road. */
function log10Left(life: PreparedLife, h: number, sown: number): number {
  const inStore = lossBefore(life.community, sown) - lossBefore(life.community, h);
  return life.log10PerSeed - life.onSeedLog10 - lossBefore(life.depot, h) - inStore;
}
