import { CROP_FACTS } from '../../reference/crops.ts';
import { RESIDUES } from '../../reference/harvest-nitrogen.ts';
import { GRAIN_PER_KG_PHOSPHORUS } from '../../reference/phosphorus-response.ts';
import { type CropOutcomes, type Problem, problem } from '../../vocabulary/index.ts';
import type { PlayParts, PreparedPlay } from './prepare-play.ts';

/** Below so many seasons a range says little of the weather (assumed). */
const FEW_SEASONS = 5;
/** A yield so many times the usual is probably in another unit, or a record (assumed). */
const UNUSUAL_TIMES = 3;

/** What a reader of the outcomes must know of them. */
export function noteOutcomes(
  { scenario, allocation }: PlayParts,
  prepared: PreparedPlay,
  outcomes: CropOutcomes,
): readonly Problem[] {
  const problems: Problem[] = [];
  if (prepared.members === 0) problems.push(problem('E7001'));
  else if (prepared.members < FEW_SEASONS) problems.push(problem('E7005', { facts: { seasons: prepared.members } }));
  problems.push(...noteFertiliser(scenario, allocation, prepared));
  scenario.crops.forEach((crop, index) => {
    const rows = Array.from(allocation.shares.crop.keys()).filter(
      (row) => allocation.shares.crop[row] === index && (outcomes.inoculatedHa[row] as number) > 0,
    );
    const isSown = Array.from(allocation.shares.crop).some(
      (of, row) => of === index && (outcomes.seedHa[row] as number) > 0,
    );
    if (isSown && scenario.prices.grainPerT[crop] === undefined) problems.push(problem('E7007', { facts: { crop } }));
    if (isSown && RESIDUES[crop] === null) problems.push(problem('E7008', { facts: { crop } }));
    const own = scenario.yieldsTPerHa[crop];
    const usual = CROP_FACTS[crop].yieldTPerHa.value;
    if (isSown && own !== undefined && own > UNUSUAL_TIMES * usual)
      problems.push(problem('E7009', { facts: { crop, yield: own, usual } }));
    if (rows.length === 0) return;
    const { responseTPerHa, responseFraction } = CROP_FACTS[crop];
    if (responseTPerHa === null && responseFraction === null) problems.push(problem('E7002', { facts: { crop } }));
    const low = rows.filter((row) => (outcomes.log10PerSeed[row] as number) < prepared.floorLog10);
    if (low.length > 0) {
      const { cellsPerSeedFloor } = scenario.policy;
      problems.push(problem('E7003', { facts: { crop, communities: low.length, floor: cellsPerSeedFloor } }));
    }
    const unknown = rows.filter((row) => Number.isNaN(outcomes.log10PerSeed[row]));
    if (unknown.length > 0 && prepared.members > 0) {
      problems.push(problem('E7004', { facts: { crop, communities: unknown.length } }));
    }
  });
  return problems;
}

/** Fertiliser that is handed over and whose gain cannot be told: by product where its phosphorus is not stated, else by crop. */
function noteFertiliser(
  { crops, lots, products }: PlayParts['scenario'],
  { shares }: PlayParts['allocation'],
  { goods }: PreparedPlay,
): readonly Problem[] {
  const [unstated, unpublished] = [new Set<string>(), new Set<string>()];
  for (const { kind, lot, shareRow } of goods) {
    const product = products.find(({ id }) => id === lots[lot]?.productId);
    const crop = crops[shares.crop[shareRow] as number];
    if (kind !== 'fertiliser' || !product || !crop) continue;
    if (product.phosphorusPercent === null) unstated.add(product.id);
    else if (product.phosphorusPercent > 0 && !GRAIN_PER_KG_PHOSPHORUS[crop]) unpublished.add(crop);
  }
  return [
    ...[...unstated].map((id) =>
      problem('E7006', { about: { part: 'products', id }, column: 'p_percent', facts: { product: id } }),
    ),
    ...[...unpublished].map((crop) => problem('E7010', { facts: { crop } })),
  ];
}
