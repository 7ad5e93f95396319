import { type MoveBoard as Board, isSameTarget, type MoveTarget } from '../../../presentation/views/days-move.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import { signedCost } from '../../../presentation/views/move-price-text.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { useWords } from '../../state/use-stores.ts';
import { dayTitle } from './day-title.ts';
import type { MoveAim } from './move-aim.ts';
import { priceLine } from './price-line.ts';
import type { PriceTold } from './use-move-prices.ts';

interface MoveBoardProps {
  readonly board: Board;
  readonly from: MoveTarget;
  readonly place: string;
  readonly currency: string;
  readonly aim: MoveAim | null;
  readonly priceOf: (target: MoveTarget) => PriceTold;
  /** No price is known yet. */
  readonly isAsking: boolean;
  /** Edge of a narrow page that it stands at. */
  readonly edge: 'top' | 'bottom';
}

/** All that a dragged stop may be taken to within reach of the hand, each with its price, and what is pointed at in words. */
export function MoveBoard({ board, from, place, currency, aim, priceOf, isAsking, edge }: MoveBoardProps) {
  const words = useWords();
  const { moves } = paperWords(words);
  const cell = (target: MoveTarget) => ({
    className: cellClass(target, from, aim, priceOf(target)),
    children: <b className="tabular">{isSameTarget(target, from) ? moves.isHere : cellText(priceOf(target), words)}</b>,
  });
  return (
    <div className={`move-board at-${edge}`}>
      <h2>{moves.boardTitle(place)}</h2>
      {/* Above the places, where no hand covers it. */}
      <p className="move-told" role="status">
        <Told aim={aim} price={aim && priceOf(aim.target)} isAsking={isAsking} currency={currency} words={words} />
      </p>
      <h3>{moves.vehiclesOn(dayTitle(from.date, words))}</h3>
      <ul className="move-vehicles">
        {board.vehicles.map(({ id, letter }) => {
          const { className, children } = cell({ ...from, vehicleId: id });
          return (
            <li key={id} className={className} data-vehicle={id}>
              <span className="vehicle-letter">{letter}</span> <span className="move-name">{id}</span> {children}
            </li>
          );
        })}
      </ul>
      <h3>{moves.daysOf(from.vehicleId)}</h3>
      <div className="move-days" style={{ gridTemplateColumns: `repeat(${board.weekdays.length}, minmax(0, 1fr))` }}>
        {board.weekdays.map((weekday) => (
          <span key={weekday} className="note">
            {words.weekdays[weekday]}
          </span>
        ))}
        {board.weeks.map((week) =>
          week.map((day, place) => {
            const weekday = board.weekdays[place];
            if (day === null) return <span key={`${week.find((one) => one)?.iso} ${weekday}`} />;
            const { className, children } = cell({ ...from, date: day.iso });
            return (
              <div key={day.iso} className={className} data-day={day.iso}>
                <span>{dateText(day.iso, words, false)}</span> {children}
              </div>
            );
          }),
        )}
      </div>
      <p className="note">{moves.key(currency)}</p>
    </div>
  );
}

interface ToldProps {
  readonly aim: MoveAim | null;
  readonly price: PriceTold;
  readonly isAsking: boolean;
  readonly currency: string;
  readonly words: Words;
}

/** What is pointed at, and what it would cost. */
function Told({ aim, price, isAsking, currency, words }: ToldProps) {
  const { moves } = paperWords(words);
  if (aim === null) return `${isAsking ? moves.asking : moves.nowhere} ${moves.escape}`;
  return (
    <>
      <b>{moves.to(aim.target.vehicleId, dayTitle(aim.target.date, words))}</b>{' '}
      {aim.isHere ? moves.stays : priceLine(price, currency, words)}
    </>
  );
}

function cellText(price: PriceTold, words: Words): string {
  const { moves } = paperWords(words);
  if (price === null) return moves.isAsked;
  if (price === 'none') return words.days.none;
  return price.barred === null ? signedCost(price.cost, words) : moves.isBarred;
}

function cellClass(target: MoveTarget, from: MoveTarget, aim: MoveAim | null, price: PriceTold): string {
  const isBarred = price !== null && price !== 'none' && price.barred !== null;
  return [
    'move-cell',
    ...(isSameTarget(target, from) ? ['is-here'] : isBarred ? ['is-barred'] : []),
    ...(aim !== null && isSameTarget(aim.target, target) ? ['is-aimed'] : []),
  ].join(' ');
}
