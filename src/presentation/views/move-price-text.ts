import { localNumber, withUnit } from '../local-number.ts';
import { paperWords } from '../wording/paper-words.ts';
import type { Words } from '../wording/words.ts';
import type { MovePrice } from './days-move.ts';

/** `+120`, `−8`, `0`: what a move costs more or less, in whole money. */
export function signedCost(cost: number, words: Words): string {
  const shown = localNumber(Math.abs(cost), words);
  if (Math.round(Math.abs(cost)) === 0) return shown;
  return `${cost < 0 ? '−' : '+'}${shown}`;
}

/** The price of a move, or why it cannot be, in sentences. */
export function movePriceText(price: MovePrice, currency: string, words: Words): string {
  const { moves } = paperWords(words);
  if (price.barred !== null) return moves.not(moves.barred[price.barred]);
  const { cost, money, promises, leftBehind } = price;
  const signed = (value: number) => withUnit(signedCost(value, words), currency);
  const whole = withUnit(localNumber(Math.abs(cost), words), currency);
  const isSame = Math.round(Math.abs(cost)) === 0;
  const inAll = isSame ? moves.same : cost > 0 ? moves.dearer(whole) : moves.cheaper(whole);
  // Worth is what whole money and promises leave, so that the parts add up for a reader.
  const worth = Math.round(cost) - Math.round(money ?? 0) - Math.round(promises);
  const parts = [
    ...(money === null ? [] : [moves.money(signed(money))]),
    ...(promises > 0 ? [moves.promises(signed(promises))] : []),
    moves.worth(signed(worth)),
  ];
  return [
    `${inAll}: ${parts.join(', ')}.`,
    ...(leftBehind > 0 ? [leftBehind === 1 ? moves.leavesOne : moves.leaves(localNumber(leftBehind, words))] : []),
  ].join(' ');
}
