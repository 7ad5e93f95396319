import { fillCoolStores } from '../../science/depot-store.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import type { Depot, Scenario } from '../../vocabulary/scenario.ts';
import type { LotVerdict } from '../../vocabulary/stage-results/allocation.ts';
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
  const overfull = fillCoolStores(scenario)
    .filter(({ outside }) => outside.length > 0)
    .map(({ depot, litres, outside }) => {
      const { id, coolStoreLitres } = scenario.depots[depot] as Depot;
      return problem('E5015', {
        about: { part: 'depots', id },
        column: 'cool_store_litres',
        value: String(coolStoreLitres),
        facts: { depot: id, roomLitres: coolStoreLitres, litres: Math.round(litres), lots: outside.length },
      });
    });
  if (scenario.handovers.length === 0) return [...found, ...overfull];
  return [
    ...found,
    ...overfull,
    problem('E5024', { file: 'handovers.csv', facts: { rows: scenario.handovers.length } }),
  ];
}
