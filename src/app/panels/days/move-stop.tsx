import { useEffect, useRef, useState } from 'react';
import type { Decision } from '../../../engine/index.ts';
import { planningDays } from '../../../presentation/views/days-axis.ts';
import type { DayStop, VehicleDay } from '../../../presentation/views/days-fleet.ts';
import type { MoveTarget } from '../../../presentation/views/days-move.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { dayTitle } from './day-title.ts';
import { priceLine } from './price-line.ts';
import { askMovePrice, type PriceTold } from './use-move-prices.ts';

interface MoveStopProps {
  readonly shown: DayShown;
  readonly vehicle: VehicleDay;
  readonly stop: DayStop;
  /** The decisions that hold the stop's goods where it stands. */
  readonly locks: readonly Decision[];
  /** Where it was dragged; null: it is to be chosen. */
  readonly to: MoveTarget | null;
  readonly onLeave: () => void;
}

/** Another vehicle or day for a stop: its price is asked before it is decided. */
export function MoveStop({ shown: { plan, scenario, day }, vehicle, stop, locks, to, onLeave }: MoveStopProps) {
  const words = useWords();
  const { days } = words;
  const { moves } = paperWords(words);
  const askMove = useSeason((season) => season.askMove);
  const decide = useSeason((season) => season.decide);
  const [target, setTarget] = useState<MoveTarget>(to ?? { vehicleId: vehicle.id, date: day });
  const [priced, setPriced] = useState<{ readonly of: MoveTarget; readonly price: PriceTold } | null>(null);
  const workdays = planningDays(plan).filter(({ works }) => works);
  const ask = async () => {
    setPriced({ of: target, price: null });
    const price = await askMovePrice(askMove, plan, stop, target);
    // A price of what was chosen before is no price of what is chosen now.
    setPriced((now) => (now?.of === target ? { of: target, price } : now));
  };
  const form = useRef<HTMLDivElement>(null);
  const leave = () => {
    // The focus goes back to where the menu is opened from.
    const row = form.current?.closest('tr')?.previousElementSibling;
    row?.querySelector<HTMLElement>('[aria-expanded]')?.focus();
    onLeave();
  };
  const move = () => {
    decide(...locks.map((lock) => (lock.kind === 'lock' ? { ...lock, ...target } : lock)));
    leave();
  };
  const accept = useRef<HTMLButtonElement>(null);
  const opened = useRef(ask);
  useEffect(() => {
    // What was dragged here has its price told at once, and the next key decides.
    if (to === null) return;
    void opened.current();
    accept.current?.focus();
  }, [to]);
  const told = priced?.of === target ? priced : null;
  return (
    <div ref={form} className="move-stop">
      <label>
        {days.vehicle}{' '}
        <select
          value={target.vehicleId}
          onChange={({ target: { value } }) => setTarget({ ...target, vehicleId: value })}
        >
          {scenario.vehicles.map(({ id }) => (
            <option key={id}>{id}</option>
          ))}
        </select>
      </label>
      <label>
        {moves.day}{' '}
        <select value={target.date} onChange={({ target: { value } }) => setTarget({ ...target, date: value })}>
          {workdays.map(({ iso }) => (
            <option key={iso} value={iso}>
              {dayTitle(iso, words)}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        className="edged"
        disabled={told !== null && told.price === null}
        onClick={() => void ask()}
      >
        {moves.ask}
      </button>
      <button ref={accept} type="button" className="edged" onClick={move}>
        {moves.moveIt}
      </button>
      <button type="button" className="link" onClick={leave}>
        {moves.leaveIt}
      </button>
      <p className="note" aria-live="polite">
        {told !== null && priceLine(told.price, scenario.currency, words)}
      </p>
    </div>
  );
}
