import { isoDate, type Plan, type Scenario } from '../../engine/index.ts';
import { localNumber, noBreaks } from '../local-number.ts';
import type { Words } from '../wording/words.ts';
import { dateText } from './frame-view.ts';
import { amountOf, countOf, productOfLot } from './stock-goods.ts';
import { type LotMove, lotMoves } from './stock-moves.ts';

/** What a storekeeper takes from the shelf on one day, lot by lot. */
export interface PickLine {
  readonly lotId: string;
  readonly productId: string;
  /** `12 packs`, `31 bags of 5 kg`. */
  readonly amount: string;
  readonly packs: number;
  /** For which vehicles, in the order of their names. */
  readonly vehicles: string;
  /** Packs of the lot left on the shelf when the day is over. */
  readonly balance: string;
  readonly balancePacks: number;
}

export interface PickDay {
  readonly date: string;
  readonly dateText: string;
  readonly lines: readonly PickLine[];
}

export interface DepotPickList {
  readonly depotId: string;
  readonly depot: string;
  readonly days: readonly PickDay[];
}

/** The pick list of each depot, by day, then lot; first expiring first, as they are to be taken. */
export function pickLists(plan: Plan, scenario: Scenario, words: Words): DepotPickList[] {
  const moves = lotMoves(plan, scenario);
  return scenario.depots.flatMap(({ id, name }) => {
    const own = moves.filter((move) => move.kind === 'out' && scenario.lots[move.lot]?.depotId === id);
    const dates = [...new Set(own.map(({ date }) => date))].sort();
    const days = dates.map((date) => ({
      date,
      dateText: noBreaks(dateText(date, words)),
      lines: pickLines(
        own.filter((move) => move.date === date),
        scenario,
        words,
      ),
    }));
    return days.length === 0 ? [] : [{ depotId: id, depot: name || id, days }];
  });
}

function pickLines(moves: readonly LotMove[], scenario: Scenario, words: Words): PickLine[] {
  const lots = [...new Set(moves.map(({ lot }) => lot))];
  const expiry = (lot: number) => scenario.lots[lot]?.expires ?? 0;
  return lots
    .sort((a, b) => expiry(a) - expiry(b) || a - b)
    .map((lot) => {
      const own = moves.filter((move) => move.lot === lot);
      const packs = own.reduce((sum, move) => sum + move.packs, 0);
      const balancePacks = own.at(-1)?.balance ?? 0;
      const product = productOfLot(scenario, lot);
      const vehicles = [...new Set(own.map(({ vehicleId }) => vehicleId))].sort().join(', ');
      return {
        lotId: scenario.lots[lot]?.id ?? '',
        productId: product?.id ?? '',
        amount: product ? amountOf(product, packs, words) : localNumber(packs, words),
        packs,
        vehicles,
        balance: product ? countOf(product, balancePacks, words) : localNumber(balancePacks, words),
        balancePacks,
      };
    });
}

/** One line of a lot's card; `signature` is room left for the hand that takes it. */
export interface CardLine {
  readonly date: string;
  readonly what: string;
  readonly packsIn: string;
  readonly packsOut: string;
  readonly balance: string;
  readonly signature: '';
}

export interface StockCard {
  readonly lotId: string;
  readonly productId: string;
  readonly depot: string;
  readonly expires: string;
  readonly lines: readonly CardLine[];
}

/** The card that hangs with a lot: what came, what goes out on which day and for whom, and what is left each time. */
export function stockCard(plan: Plan, scenario: Scenario, lot: number, words: Words): StockCard | null {
  const of = scenario.lots[lot];
  if (!of) return null;
  const depot = scenario.depots.find(({ id }) => id === of.depotId);
  const number = (packs: number) => localNumber(packs, words);
  const names = new Map(scenario.communities.map(({ id, name }) => [id, name || id]));
  const lines = lotMoves(plan, scenario)
    .filter((move) => move.lot === lot)
    .map((move): CardLine => {
      const isIn = move.kind === 'in';
      return {
        date: noBreaks(dateText(move.date, words)),
        what: isIn
          ? words.stock.card[move.why]
          : words.stock.card.out(names.get(move.communityId) ?? '', move.vehicleId),
        packsIn: isIn ? number(move.packs) : '',
        packsOut: isIn ? '' : number(move.packs),
        balance: number(move.balance),
        signature: '',
      };
    });
  return {
    lotId: of.id,
    productId: of.productId,
    depot: depot?.name || of.depotId,
    expires: noBreaks(dateText(isoDate(of.expires), words)),
    lines,
  };
}
