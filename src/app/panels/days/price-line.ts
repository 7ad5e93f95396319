import { movePriceText } from '../../../presentation/views/move-price-text.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import type { PriceTold } from './use-move-prices.ts';

/** A price that may not be known yet, in sentences. */
export function priceLine(price: PriceTold, currency: string, words: Words): string {
  const { moves } = paperWords(words);
  if (price === null) return moves.asking;
  return price === 'none' ? moves.noAnswer : movePriceText(price, currency, words);
}
