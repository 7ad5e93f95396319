import type { Policy, Scenario } from '../../vocabulary/scenario.ts';
import type { Ask } from './ask.ts';
import type { DemandRows } from './demand-rows.ts';
import type { Pool } from './form-pools.ts';
import type { StockGroup } from './stock-groups.ts';
import { gainAfterRotation, worthOfLand } from './worth-of-land.ts';

/**
 * One pool with everything that decides its shares, in columns over its rows. A unit is whose share is made equal: a row
 * by itself, or a zone and crop, of which a row is the part `unitFraction`.
 */
export interface ShareTerms {
  readonly pool: Pool;
  readonly stockKg: Float64Array;
  readonly keptKg: Float64Array;
  readonly lowKg: Float64Array;
  readonly highKg: Float64Array;
  readonly held: Uint8Array;
  /** What counts as the whole share of a row, kg; 0 without a claim to an equal share. */
  readonly weightKg: Float64Array;
  /** Hectares for one kilogram; by the policy, weighed by what a hectare of the crop is expected to gain. */
  readonly haPerKg: Float64Array;
  readonly byZone: boolean;
  readonly unitCount: number;
  readonly unitOffsets: Int32Array;
  readonly units: Int32Array;
  readonly unitFraction: Float64Array;
}

export function setTerms(
  scenario: Scenario,
  demand: DemandRows,
  ask: Ask,
  pool: Pool,
  groups: readonly StockGroup[],
  equalOver: Policy['equalOver'],
): ShareTerms {
  const pick = (column: Float64Array) => Float64Array.from(pool.rows, (row) => column[row] as number);
  const highKg = pick(ask.highKg);
  const alike = equalOver === 'grower' ? weighByGrowers(scenario, demand, pool, highKg) : pick(ask.askedKg);
  const weights = weighByPriority(scenario, demand, pool, alike);
  const terms = {
    pool,
    stockKg: Float64Array.from(pool.groups, (g) => (groups[g] as StockGroup).kg),
    keptKg: pick(ask.keptKg),
    lowKg: pick(ask.lowKg),
    highKg,
    held: Uint8Array.from(pool.rows, (row) => ask.held[row] as number),
    weightKg: weights.map((kg, r) => (ask.leftBehind[pool.rows[r] as number] === 1 ? 0 : kg)),
    haPerKg: Float64Array.from(pool.rows, (row) => worthPerKg(scenario, demand, ask, row)),
  };
  return { ...terms, ...(equalOver === 'zone' ? unitsByZone(scenario, demand, pool) : unitsByRow(pool)) };
}

/** Hectares for one kilogram, or what they are expected to bring (policy `gain`). */
function worthPerKg(scenario: Scenario, demand: DemandRows, ask: Ask, row: number): number {
  const hectares = 1 / (demand.kgPerHa[row] as number);
  const isWeighed = ask.commodity === 'seed' || ask.commodity === 'inoculant';
  if (scenario.policy.hectareValue === 'land' || !isWeighed) return hectares;
  const crop = demand.crop[row] as number;
  const worth = worthOfLand(scenario);
  if (ask.commodity === 'seed') return hectares * (worth.seed[crop] as number);
  const { lastInoculatedYear } = scenario.communities[demand.community[row] as number] ?? {};
  return (
    hectares * (worth.inoculant[crop] as number) * gainAfterRotation(scenario.seasonYear, lastInoculatedYear ?? null)
  );
}

function unitsByRow({ rows }: Pool) {
  return {
    byZone: false,
    unitCount: rows.length,
    unitOffsets: Int32Array.from({ length: rows.length + 1 }, (_, r) => r),
    units: Int32Array.from(rows, (_, r) => r),
    unitFraction: new Float64Array(rows.length).fill(1),
  };
}

function unitsByZone(scenario: Scenario, demand: DemandRows, { rows }: Pool) {
  const found = new Map<number, number>();
  const offsets = [0];
  const units: number[] = [];
  const fractions: number[] = [];
  for (const row of rows) {
    for (let k = demand.partOffsets[row] as number; k < (demand.partOffsets[row + 1] as number); k++) {
      const key = ((demand.partZone[k] as number) + 1) * scenario.crops.length + (demand.crop[row] as number);
      if (!found.has(key)) found.set(key, found.size);
      units.push(found.get(key) as number);
      fractions.push(demand.partFraction[k] as number);
    }
    offsets.push(units.length);
  }
  return {
    byZone: true,
    unitCount: found.size,
    unitOffsets: Int32Array.from(offsets),
    units: Int32Array.from(units),
    unitFraction: Float64Array.from(fractions),
  };
}

/** Growers of a crop in a community: those the file counts for the crop, else all its farmers; null where neither is told. */
export function growersOf(scenario: Scenario, community: number, crop: number): number | null {
  const place = scenario.communities[community];
  return place?.crops.find((plan) => plan.crop === scenario.crops[crop])?.growers ?? place?.farmers ?? null;
}

/**
 * Weights times those of the policy for each community's priority, relative to the least of them: a share of 1 is then the whole need
 * of those who weigh least, and the others are full before that.
 */
function weighByPriority(
  { policy: { priorityWeights }, communities }: Scenario,
  demand: DemandRows,
  { rows }: Pool,
  weightKg: Float64Array,
): Float64Array {
  if (priorityWeights.length === 0) return weightKg;
  const least = Math.min(...priorityWeights);
  return weightKg.map((kg, r) => {
    const priority = communities[demand.community[rows[r] as number] as number]?.priority ?? 1;
    const weight = priorityWeights[Math.min(Math.max(1, priority), priorityWeights.length) - 1] as number;
    return (kg * weight) / least;
  });
}

/**
 * Weights under which an equal share is an equal amount for each grower. Scaled so that a share of 1 is the largest amount
 * that any row asks for per grower; rows that ask for less are full before that.
 */
function weighByGrowers(scenario: Scenario, demand: DemandRows, { rows }: Pool, highKg: Float64Array): Float64Array {
  const growers = Float64Array.from(rows, (row) =>
    Math.max(1, growersOf(scenario, demand.community[row] as number, demand.crop[row] as number) ?? 1),
  );
  const mostPerGrower = growers.reduce((most, count, r) => Math.max(most, (highKg[r] as number) / count), 0);
  return growers.map((count) => count * mostPerGrower);
}
