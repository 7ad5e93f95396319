import type { LinearSolver } from '../../numerics/linear-solver.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { Product } from '../../vocabulary/supply.ts';
import type { DemandRows } from './demand-rows.ts';
import { LinearModelBuilder } from './linear-model-builder.ts';
import { rationPacks } from './make-whole-packs.ts';
import { spendRest } from './spend-rest.ts';
import { seedKgPerPack } from './stock-groups.ts';
import { worthOfLand } from './worth-of-land.ts';

interface Buyer {
  readonly scenario: Scenario;
  readonly demand: DemandRows;
  readonly solver: LinearSolver;
}

interface WantedLine {
  readonly product: number;
  readonly packs: number;
  readonly rows: readonly number[];
  readonly ha: readonly number[];
}

/**
 * Packs to buy of each line under the budget: supplier's multiples of each product so that the land served is worth most by
 * `worth-of-land`. Inoculant counts only for seed that is there or is bought with it; a sticker counts with the inoculant that
 * it serves; fertiliser has what these leave (`spend-rest`). A product without a price cannot be weighed against the others and is not bought.
 *
 *   maximise sum_c seedWorth_c s_c + inoculantWorth_c i_c   so that   sum price_p m_p multiple_p <= budget,
 *   kg_c s_c <= sum over its seed of kg bought,   s_c <= wanted;   kg_c i_c <= sum of seed coated,   i_c <= wanted now + s_c.
 */
export function spendBudget({ scenario, demand, solver }: Buyer, lines: readonly WantedLine[]): number[] {
  const budget = scenario.policy.orderBudget;
  const wanted = lines.map(({ packs }) => packs);
  if (budget === null) return wanted;
  const productOf = ({ product }: WantedLine) => scenario.products[product] as Product;
  const cost = lines.reduce((sum, line) => sum + line.packs * (productOf(line).pricePerPack ?? 0), 0);
  const isPriced = (line: WantedLine) => productOf(line).pricePerPack !== null;
  if (cost <= budget && lines.every(isPriced)) return wanted;
  const isRest = (line: WantedLine) => productOf(line).kind === 'fertiliser';
  const first = lines.filter((line) => isPriced(line) && !isRest(line));
  const products = [...new Set(first.map(({ product }) => product))];
  const multiples = chooseMultiples(scenario, demand, solver, first, products, budget);
  const bought = new Map<WantedLine, number>();
  products.forEach((p, i) => {
    const packs = (multiples[i] as number) * (scenario.products[p]?.orderMultiple ?? 1);
    rationTo(
      first.filter(({ product }) => product === p),
      packs,
      bought,
    );
  });
  const spent = first.reduce((sum, line) => sum + (bought.get(line) ?? 0) * (productOf(line).pricePerPack ?? 0), 0);
  const rest = lines.filter((line) => isPriced(line) && isRest(line));
  const fertilisers = [...new Set(rest.map(({ product }) => product))];
  const bags = fertilisers.map((p) => {
    const own = rest.filter(({ product }) => product === p);
    return {
      product: p,
      packs: own.reduce((sum, { packs }) => sum + packs, 0),
      haOfCrop: haByCrop(scenario, demand, own),
    };
  });
  spendRest(scenario, bags, budget - spent, sownPart(scenario, demand, lines, bought)).forEach((packs, i) => {
    rationTo(
      rest.filter(({ product }) => product === fertilisers[i]),
      packs,
      bought,
    );
  });
  return lines.map((line) => bought.get(line) ?? 0);
}

/** Divides the packs bought of a product among its depots as they are wanted. */
function rationTo(lines: readonly WantedLine[], packs: number, bought: Map<WantedLine, number>): void {
  const wanted = lines.map((line) => line.packs);
  rationPacks(wanted, packs).forEach((part, i) => {
    bought.set(lines[i] as WantedLine, part);
  });
}

/** Land that lines are wanted for, ha by crop. */
function haByCrop({ crops }: Scenario, demand: DemandRows, lines: readonly WantedLine[]): number[] {
  const hectares = crops.map(() => 0);
  for (const { rows, ha } of lines)
    rows.forEach((row, i) => {
      const crop = demand.crop[row] as number;
      hectares[crop] = (hectares[crop] as number) + (ha[i] as number);
    });
  return hectares;
}

