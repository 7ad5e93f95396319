import type { Problem } from '../vocabulary/problems.ts';
import type { Product } from '../vocabulary/supply.ts';
import { askedKg, givenKg } from './check-fairness.ts';
import { isOfUse } from './check-unserved.ts';
import { at, type CheckedCase, dayOf } from './checked-case.ts';
import { finding } from './finding.ts';
import { bagsGivenHa, haOfBag } from './own-bags.ts';
import { sowingDays } from './own-season.ts';
import { seedKgOfPack } from './own-stock.ts';
import { TOLERANCE } from './tolerances.ts';

/** The order list: dates by the supplier's lead time, money by the price, multiples, budget, cool room, and no more than is short. */
export function checkOrders(c: CheckedCase): readonly Problem[] {
  return [
    ...c.plan.allocation.orders.product.flatMap((_, row) => [
      ...checkDates(c, row),
      ...checkMoney(c, row),
      ...checkReach(c, row),
    ]),
    ...checkMultiples(c),
    ...checkBudget(c),
    ...checkRoom(c),
    ...checkAmounts(c),
    ...checkBags(c),
  ];
}

const productAt = (c: CheckedCase, row: number): Product =>
  at(c.scenario.products, at(c.plan.allocation.orders.product, row));

function checkDates(c: CheckedCase, row: number): readonly Problem[] {
  const { orders } = c.plan.allocation;
  const found: Problem[] = [];
  const lead = productAt(c, row).leadDays ?? 0;
  const { from } = c.scenario.planning;
  const due = Math.max(c.scenario.asOf, from - lead) + lead;
  const told = dayOf(at(orders.arrives, row));
  if (told !== due) found.push(finding('E8414', 'allocation.orders.arrives', row, at(orders.arrives, row), due - told));
  if (dayOf(at(orders.orderBy, row)) !== from - lead)
    found.push(finding('E8414', 'allocation.orders.orderBy', row, at(orders.orderBy, row), from - lead));
  if (at(orders.packs, row) > 0 && !isOfUseOn(c, row, told))
    found.push(finding('E8414', 'allocation.orders.packs', row, at(orders.packs, row), 'arrives too late'));
  const verdict = at(orders.verdict, row);
  if ((verdict === 'in-time') !== (told <= from && productAt(c, row).leadDays !== null) && verdict !== 'too-late')
    found.push(finding('E8414', 'allocation.orders.verdict', row, verdict, at(orders.arrives, row)));
  return found;
}

/** Would goods handed over on the day still be of use to anyone who plans a crop of the product? */
function isOfUseOn(c: CheckedCase, row: number, day: number): boolean {
  const product = productAt(c, row);
  const { shares } = c.plan.allocation;
  const onDay = Math.max(0, day - c.scenario.planning.from);
  return shares.community.some((community, i) => {
    const crop = at(shares.crop, i);
    return product.crops.includes(at(c.scenario.crops, crop)) && isOfUse(c, community, crop, onDay);
  });
}

function checkMoney(c: CheckedCase, row: number): readonly Problem[] {
  const { orders } = c.plan.allocation;
  const { pricePerPack } = productAt(c, row);
  const packs = at(orders.packs, row);
  const due = pricePerPack === null ? null : packs * pricePerPack;
  const told = at(orders.cost, row);
  const found: Problem[] = [];
  if ((told === null) !== (due === null) || Math.abs((told ?? 0) - (due ?? 0)) > 0.011)
    found.push(finding('E8415', 'allocation.orders.cost', row, told, due));
  if (packs > at(orders.packsWanted, row))
    found.push(finding('E8417', 'allocation.orders.packs', row, packs, at(orders.packsWanted, row)));
  return found;
}

