import { CROPS } from '../../vocabulary/crops.ts';
import { EQUAL_OVERS, FAIRNESS_RULES, type Policy, type Prices, type Scenario } from '../../vocabulary/scenario.ts';
import { listOf, number, word } from './cell-kinds.ts';
import {
  CARRY,
  CELLS_PER_SEED_FLOOR,
  CONTINGENCY_PERCENT,
  EQUAL_OVER,
  FAIRNESS,
  HEAT_RULE,
  HECTARE_VALUE,
  MARKET_DAYS,
  PRIORITY_WEIGHTS,
  RESERVE_PERCENT,
  REST_AFTER_HOURS,
  REST_MINUTES,
  TRAINING_MINUTES,
} from './defaults.ts';
import { cellText } from './open-records.ts';
import type { RowReader } from './row-reader.ts';

const AMOUNT = number({ atLeast: 0 });
const POSITIVE = number({ above: 0 });
const PERCENT = number({ atLeast: 0, atMost: 100 });

/** `policy` of scenario.json. */
export function readPolicy(row: RowReader): Policy {
  return {
    fairness: row.orDefault('policy.fairness', word(FAIRNESS_RULES), FAIRNESS),
    equalOver: row.orDefault('policy.equalOver', word(EQUAL_OVERS), EQUAL_OVER),
    priorityWeights: row.orDefault('policy.priorityWeights', listOf(POSITIVE), PRIORITY_WEIGHTS),
    hectareValue: row.orDefault('policy.hectareValue', word(['land', 'gain']), HECTARE_VALUE),
    orderBudget: row.orNull('policy.orderBudget', AMOUNT),
    reservePercent: row.orDefault('policy.reservePercent', PERCENT, RESERVE_PERCENT),
    contingencyPercent: row.orDefault('policy.contingencyPercent', PERCENT, CONTINGENCY_PERCENT),
    cellsPerSeedFloor: row.orDefault('policy.cellsPerSeedFloor', POSITIVE, CELLS_PER_SEED_FLOOR),
    heatRule: row.orDefault('policy.heatRule', word(['label', 'model']), HEAT_RULE),
    hoursAboveStorage: row.orNull('policy.hoursAboveStorage', AMOUNT),
    carry: row.orDefault('policy.carry', word(['together', 'apart']), CARRY),
    marketDays: row.orDefault('policy.marketDays', word(['prefer', 'only']), MARKET_DAYS),
    promisePrice: row.orNull('policy.promisePrice', AMOUNT),
    trainingMinutes: row.orDefault('policy.trainingMinutes', number({ atLeast: 0, atMost: 480 }), TRAINING_MINUTES),
    restAfterHours: row.orDefault('policy.restAfterHours', number({ above: 0, atMost: 24 }), REST_AFTER_HOURS),
    restMinutes: row.orDefault('policy.restMinutes', number({ atLeast: 0, atMost: 240 }), REST_MINUTES),
    releaseMmInThreeDays: row.orNull('policy.release.mmInThreeDays', POSITIVE),
  };
}

/** `prices` of scenario.json, in its currency. None has a default: money that needs a missing one is left unstated. */
export function readPrices(row: RowReader): Prices {
  return {
    nitrogenPerKg: row.orNull('prices.nitrogen', AMOUNT),
    grainPerT: byCrop((crop) => row.orNull(`prices.grain.${crop}`, AMOUNT)),
    icePerKg: row.orNull('prices.ice', AMOUNT),
    perDiem: row.orNull('prices.perDiem', AMOUNT),
  };
}

/** `yields` of scenario.json, t per ha. */
export const readOwnYields = (row: RowReader): Scenario['yieldsTPerHa'] =>
  byCrop((crop) => row.orNull(`yields.${crop}`, POSITIVE));

function byCrop(read: (crop: (typeof CROPS)[number]) => number | null): Scenario['yieldsTPerHa'] {
  const stated: Partial<Record<(typeof CROPS)[number], number>> = {};
  for (const crop of CROPS) {
    const value = read(crop);
    if (value !== null) stated[crop] = value;
  }
  return stated;
}

/** `assumptions` of scenario.json: reference values by name, replaced by numbers of the programme's own. */
export function readAssumptions(row: RowReader, sent: unknown): Readonly<Record<string, number>> {
  if (sent === undefined || sent === null) return {};
  if (typeof sent !== 'object' || Array.isArray(sent)) {
    row.note('E1209', { column: 'assumptions', value: cellText(sent), facts: { expected: 'object' } });
    return {};
  }
  const stated: [string, number][] = [];
  for (const [name, value] of Object.entries(sent)) {
    if (typeof value === 'number' && Number.isFinite(value)) stated.push([name, value]);
    else row.setValueAside('E1301', { column: `assumptions.${name}`, value: cellText(value) });
  }
  return Object.fromEntries(stated.sort(([a], [b]) => (a < b ? -1 : 1)));
}
