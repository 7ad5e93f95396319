import type { DayStop } from '../../../presentation/views/days-fleet.ts';
import { type MoveTarget, moveBoard } from '../../../presentation/views/days-move.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { rememberLast } from '../../state/remember-last.ts';
import { useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { moveAim } from './move-aim.ts';
import './move-board.css';
import { MoveBoard } from './move-board.tsx';
import { priceLine } from './price-line.ts';
import { useMovePrices } from './use-move-prices.ts';
import type { PointerDrag } from './use-pointer-drag.ts';

interface DraggedStopProps {
  readonly shown: DayShown;
  readonly stop: DayStop;
  readonly from: MoveTarget;
  readonly number: string;
  readonly place: string;
  readonly drag: PointerDrag;
}

const boards = rememberLast(moveBoard);

/** A stop on its way: the board of what it may be taken to, a frame around what it is over, and its price beside the pointer. */
export function DraggedStop({ shown: { plan, scenario }, stop, from, number, place, drag }: DraggedStopProps) {
  const words = useWords();
  const board = boards(plan, scenario, from);
  const aim = moveAim(drag.at, from);
  const targets = [
    ...board.vehicles.map(({ id }) => ({ ...from, vehicleId: id })),
    ...board.weeks.flatMap((week) => week.flatMap((day) => (day ? [{ ...from, date: day.iso }] : []))),
  ].filter(({ vehicleId, date }) => vehicleId !== from.vehicleId || date !== from.date);
  const aimed = aim === null || aim.isHere ? null : aim.target;
  const priceOf = useMovePrices(plan, stop, targets, aimed);
  const price = aimed && priceOf(aimed);
  // The board says whose stop it is, and nothing is to hide the places on it.
  const isOnBoard = aim !== null && aim.frame === null;
  const isBarred = price !== null && price !== 'none' && price.barred !== null;
  // What the finger is on lies under the finger: the board stands at the other edge.
  const edge = drag.from.y > innerHeight / 2 ? 'top' : 'bottom';
  return (
    <section className="dragged-stop" aria-label={paperWords(words).moves.boardTitle(place)}>
      <MoveBoard
        {...{ board, from, place, aim, priceOf, edge }}
        isAsking={targets.every((target) => priceOf(target) === null)}
        currency={scenario.currency}
      />
      {aim?.frame && <div className={`move-frame ${isBarred ? 'is-barred' : ''}`} style={aim.frame} />}
      {/* The board says the same to who does not see it. */}
      <div aria-hidden="true" className={`move-tag ${tagSide(drag)}`} style={{ left: drag.at.x, top: drag.at.y }}>
        <p>
          <span className="move-number">{number}</span> {!isOnBoard && <b>{place}</b>}
        </p>
        {aim?.frame && aimed && <p>{priceLine(price, scenario.currency, words)}</p>}
      </div>
    </section>
  );
}

/** Where there is room beside the pointer; over a finger, not under it. */
function tagSide({ at, isTouch }: PointerDrag): string {
  const across = at.x > innerWidth / 2 ? 'to-left' : 'to-right';
  const along = isTouch ? 'over-finger' : at.y > innerHeight * 0.75 ? 'above' : 'below';
  return `${across} ${along}`;
}
