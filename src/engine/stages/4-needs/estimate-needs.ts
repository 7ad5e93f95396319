import { seedsPerKg } from '../../science/seed-rate.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Needs } from '../../vocabulary/stage-results/needs.ts';
import type { Places, ZoneShares } from '../../vocabulary/stage-results/places.ts';
import type { StageResult } from '../../vocabulary/stage-results/stage-result.ts';
import { clearedPacks } from './choose-reference-product.ts';
import { describeNeeds } from './describe-needs.ts';
import { noteNeeds } from './note-needs.ts';
import { type CropPractice, settlePractice } from './settle-practice.ts';
import { shareOut } from './share-out.ts';

/**
 * Stage 4: what the planned land asks for, per zone, community and crop, beside the growers' own seed. Nothing is rounded
 * here. Land, seed and own seed are cut by zone so that the parts add up to the community's figures exactly.
 */
export function estimateNeeds(scenario: Scenario, places: Pick<Places, 'shares'>): StageResult<Needs> {
  const practices = settlePractices(scenario);
  const needs = columnsOf(layRows(scenario, places.shares, practices), scenario, practices);
  return { result: needs, problems: noteNeeds(scenario, practices, needs), provenance: describeNeeds(practices) };
}

/** The figures alone, for those who ask again and again. */
export function layNeeds(scenario: Scenario, shares: ZoneShares): Needs {
  const practices = settlePractices(scenario);
  return columnsOf(layRows(scenario, shares, practices), scenario, practices);
}

function settlePractices(scenario: Scenario): readonly CropPractice[] {
  const packs = clearedPacks(scenario);
  return scenario.crops.map((crop) => settlePractice(scenario, packs, crop));
}

/** Rows with planned hectares above nought, by community, zone, crop, in columns. */
interface NeedRows {
  readonly zone: number[];
  readonly community: number[];
  readonly crop: number[];
  readonly plannedHa: number[];
  readonly seedKg: number[];
  readonly ownSeedKg: number[];
}

function layRows(scenario: Scenario, shares: ZoneShares, practices: readonly CropPractice[]): NeedRows {
  const rows: NeedRows = { zone: [], community: [], crop: [], plannedHa: [], seedKg: [], ownSeedKg: [] };
  let end = 0;
  scenario.communities.forEach((community, c) => {
    const start = end;
    while (end < shares.community.length && shares.community[end] === c) end++;
    const parts = Array.from(shares.share.subarray(start, end));
    const crops = practices.map(({ crop, seedRate }) => {
      const plan = community.crops.find((one) => one.crop === crop);
      const plannedHa = plan?.plannedHa ?? 0;
      const rate = plan?.seedRateKgPerHa ?? seedRate.value;
      return {
        plannedHa: shareOut(plannedHa, parts),
        seedKg: shareOut(plannedHa * rate, parts),
        ownSeedKg: shareOut(plan?.ownSeedKg ?? 0, parts),
      };
    });
    parts.forEach((_, k) => {
      crops.forEach(({ plannedHa, seedKg, ownSeedKg }, crop) => {
        if (!((plannedHa[k] as number) > 0)) return;
        rows.zone.push(shares.zone[start + k] as number);
        rows.community.push(c);
        rows.crop.push(crop);
        rows.plannedHa.push(plannedHa[k] as number);
        rows.seedKg.push(seedKg[k] as number);
        rows.ownSeedKg.push(ownSeedKg[k] as number);
      });
    });
  });
  return rows;
}

function columnsOf(rows: NeedRows, scenario: Scenario, practices: readonly CropPractice[]): Needs {
  const contingency = 1 + scenario.policy.contingencyPercent / 100;
  const ofSeed = (perKg: (practice: CropPractice) => number) => scaled(rows.seedKg, rows.crop, practices.map(perKg));
  const ofLand = (perHa: (practice: CropPractice) => number) => scaled(rows.plannedHa, rows.crop, practices.map(perHa));
  const productOf = practices.map(({ product }) => product);
  return {
    zone: new Int32Array(rows.zone),
    community: new Int32Array(rows.community),
    crop: new Int32Array(rows.crop),
    plannedHa: new Float64Array(rows.plannedHa),
    seedKg: new Float64Array(rows.seedKg),
    ownSeedKg: new Float64Array(rows.ownSeedKg),
    programmeSeedKg: new Float64Array(rows.seedKg).map((kg, i) => Math.max(0, kg - (rows.ownSeedKg[i] as number))),
    inoculantG: ofSeed(({ doseGPerKg }) => doseGPerKg),
    product: new Int32Array(rows.crop).map((crop) => productOf[crop] as number),
    packsNeeded: ofSeed(({ packsPerKg }) => packsPerKg).map((packs) => packs * contingency),
    stickerPacks: ofSeed(({ stickerPacksPerKg }) => stickerPacksPerKg).map((packs) => packs * contingency),
    waterL: ofSeed(({ waterLPerKg }) => waterLPerKg),
    fertiliserKg: ofLand(({ fertiliserKgPerHa }) => fertiliserKgPerHa),
    seedsPerKg: Float64Array.from(practices, (practice) => seedsPerKg(practice.thousandSeedG.value)),
  };
}

/** A column times what its row's crop takes for each unit. */
function scaled(column: readonly number[], crop: readonly number[], perUnit: readonly number[]): Float64Array {
  return new Float64Array(column).map((amount, i) => amount * (perUnit[crop[i] as number] as number));
}
