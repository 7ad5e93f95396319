import { exp, log } from '../../numerics/elementary.ts';
import { latinHypercube } from '../../numerics/latin-hypercube.ts';
import { normalQuantile } from '../../numerics/normal-quantile.ts';
import { RESPONSE_SHARED_BY_DISTRICT } from '../../reference/inoculation-response.ts';
import { NITROGEN_COEFFICIENTS, NITROGEN_RELATIVE_SD } from '../../reference/nitrogen-coefficients.ts';
import { type Crop, type Sourced, sourced } from '../../vocabulary/index.ts';

/** How many draws of the parameters every season of the record is played with in a plan, and the seed of the sample. */
export const DRAWS = 200;
export const DRAW_SEED = 1;

export const UNCERTAINTY = {
  /** Relative standard deviation of a district's yield around the yield reckoned with. */
  yieldRelativeSd: sourced(
    0.2,
    'assumed',
    'the mean of a continent varies by 7-8 % from year to year (derived from FAOSTAT Africa 2009-2018); one district varies more',
  ),
  /**
   * Nine draws in ten lose between half and twice as fast as the survival set: "a factor of 2 either way" is read as the 5th and
   * the 95th percentile, not as one standard deviation, and not as the 10th and the 90th.
   */
  lossRateFactor: sourced(
    2,
    'assumed',
    'rate in packs halved and doubled: D40 14 to 56 d, where bounds of the trials drawn at random give 28 to 51 d as their 5 and 95 %; loss on seed is known to a factor of 2 either way; read as 5 to 95 %; taken for the loss on the road as well',
  ),
  /** Days that all hand-overs run behind the plan: this times a standard normal number, whole days, never early. */
  delaySdDays: sourced(1, 'assumed', 'stock and vehicles are late more often than early; no figure was found'),
  breakdownChance: sourced(0.1, 'assumed', 'one vehicle in ten breaks down once in the planning period'),
  breakdownDays: sourced(3, 'assumed', 'days until it is mended or another goes in its place'),
} as const satisfies Readonly<Record<string, Sourced<number>>>;

/** 95 % quantile of the standard normal distribution. */
const NORMAL_P95 = 1.6448536269514722;
const LOG_RATE_SD = log(UNCERTAINTY.lossRateFactor.value) / NORMAL_P95;

/**
 * A draw is a column of numbers; nought throughout is the central case. Standard normal numbers, in this order: nitrogen method,
 * yield, loss in packs, on seed and on the road, delay; then of each crop the response, and the share from the air; then of each
 * community the response. Then, of each vehicle, the part of the planning period after which it breaks down; nought: never. Last,
 * standard normal again, the response to phosphorus, of each crop and of each community.
 */
export const DRAW = { nitrogen: 0, yield: 1, packLoss: 2, seedLoss: 3, roadLoss: 4, delay: 5, crops: 6 } as const;

/** How many crops, communities and vehicles a draw speaks of. */
export interface DrawShape {
  readonly crops: number;
  readonly communities: number;
  readonly vehicles: number;
}

export function drawWidth({ crops, communities, vehicles }: DrawShape): number {
  return DRAW.crops + 3 * crops + 2 * communities + vehicles;
}

/** Place of the first vehicle in a draw. */
export function firstVehicle({ crops, communities }: DrawShape): number {
  return DRAW.crops + 2 * crops + communities;
}

/** Place of the first crop's response to phosphorus in a draw; the communities' follow. */
export function firstPhosphorus(shape: DrawShape): number {
  return firstVehicle(shape) + shape.vehicles;
}

/** What a draw holds, in groups that a reader can tell apart: places of each in the draw. */
export function drawGroups(shape: DrawShape): Readonly<Record<DrawGroup, readonly number[]>> {
  const { crops, communities, vehicles } = shape;
  const run = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i);
  return {
    nitrogenMethod: [DRAW.nitrogen],
    shareFromAir: run(DRAW.crops + crops, crops),
    yield: [DRAW.yield],
    response: [
      ...run(DRAW.crops, crops),
      ...run(DRAW.crops + 2 * crops, communities),
      ...run(firstPhosphorus(shape), crops + communities),
    ],
    survivalInPacks: [DRAW.packLoss],
    survivalOnSeed: [DRAW.seedLoss],
    roadLoss: [DRAW.roadLoss],
    delays: [DRAW.delay],
    breakdowns: run(firstVehicle(shape), vehicles),
  };
}

export type DrawGroup =
  | 'nitrogenMethod'
  | 'shareFromAir'
  | 'yield'
  | 'response'
  | 'survivalInPacks'
  | 'survivalOnSeed'
  | 'roadLoss'
  | 'delays'
  | 'breakdowns';

const DISTRICT_PART = Math.sqrt(RESPONSE_SHARED_BY_DISTRICT.value);
const COMMUNITY_PART = Math.sqrt(1 - RESPONSE_SHARED_BY_DISTRICT.value);

/** A standard normal number of a field's response from those of its district and its community. */
export function sharedSpread(district: number, community: number): number {
  return DISTRICT_PART * district + COMMUNITY_PART * community;
}

/** How much faster than its set inoculant dies, from its number in a draw. */
export function lossRate(normal: number): number {
  return normal === 0 ? 1 : exp(LOG_RATE_SD * normal);
}

/** Standard deviation of a crop's share from the air, and what the rest of the method adds to it, both over the estimate. */
export function nitrogenSpread(crop: Crop): { readonly air: number; readonly method: number; readonly most: number } {
  const { ndfaPercent, ndfaSdPercent } = NITROGEN_COEFFICIENTS[crop].value;
  const air = ndfaSdPercent / ndfaPercent;
  const whole = NITROGEN_RELATIVE_SD.value;
  return { air, method: Math.sqrt(Math.max(0, whole * whole - air * air)), most: 100 / ndfaPercent };
}

/** The same draws everywhere: a Latin hypercube of so many columns of the shape. */
export function drawParameters(count: number, shape: DrawShape, seed: number): Float64Array[] {
  const [vehicles, phosphorus] = [firstVehicle(shape), firstPhosphorus(shape)];
  const chance = UNCERTAINTY.breakdownChance.value;
  return latinHypercube(count, drawWidth(shape), seed).map((row) =>
    row.map((u, i) => (i < vehicles || i >= phosphorus ? normalQuantile(u) : u < chance ? u / chance : 0)),
  );
}