/** Part of each crop's land wanted for fertiliser that will have seed: all but what seed is wanted for and not bought. */
function sownPart(
  scenario: Scenario,
  demand: DemandRows,
  lines: readonly WantedLine[],
  bought: ReadonlyMap<WantedLine, number>,
): number[] {
  const ofKind = (kind: Product['kind']) => lines.filter(({ product }) => scenario.products[product]?.kind === kind);
  const wanted = haByCrop(scenario, demand, ofKind('fertiliser'));
  const unsown = ofKind('seed').map((line) => {
    const part = line.packs > 0 ? 1 - (bought.get(line) ?? 0) / line.packs : 0;
    return { ...line, ha: line.ha.map((ha) => ha * part) };
  });
  const without = haByCrop(scenario, demand, unsown);
  return wanted.map((ha, crop) => (ha > 0 ? Math.max(0, 1 - (without[crop] as number) / ha) : 0));
}

function chooseMultiples(
  scenario: Scenario,
  demand: DemandRows,
  solver: LinearSolver,
  lines: readonly WantedLine[],
  products: readonly number[],
  budget: number,
): number[] {
  const builder = new LinearModelBuilder();
  const worth = worthOfLand(scenario);
  const useful = 1 - scenario.policy.reservePercent / 100;
  const kgPerHa = scenario.crops.map((_, crop) => meanKgPerHa(demand, crop));
  const haOfKind = (kind: Product['kind']) =>
    haByCrop(
      scenario,
      demand,
      lines.filter(({ product }) => scenario.products[product]?.kind === kind),
    );
  const [seedHaOf, inoculantHaOf] = [haOfKind('seed'), haOfKind('inoculant')];
  const crops = scenario.crops.map((_, crop) => ({
    seedHa: seedHaOf[crop] as number,
    inoculantHa: inoculantHaOf[crop] as number,
  }));
  const money = builder.addRow(Number.NEGATIVE_INFINITY, budget);
  const seedRow = crops.map(() => builder.addRow(Number.NEGATIVE_INFINITY, 0));
  // Seed that is bought asks for inoculant; what is wanted of inoculant counts all seed that will be there if all is bought.
  const coatRow = crops.map(({ seedHa, inoculantHa }) =>
    builder.addRow(Number.NEGATIVE_INFINITY, Math.max(0, inoculantHa - seedHa)),
  );
  const byProduct = new Map<number, number>();
  for (const p of products) {
    const product = scenario.products[p] as Product;
    if (product.kind === 'inoculant') byProduct.set(p, builder.addRow(Number.NEGATIVE_INFINITY, 0));
  }
  const price = (product: Product) => (product.pricePerPack as number) * product.orderMultiple;
  products.forEach((p) => {
    const product = scenario.products[p] as Product;
    const own = lines.filter(({ product: of }) => of === p);
    const total = own.reduce((sum, { packs }) => sum + packs, 0);
    const kg = product.orderMultiple * seedKgPerPack(product) * useful;
    builder.addEntry(money, price(product));
    if (product.kind === 'seed')
      scenario.crops.forEach((crop, c) => {
        if (product.crops[0] === crop || product.crops.includes(crop)) builder.addEntry(seedRow[c] as number, -kg);
      });
    const coats = byProduct.get(p);
    if (coats !== undefined) builder.addEntry(coats, -kg);
    builder.closeColumn(0, 0, Math.floor(total / product.orderMultiple + 1e-9));
  });
  crops.forEach(({ seedHa }, c) => {
    builder.addEntry(seedRow[c] as number, kgPerHa[c] as number);
    builder.addEntry(coatRow[c] as number, -1);
    builder.closeColumn(worth.seed[c] as number, 0, seedHa);
  });
  for (const [p, row] of byProduct) {
    scenario.crops.forEach((crop, c) => {
      if (!scenario.products[p]?.crops.includes(crop)) return;
      builder.addEntry(row, kgPerHa[c] as number);
      builder.addEntry(coatRow[c] as number, 1);
      builder.closeColumn(worth.inoculant[c] as number, 0, crops[c]?.inoculantHa ?? 0);
    });
  }
  const model = builder.build(true);
  const whole = Uint8Array.from({ length: model.columns }, (_, column) => (column < products.length ? 1 : 0));
  const answer = solver.solve({ ...model, whole });
  if (answer.status !== 'optimal' && answer.status !== 'limit') return products.map(() => 0);
  return products.map((_, i) => Math.round(answer.columnValues[i] as number));
}

function meanKgPerHa(demand: DemandRows, crop: number): number {
  let [kg, ha] = [0, 0];
  for (let row = 0; row < demand.count; row++) {
    if (demand.crop[row] !== crop) continue;
    kg += demand.seedNeedKg[row] as number;
    ha += demand.plannedHa[row] as number;
  }
  return ha > 0 ? kg / ha : 1;
}
