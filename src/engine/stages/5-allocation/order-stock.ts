import type { LinearSolver } from '../../numerics/linear-solver.ts';
import { BOX_LITRES_PER_KG } from '../../reference/boxes.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { StockOrder } from '../../vocabulary/stage-results/allocation.ts';
import type { Product, ProductKind } from '../../vocabulary/supply.ts';
import type { DemandRows } from './demand-rows.ts';
import { rationPacks } from './make-whole-packs.ts';
import { type PackOffer, wholePacksFor } from './packs-to-order.ts';
import type { ReachCurves } from './reach-curves.ts';
import { spendBudget } from './spend-budget.ts';
import { seedKgPerPack } from './stock-groups.ts';

/** What stock would still have to bring, kg of seed per row: seed, and what coats and sticks to it; fertiliser by land (`count-by-land`). */
export interface Wanted {
  readonly kind: ProductKind;
  readonly kg: Float64Array;
  readonly kgPerHa: Float64Array;
}

/** All that orders are worked out from. */
export interface OrderDesk {
  readonly scenario: Scenario;
  readonly demand: DemandRows;
  readonly curves: ReachCurves;
  /** Last planning day on which goods for the row are of use, day number. */
  readonly lastUsefulDay: Float64Array;
  /** Nearest depot of each row, -1 where none reaches it; for goods that must be kept cool, the nearest with a cool store. */
  readonly depotOf: (row: number, isCool: boolean) => number;
  readonly solver: LinearSolver;
}

interface Line {
  readonly product: number;
  readonly depot: number;
  readonly isLate: boolean;
  readonly rows: number[];
  readonly ha: number[];
  packs: number;
}

/**
 * The dated order list: what to buy so that everybody's planned land is served, beside stock and the growers' own seed. Each row's
 * need is made up of whole packs, at the depot nearest to it; the reserve that will be kept back is bought as well, and the
 * whole is made up to the supplier's multiple. What would come after the last useful day is listed and not bought.
 * Under a budget as much is bought as gives most (`spend-budget`).
 */
export function orderStock(desk: OrderDesk, wanted: readonly Wanted[]): StockOrder[] {
  const lines = wanted.flatMap((each) => linesOf(desk, each));
  const inTime = lines.filter(({ isLate }) => !isLate);
  for (const line of lines) line.packs = withReserve(line.packs, desk.scenario.policy.reservePercent);
  makeUpMultiples(desk.scenario, inTime);
  const bought = spendBudget(desk, inTime);
  const orders = [
    ...inTime.map((line, i) => describe(desk, line, bought[i] as number)),
    ...lines.filter(({ isLate }) => isLate).map((line) => describe(desk, line, 0)),
  ].sort((a, b) => a.orderBy - b.orderBy || a.product - b.product || a.depot - b.depot);
  return fitCoolStores(desk.scenario, orders);
}

function linesOf(desk: OrderDesk, { kind, kg, kgPerHa }: Wanted): Line[] {
  const lines = new Map<string, Line>();
  const offersOfCrop = desk.scenario.crops.map((_, crop) => offersFor(desk.scenario, kind, crop));
  kg.forEach((short, row) => {
    const offers = offersOfCrop[desk.demand.crop[row] as number] as readonly PackOffer[];
    const depot = desk.depotOf(row, kind === 'inoculant');
    if (!(short > 1e-6) || depot < 0 || offers.length === 0) return;
    const lastDay = desk.lastUsefulDay[row] as number;
    const timely = offers.filter(({ arrives }) => arrives <= lastDay);
    const first = Math.min(...offers.map(({ arrives }) => arrives));
    const isLate = timely.length === 0;
    const usable = isLate ? offers.filter(({ arrives }) => arrives === first) : timely;
    for (const { product, packs, kg: held } of wholePacksFor(short, usable)) {
      const key = `${product} ${depot} ${isLate}`;
      const line = lines.get(key) ?? { product, depot, isLate, rows: [], ha: [], packs: 0 };
      line.rows.push(row);
      line.ha.push(Math.min(short, packs * held) / (kgPerHa[row] as number));
      line.packs += packs;
      lines.set(key, line);
    }
  });
  return [...lines.values()];
}

