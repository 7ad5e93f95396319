import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict } from '../../vocabulary/stage-results.ts';
import type { GrantLine } from './list-grants.ts';
import { seedKgPerPack } from './stock-groups.ts';

/** What a reader should know of the stock, beside lots kept back: doses and volumes that labels leave out, past hand-overs. */
export function noteStock(
  scenario: Scenario,
  verdicts: readonly LotVerdict[],
  lines: readonly GrantLine[],
): readonly Problem[] {
  const offered = new Set(
    verdicts.flatMap(({ lot, packsOffered }) => (packsOffered > 0 ? [scenario.lots[lot]?.productId] : [])),
  );
  const given = new Set(lines.map(({ product }) => product.id));
  const found = scenario.products.flatMap((product) => {
    const place = { about: { part: 'products', id: product.id } as const, facts: { product: product.id } };
    const isCoating = product.kind === 'inoculant' || product.kind === 'sticker';
    if (isCoating && offered.has(product.id) && !(seedKgPerPack(product) > 0)) {
      return [problem('E5013', { ...place, column: 'dose_g_per_kg' })];
    }
    const isUnmeasured = product.kind === 'inoculant' && product.litresPerPack === null && given.has(product.id);
    return isUnmeasured ? [problem('E5014', { ...place, column: 'litres_per_pack' })] : [];
  });
  if (scenario.handovers.length === 0) return found;
  return [...found, problem('E5024', { file: 'handovers.csv', facts: { rows: scenario.handovers.length } })];
}
