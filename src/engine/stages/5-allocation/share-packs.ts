import { INOCULATION_PRACTICE } from '../../reference/inoculation-practice.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { PackShare } from '../../vocabulary/stage-results/allocation.ts';
import type { DemandRows } from './demand-rows.ts';
import type { GrantLine } from './list-grants.ts';
import { rationPacks } from './make-whole-packs.ts';
import { growersOf } from './share-terms.ts';
import { seedKgPerPack } from './stock-groups.ts';

/**
 * How each community shares its packs of inoculant. The growers of a crop are divided among its lots by the seed that the
 * packs coat; where a pack serves more than one grower they coat and sow together, because an opened pack does not keep.
 * Seed is weighed out bag by bag and needs no such plan.
 */
export function sharePacks(scenario: Scenario, demand: DemandRows, lines: readonly GrantLine[]): PackShare[] {
  const grantsOfRow = new Map<number, number[]>();
  lines.forEach(({ row, product }, grant) => {
    if (product.kind === 'inoculant') grantsOfRow.set(row, [...(grantsOfRow.get(row) ?? []), grant]);
  });
  return [...grantsOfRow].flatMap(([row, grants]) => {
    const growers = growersOf(scenario, demand.community[row] as number, demand.crop[row] as number);
    const goods = grants.map((grant) => lines[grant] as GrantLine);
    const shares = growers === null ? null : divideGrowers(goods, growers);
    return goods.map(({ product, packs }, i): PackShare => {
      const own = shares?.[i] ?? Number.NaN;
      return {
        grant: grants[i] as number,
        growers: own,
        growersPerPack: own / packs,
        openedPackDays: product.openedPackDays ?? INOCULATION_PRACTICE.openedPackDays.value,
        sowTogether: own > packs,
      };
    });
  });
}

/** Whole growers by the seed that each lot's packs coat, by largest remainder. Grams keep the division in whole numbers. */
function divideGrowers(goods: readonly GrantLine[], growers: number): number[] {
  const coatsG = goods.map(({ packs, product }) => Math.round(packs * seedKgPerPack(product) * 1000));
  return rationPacks(coatsG, growers);
}