/** Products that may be bought for a crop; of two packs of one size the cheaper. */
export function offersFor(scenario: Scenario, kind: ProductKind, crop: number): PackOffer[] {
  const offers = scenario.products.flatMap((product, p): PackOffer[] => {
    const fits = product.kind === kind && product.crops.some((one) => one === scenario.crops[crop]);
    const mayCoat = !product.treatedSeed || product.inoculantAllowed === true;
    const kg = seedKgPerPack(product);
    if (!fits || !mayCoat || !(kg > 0)) return [];
    return [{ product: p, kg, price: product.pricePerPack, arrives: scenario.asOf + (product.leadDays ?? 0) }];
  });
  return offers.sort((a, b) => b.kg - a.kg || (a.price ?? 1e300) - (b.price ?? 1e300) || a.product - b.product);
}

/** The fewest packs of which so many are left when the reserve, whole packs, is kept back. */
function withReserve(packs: number, reservePercent: number): number {
  if (reservePercent >= 100) return packs;
  let whole = packs;
  while (whole - Math.floor((whole * reservePercent) / 100) < packs) whole++;
  return whole;
}

/** Makes each product's packs up to its supplier's multiple; the depot that takes most takes the rest. */
function makeUpMultiples({ products }: Scenario, lines: readonly Line[]): void {
  for (const p of new Set(lines.map(({ product }) => product))) {
    const own = lines.filter(({ product }) => product === p);
    const total = own.reduce((sum, { packs }) => sum + packs, 0);
    const multiple = products[p]?.orderMultiple ?? 1;
    const most = own.reduce((best, line) => (line.packs > best.packs ? line : best));
    most.packs += Math.ceil(total / multiple) * multiple - total;
  }
}

function describe({ scenario, demand, curves, lastUsefulDay }: OrderDesk, line: Line, bought: number): StockOrder {
  const product = scenario.products[line.product] as Product;
  const lead = product.leadDays ?? 0;
  const { from } = scenario.planning;
  const orderBy = from - lead;
  const arrives = Math.max(scenario.asOf, orderBy) + lead;
  const usefulUntil = line.rows.reduce((last, row) => Math.max(last, lastUsefulDay[row] as number), 0);
  const day = Math.max(0, arrives - from);
  let [weight, inTime, hectares] = [0, 0, 0];
  line.rows.forEach((row, i) => {
    const ha = line.ha[i] as number;
    hectares += ha;
    for (let k = demand.partOffsets[row] as number; k < (demand.partOffsets[row + 1] as number); k++) {
      const curve = curves.dry(demand.partZone[k] as number, demand.crop[row] as number);
      const part = ha * (demand.partFraction[k] as number);
      weight += part;
      inTime += part * (curve.inTime[day] ?? 0);
    }
  });
  return {
    product: line.product,
    depot: line.depot,
    verdict: line.isLate
      ? 'too-late'
      : product.leadDays === null
        ? 'ask-lead-time'
        : arrives > from
          ? 'late'
          : 'in-time',
    packs: bought,
    packsWanted: line.packs,
    hectares: line.packs > 0 ? (hectares * bought) / line.packs : 0,
    hectaresWanted: hectares,
    cost: product.pricePerPack === null ? null : bought * product.pricePerPack,
    orderBy,
    arrives,
    usefulUntil,
    lastOrderDay: usefulUntil - lead,
    chanceInTime: weight > 0 ? inTime / weight : 0,
    packsAtOnce: -1,
  };
}

/** No order may exceed the cool store: how many packs of each there is room for at once beside what stands there. */
function fitCoolStores(scenario: Scenario, orders: readonly StockOrder[]): StockOrder[] {
  const litresOf = (product: Product) => product.litresPerPack ?? (product.packG / 1000) * BOX_LITRES_PER_KG.value;
  const products = new Map(scenario.products.map((product) => [product.id, product]));
  return orders.map((order) => {
    const product = scenario.products[order.product] as Product;
    if (product.kind !== 'inoculant' || order.packs === 0) return order;
    const depot = scenario.depots[order.depot];
    const standing = scenario.lots.reduce((litres, { depotId, productId, packs }) => {
      const own = products.get(productId);
      return depotId === depot?.id && own?.kind === 'inoculant' ? litres + packs * litresOf(own) : litres;
    }, 0);
    const room = Math.max(0, (depot?.coolStoreLitres ?? 0) - standing);
    const beside = orders.filter(
      (other) => other.depot === order.depot && scenario.products[other.product]?.kind === 'inoculant',
    );
    const parts = beside.map((other) =>
      Math.round(other.packs * litresOf(scenario.products[other.product] as Product) * 1000),
    );
    const own = rationPacks(parts, Math.floor(room * 1000))[beside.indexOf(order)] as number;
    return { ...order, packsAtOnce: Math.min(order.packs, Math.floor(own / 1000 / litresOf(product) + 1e-9)) };
  });
}