/** Land served and chance of being in time: no better than the best of the land that plans its crops. */
function checkReach(c: CheckedCase, row: number): readonly Problem[] {
  const { orders, shares } = c.plan.allocation;
  const product = productAt(c, row);
  const [packs, wanted] = [at(orders.packs, row), at(orders.packsWanted, row)];
  const day = dayOf(at(orders.arrives, row));
  let [leastKgPerHa, bestChance] = [Number.POSITIVE_INFINITY, 0];
  shares.community.forEach((community, i) => {
    const crop = at(shares.crop, i);
    if (!product.crops.includes(at(c.scenario.crops, crop))) return;
    leastKgPerHa = Math.min(leastKgPerHa, at(shares.seedNeedKg, i) / at(shares.plannedHa, i));
    for (const { zone } of at(c.zonesOf, community)) {
      const last = sowingDays(c, zone < 0 ? c.scenario.zones.length : zone, crop)?.last ?? [];
      const inTime = last.filter((late) => late > Math.max(day, c.scenario.planning.from)).length;
      if (last.length > 0) bestChance = Math.max(bestChance, inTime / last.length);
    }
  });
  const found: Problem[] = [];
  const most = wanted * (product.kind === 'fertiliser' ? haOfBag(product) : seedKgOfPack(product) / leastKgPerHa);
  if (at(orders.hectaresWanted, row) > most + TOLERANCE.hectares + TOLERANCE.relative * most)
    found.push(finding('E8417', 'allocation.orders.hectaresWanted', row, at(orders.hectaresWanted, row), most));
  const served = wanted > 0 ? (at(orders.hectaresWanted, row) * packs) / wanted : 0;
  if (Math.abs(at(orders.hectares, row) - served) > TOLERANCE.hectares + TOLERANCE.relative * served)
    found.push(finding('E8417', 'allocation.orders.hectares', row, at(orders.hectares, row), served));
  if (
    at(orders.chanceInTime, row) > bestChance + TOLERANCE.share &&
    !c.plan.season.windows.anchor.includes('cessation')
  )
    found.push(finding('E8414', 'allocation.orders.chanceInTime', row, at(orders.chanceInTime, row), bestChance));
  if ((at(orders.packsAtOnce, row) ?? 0) > packs)
    found.push(finding('E8416', 'allocation.orders.packsAtOnce', row, at(orders.packsAtOnce, row), packs));
  return found;
}

function checkMultiples(c: CheckedCase): readonly Problem[] {
  const { orders } = c.plan.allocation;
  const bought = new Map<number, number>();
  orders.product.forEach((product, row) => {
    bought.set(product, (bought.get(product) ?? 0) + at(orders.packs, row));
  });
  return [...bought].flatMap(([product, packs]) => {
    const { orderMultiple } = at(c.scenario.products, product);
    return packs % orderMultiple === 0
      ? []
      : [finding('E8415', 'allocation.orders.packs', null, packs, `whole times ${orderMultiple}`)];
  });
}

function checkBudget(c: CheckedCase): readonly Problem[] {
  const { orderBudget } = c.scenario.policy;
  if (orderBudget === null) return [];
  const spent = c.plan.allocation.orders.cost.reduce((sum: number, cost) => sum + (cost ?? 0), 0);
  return spent <= orderBudget * (1 + TOLERANCE.relative) + 0.01
    ? []
    : [finding('E8415', 'allocation.orders.cost', null, spent, `at most ${orderBudget}`)];
}

/** Litres that a depot's orders put into its cool store at once, beside today's lots. Packs without stated litres are not judged. */
function checkRoom(c: CheckedCase): readonly Problem[] {
  const { orders } = c.plan.allocation;
  const litresOf = (product: Product | undefined) =>
    product?.kind === 'inoculant' ? (product.litresPerPack ?? Number.NaN) : 0;
  return c.scenario.depots.flatMap(({ coolStoreLitres }, depot) => {
    const standing = c.scenario.lots.reduce((sum, lot, l) => {
      if (at(c.depotOfLot, l) !== depot) return sum;
      return sum + lot.packs * litresOf(c.scenario.products[at(c.productOfLot, l)]);
    }, 0);
    const ordered = orders.packsAtOnce.reduce(
      (sum: number, packs, row) =>
        at(orders.depot, row) === depot ? sum + (packs ?? 0) * litresOf(productAt(c, row)) : sum,
      0,
    );
    const room = Math.max(0, coolStoreLitres - standing);
    return ordered > room * (1 + TOLERANCE.relative) + 0.01
      ? [finding('E8416', 'allocation.orders.packsAtOnce', null, ordered, room)]
      : [];
  });
}

