import type { Plan, Product, Scenario } from '../../engine/index.ts';
import { localNumber, noBreaks, wholePercent, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { dateText } from './frame-view.ts';
import { amountOf, cropName } from './stock-goods.ts';

/** One line of the order list, in words; row: its place in the plan. */
export interface OrderLine {
  readonly row: number;
  readonly productId: string;
  readonly goods: string;
  readonly depot: string;
  readonly amount: string;
  readonly cost: string | null;
  /** When to order, or why not. */
  readonly when: string;
  readonly arrives: string;
  readonly hectares: string;
  /** What a buyer has to mind: the budget, the cool store, a missing price. */
  readonly notes: readonly string[];
  readonly verdict: Plan['allocation']['orders']['verdict'][number];
  /** The line as one sentence. */
  readonly text: string;
}

export interface OrderList {
  readonly lines: readonly OrderLine[];
  /** What it costs together and serves; that nothing is to be ordered. */
  readonly total: string;
}

/** The dated order list as a buyer reads it: first what is to be ordered first, then what comes too late. */
export function orderList(plan: Plan, scenario: Scenario, words: Words): OrderList {
  const { orders } = plan.allocation;
  const lines = orders.product.map((_, row) => orderLine(plan, scenario, row, words));
  const rank = ({ verdict }: OrderLine) => (verdict === 'too-late' ? 1 : 0);
  return {
    lines: lines.sort((a, b) => rank(a) - rank(b) || a.row - b.row),
    total: lines.length === 0 ? words.stock.orders.nothing : totalText(plan, scenario, words),
  };
}

function orderLine({ allocation: { orders } }: Plan, scenario: Scenario, row: number, words: Words): OrderLine {
  const said = words.stock.orders;
  const product = scenario.products[orders.product[row] ?? -1] as Product;
  const depot = scenario.depots[orders.depot[row] ?? -1];
  const [packs, wanted] = [orders.packs[row] ?? 0, orders.packsWanted[row] ?? 0];
  const verdict = orders.verdict[row] ?? 'in-time';
  const date = (day: string | undefined) => noBreaks(dateText(day ?? '', words));
  const isLate = verdict === 'too-late';
  const amount = amountOf(product, isLate ? wanted : packs, words);
  const cost = orders.cost[row] ?? null;
  const costText = cost === null || isLate ? null : withUnit(localNumber(cost, words), scenario.currency);
  const chance = withUnit(localNumber(wholePercent(orders.chanceInTime[row] ?? 0), words), '%');
  const line = {
    row,
    productId: product.id,
    goods: goodsOf(product, words),
    depot: depot?.name || (depot?.id ?? ''),
    amount,
    cost: costText,
    when: {
      'in-time': said.byDate(date(orders.orderBy[row])),
      late: said.overdue(date(orders.orderBy[row])),
      'ask-lead-time': said.noLeadTime,
      'too-late': said.tooLate(date(orders.arrives[row]), date(orders.usefulUntil[row])),
    }[verdict],
    arrives: isLate ? '' : said.arrives(date(orders.arrives[row]), chance),
    hectares: withUnit(localNumber((isLate ? orders.hectaresWanted : orders.hectares)[row] ?? 0, words, 1), 'ha'),
    notes: isLate ? [] : notesOf(product, packs, wanted, cost, orders.packsAtOnce[row] ?? null, words),
    verdict,
  };
  return { ...line, text: sentence(line, words) };
}

/** `soybean inoculant`, `cowpea, mung bean sticker`: what the product is for, with its id for the supplier. */
function goodsOf(product: Product, words: Words): string {
  const crops = product.crops.map((crop) => words.crops[crop]).join(', ');
  const first = product.crops[0];
  const name = first && product.crops.length === 1 ? cropName(first, words).toLowerCase() : crops;
  return words.stock.orders.of(words.stock.goods(name, words.stock.kinds[product.kind]), product.id);
}

function notesOf(
  product: Product,
  packs: number,
  wanted: number,
  cost: number | null,
  atOnce: number | null,
  words: Words,
): string[] {
  const said = words.stock.orders;
  return [
    ...(packs < wanted ? [said.cut(amountOf(product, wanted, words))] : []),
    ...(cost === null ? [said.noPrice] : []),
    ...(atOnce === null || atOnce >= packs ? [] : [atOnce > 0 ? said.room(localNumber(atOnce, words)) : said.noRoom]),
  ];
}

function sentence(line: Omit<OrderLine, 'text'>, words: Words): string {
  const said = words.stock.orders;
  const parts = [
    `${line.when}: ${said.goods(line.amount, line.goods, line.depot)}`,
    ...(line.cost === null ? [] : [line.cost]),
    said.serves(line.hectares),
    ...(line.arrives === '' ? [] : [line.arrives]),
  ];
  return [parts.join(', '), ...line.notes].join('; ');
}

function totalText({ allocation: { orders } }: Plan, { policy, currency, products }: Scenario, words: Words): string {
  const said = words.stock.orders;
  const money = (amount: number) => withUnit(localNumber(amount, words), currency);
  const spent = orders.cost.reduce((sum: number, cost) => sum + (cost ?? 0), 0);
  const isSown = (row: number) => products[orders.product[row] ?? -1]?.kind !== 'fertiliser';
  const hectares = orders.hectares.reduce((sum, ha, row) => sum + (isSown(row) ? ha : 0), 0);
  const together = said.total(money(spent), withUnit(localNumber(hectares, words, 1), 'ha'));
  return policy.orderBudget === null ? together : `${together} ${said.within(money(spent), money(policy.orderBudget))}`;
}
