import type { Product, Scenario, TransferIdea } from '../../engine/index.ts';
import { localNumber, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { amountOf } from './stock-goods.ts';

/** A transfer between depots as one sentence, with what it costs beside what it is worth where both are known. */
export function transferText(idea: TransferIdea, scenario: Scenario, words: Words): string {
  const said = words.stock.transfer;
  const product = scenario.products[idea.product] as Product;
  const depot = scenario.depots[idea.depot];
  const money = (amount: number) => withUnit(localNumber(amount, words), scenario.currency);
  const carry = said.carry(
    amountOf(product, idea.packs, words),
    scenario.lots[idea.lot]?.id ?? '',
    depot?.name || (depot?.id ?? ''),
    withUnit(localNumber(idea.hectares, words, 1), 'ha'),
  );
  if (idea.cost === null) return carry;
  const trip = idea.worth === null ? said.costs(money(idea.cost)) : said.pays(money(idea.cost), money(idea.worth));
  return `${carry}; ${trip}`;
}
