import { seedsPerKg } from '../../science/seed-rate.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Needs, Places, StageResult, ZoneShares } from '../../vocabulary/stage-results.ts';
import { clearedPacks } from './choose-reference-product.ts';
import { describeNeeds } from './describe-needs.ts';
import { noteNeeds } from './note-needs.ts';
import { type CropPractice, settlePractice } from './settle-practice.ts';
import { shareOut } from './share-out.ts';

/**
 * Stage 4: what the planned land asks for, per zone, community and crop, beside the growers' own seed. Nothing is rounded
 * here. Land, seed and own seed are cut by zone so that the parts add up to the community's figures exactly.
 */
export function estimateNeeds(scenario: Scenario, places: Places): StageResult<Needs> {
  const packs = clearedPacks(scenario);
  const practices = scenario.crops.map((crop) => settlePractice(scenario, packs, crop));
  const needs = columnsOf(needRows(scenario, places.shares, practices), scenario, practices);
  return { result: needs, problems: noteNeeds(scenario, practices, needs), provenance: describeNeeds(practices) };
}

interface NeedRow {
  readonly zone: number;
  readonly community: number;
  readonly crop: number;
  readonly plannedHa: number;
  readonly seedKg: number;
  readonly ownSeedKg: number;
}

/** Rows with planned hectares above nought, by community, zone, crop. */
function needRows(scenario: Scenario, shares: ZoneShares, practices: readonly CropPractice[]): readonly NeedRow[] {
  const zoneRows = rowsByCommunity(shares, scenario.communities.length);
  return scenario.communities.flatMap((community, c) => {
    const rows = zoneRows[c] ?? [];
    const parts = rows.map((row) => shares.share[row] as number);
    const crops = practices.map((practice) => {
      const plan = community.crops.find(({ crop }) => crop === practice.crop);
      const plannedHa = plan?.plannedHa ?? 0;
      const rate = plan?.seedRateKgPerHa ?? practice.seedRate.value;
      return {
        plannedHa: shareOut(plannedHa, parts),
        seedKg: shareOut(plannedHa * rate, parts),
        ownSeedKg: shareOut(plan?.ownSeedKg ?? 0, parts),
      };
    });
    return rows.flatMap((row, r) =>
      crops
        .map(({ plannedHa, seedKg, ownSeedKg }, crop) => ({
          zone: shares.zone[row] as number,
          community: c,
          crop,
          plannedHa: plannedHa[r] as number,
          seedKg: seedKg[r] as number,
          ownSeedKg: ownSeedKg[r] as number,
        }))
        .filter(({ plannedHa }) => plannedHa > 0),
    );
  });
}

function rowsByCommunity(shares: ZoneShares, communities: number): readonly (readonly number[])[] {
  const rows: number[][] = Array.from({ length: communities }, () => []);
  for (let row = 0; row < shares.community.length; row++) rows[shares.community[row] as number]?.push(row);
  return rows;
}

function columnsOf(rows: readonly NeedRow[], scenario: Scenario, practices: readonly CropPractice[]): Needs {
  const practiceOf = (row: NeedRow): CropPractice => practices[row.crop] as CropPractice;
  const contingency = 1 + scenario.policy.contingencyPercent / 100;
  const whole = (of: (row: NeedRow) => number) => Int32Array.from(rows, of);
  const column = (of: (row: NeedRow) => number) => Float64Array.from(rows, of);
  return {
    zone: whole((row) => row.zone),
    community: whole((row) => row.community),
    crop: whole((row) => row.crop),
    plannedHa: column((row) => row.plannedHa),
    seedKg: column((row) => row.seedKg),
    ownSeedKg: column((row) => row.ownSeedKg),
    programmeSeedKg: column((row) => Math.max(0, row.seedKg - row.ownSeedKg)),
    inoculantG: column((row) => row.seedKg * practiceOf(row).doseGPerKg),
    product: whole((row) => practiceOf(row).product),
    packsNeeded: column((row) => row.seedKg * practiceOf(row).packsPerKg * contingency),
    stickerPacks: column((row) => row.seedKg * practiceOf(row).stickerPacksPerKg * contingency),
    waterL: column((row) => row.seedKg * practiceOf(row).waterLPerKg),
    fertiliserKg: column((row) => row.plannedHa * practiceOf(row).fertiliserKgPerHa),
    seedsPerKg: Float64Array.from(practices, (practice) => seedsPerKg(practice.thousandSeedG.value)),
  };
}