/**
 * Of each kind of goods no more is wanted than is short: a largest pack for every row, the reserve and a supplier's multiple
 * of each product beyond. And some is wanted of every kind of which somebody is short while it can still come.
 */
function checkAmounts(c: CheckedCase): readonly Problem[] {
  const { orders, shares } = c.plan.allocation;
  const { reservePercent, contingencyPercent } = c.scenario.policy;
  return (['seed', 'inoculant'] as const).flatMap((kind) => {
    const wanted = orders.packsWanted.reduce((sum, packs, row) => {
      const product = productAt(c, row);
      return product.kind === kind ? sum + packs * seedKgOfPack(product) : sum;
    }, 0);
    const own = c.scenario.products.filter((product) => product.kind === kind);
    const largest = Math.max(0, ...own.map(seedKgOfPack));
    const multiples = own.reduce((sum, product) => sum + product.orderMultiple * seedKgOfPack(product), 0);
    const short = shares.community.reduce((sum, _, row) => {
      const need = kind === 'seed' ? askedKg(c, row, 'seed') : at(shares.seedNeedKg, row);
      return sum + Math.max(0, need * (1 + contingencyPercent / 100) - givenKg(c, row, kind)) + largest;
    }, 0);
    const most = short / Math.max(0.01, 1 - reservePercent / 100) + multiples + 2 * largest;
    if (wanted > most * (1 + TOLERANCE.relative))
      return [finding('E8417', 'allocation.orders.packsWanted', null, `${wanted} kg of ${kind}`, `at most ${most} kg`)];
    return checkWanted(c, kind);
  });
}

/** Fertiliser likewise, by land: no more than all planned land less what is given, and a bag, the reserve and a multiple beyond. */
function checkBags(c: CheckedCase): readonly Problem[] {
  const { orders, shares } = c.plan.allocation;
  const own = c.scenario.products.filter(({ kind }) => kind === 'fertiliser');
  const largest = Math.max(0, ...own.map(haOfBag));
  const short = shares.community.reduce((sum, _, row) => {
    const isAsked = own.some(({ crops }) => crops.includes(at(c.scenario.crops, at(shares.crop, row))));
    return isAsked ? sum + Math.max(0, at(shares.plannedHa, row) - bagsGivenHa(c, row)) + largest : sum;
  }, 0);
  const multiples = own.reduce((sum, product) => sum + product.orderMultiple * haOfBag(product), 0);
  const most = short / Math.max(0.01, 1 - c.scenario.policy.reservePercent / 100) + multiples + 2 * largest;
  const wanted = orders.packsWanted.reduce((sum, packs, row) => sum + packs * haOfBag(productAt(c, row)), 0);
  return wanted > most * (1 + TOLERANCE.relative)
    ? [finding('E8417', 'allocation.orders.packsWanted', null, `fertiliser for ${wanted} ha`, `at most ${most} ha`)]
    : [];
}

function checkWanted(c: CheckedCase, kind: 'seed' | 'inoculant'): readonly Problem[] {
  const { orders, shares, shortfalls } = c.plan.allocation;
  const listed = new Set(
    orders.product.flatMap((p) => (at(c.scenario.products, p).kind === kind ? at(c.scenario.products, p).crops : [])),
  );
  return shortfalls.shareRow.flatMap((shareRow, i) => {
    const reason = at(shortfalls.reason, i);
    if (at(shortfalls.commodity, i) !== kind || reason !== 'stock-short' || at(shortfalls.shortKg, i) < 0.01) return [];
    const crop = at(c.scenario.crops, at(shares.crop, shareRow));
    return listed.has(crop) ? [] : [finding('E8417', 'allocation.orders', null, 'no order', crop)];
  });
}
