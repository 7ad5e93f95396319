import type { Crop, Decision, Needs, Plan, Scenario } from '../../engine/index.ts';
import { localNumber, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { shareTone, type Tone } from './map-view.ts';

/** One crop's seed rate, as a control. */
export interface SeedRate {
  readonly crop: Crop;
  readonly name: string;
  readonly kgPerHa: number;
  /** Whether it was changed since the plan. */
  readonly isChanged: boolean;
}

const rateName = (crop: Crop) => `${crop}.seedRateKgPerHa`;

/** The decision that puts another seed rate in the place of the plan's. */
export const changeRate = (crop: Crop, kgPerHa: number): Decision => ({
  kind: 'assume',
  name: rateName(crop),
  value: kgPerHa,
});

/** Seed rates of the planned crops where communities state none of their own: as decided, else as planned. */
export function seedRates(plan: Plan, scenario: Scenario, decisions: readonly Decision[], words: Words): SeedRate[] {
  return scenario.crops.flatMap((crop, index) => {
    const planned = plannedRate(plan, scenario, crop, index);
    if (planned === null) return [];
    const decided = decisions.findLast((d) => d.kind === 'assume' && d.name === rateName(crop));
    const kgPerHa = decided?.kind === 'assume' ? decided.value : planned;
    return [{ crop, name: words.crops[crop], kgPerHa, isChanged: kgPerHa !== planned }];
  });
}

function plannedRate({ needs }: Plan, { communities }: Scenario, crop: Crop, index: number): number | null {
  const row = needs.crop.findIndex(
    (of, need) =>
      of === index &&
      communities[needs.community[need] ?? -1]?.crops.find((one) => one.crop === crop)?.seedRateKgPerHa === null,
  );
  if (row < 0) return null;
  return Number(((needs.seedKg[row] ?? 0) / (needs.plannedHa[row] ?? 1)).toFixed(2));
}

/** Stock against need at the changed rates, for the whole district: seed in stock and saved, of the seed the land now asks. */
export function stockAgainstNeed(
  { allocation: { lots } }: Plan,
  scenario: Scenario,
  needs: Needs,
  words: Words,
): string {
  let [needKg, coveredKg] = [0, 0];
  const inStock = scenario.crops.map((crop) => offeredSeedKg(scenario, lots.packsOffered, crop));
  const [need, own] = [scenario.crops.map(() => 0), scenario.crops.map(() => 0)];
  for (let row = 0; row < needs.crop.length; row++) {
    const crop = needs.crop[row] as number;
    need[crop] = (need[crop] as number) + (needs.seedKg[row] as number);
    own[crop] = (own[crop] as number) + Math.min(needs.ownSeedKg[row] as number, needs.seedKg[row] as number);
  }
  need.forEach((kg, crop) => {
    needKg += kg;
    coveredKg += Math.min(kg, (inStock[crop] as number) + (own[crop] as number));
  });
  const percent = wholePercent(needKg > 0 ? coveredKg / needKg : 1);
  const tonnes = withUnit(localNumber(needKg / 1000, words, 1), 't');
  return words.stock.atTheseRates(tonnes, withUnit(localNumber(percent, words), '%'));
}

function offeredSeedKg(scenario: Scenario, packsOffered: readonly number[], crop: Crop): number {
  return scenario.lots.reduce((sum, lot, index) => {
    const product = scenario.products.find(({ id }) => id === lot.productId);
    if (product?.kind !== 'seed' || !product.crops.includes(crop)) return sum;
    return sum + ((packsOffered[index] ?? 0) * product.packG) / 1000;
  }, 0);
}

/** Tones of the communities if what the plan gives had to serve the changed needs: the same kilograms on other hectares. */
export function changedTones(plan: Plan, scenario: Scenario, needs: Needs): (Tone | null)[] {
  const { needs: before, allocation, outcomes } = plan;
  const communities = scenario.communities.length;
  const crops = scenario.crops.length;
  const inoculatedHa = new Float64Array(communities * crops);
  const cellHa = new Float64Array(communities * crops);
  allocation.shares.community.forEach((community, row) => {
    const cell = community * crops + (allocation.shares.crop[row] as number);
    inoculatedHa[cell] = outcomes.crops.inoculatedHa[row] as number;
    cellHa[cell] = allocation.shares.plannedHa[row] as number;
  });
  const planned = new Float64Array(communities);
  const covered = new Float64Array(communities);
  for (let row = 0; row < needs.crop.length; row++) {
    const community = needs.community[row] as number;
    const cell = community * crops + (needs.crop[row] as number);
    const hectares = needs.plannedHa[row] as number;
    const part = (inoculatedHa[cell] as number) * (hectares / (cellHa[cell] as number));
    const kilograms = (before.seedKg[row] as number) / (needs.seedKg[row] as number);
    planned[community] = (planned[community] as number) + hectares;
    covered[community] = (covered[community] as number) + Math.min(hectares, part * kilograms);
  }
  return Array.from(planned, (hectares, community) =>
    hectares > 0 ? shareTone((covered[community] as number) / hectares) : null,
  );
}
