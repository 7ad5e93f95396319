import { useState } from 'react';
import type { Decision, MovePriced } from '../../../engine/index.ts';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { planningDays } from '../../../presentation/views/days-axis.ts';
import type { DayStop, VehicleDay } from '../../../presentation/views/days-fleet.ts';
import { consignmentsOfStop } from '../../../presentation/views/days-stops.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { dayTitle } from './day-title.ts';

interface MoveStopProps {
  readonly shown: DayShown;
  readonly vehicle: VehicleDay;
  readonly stop: DayStop;
  /** The decisions that hold the stop's goods where it stands. */
  readonly locks: readonly Decision[];
  readonly onLeave: () => void;
}

/** Another vehicle or day for a stop: its price is asked before it is decided. */
export function MoveStop({ shown: { plan, scenario, day }, vehicle, stop, locks, onLeave }: MoveStopProps) {
  const words = useWords();
  const { days } = words;
  const askMove = useSeason((season) => season.askMove);
  const decide = useSeason((season) => season.decide);
  const [vehicleId, setVehicleId] = useState(vehicle.id);
  const [date, setDate] = useState(day);
  const [priced, setPriced] = useState<readonly MovePriced[] | 'asking' | 'none' | null>(null);
  const workdays = planningDays(plan).filter(({ works }) => works);
  const choose = (set: (value: string) => void) => (value: string) => {
    set(value);
    setPriced(null);
  };
  const ask = async () => {
    setPriced('asking');
    const offset = workdays.find(({ iso }) => iso === date)?.offset ?? -1;
    const answers: MovePriced[] = [];
    for (const consignment of consignmentsOfStop(plan, stop)) {
      const answer = await askMove({ consignment, vehicle: plan.ids.vehicles.indexOf(vehicleId), day: offset });
      if (answer === null) return setPriced('none');
      answers.push(answer);
    }
    setPriced(answers);
  };
  const move = () => {
    decide(...locks.map((lock) => (lock.kind === 'lock' ? { ...lock, vehicleId, date } : lock)));
    onLeave();
  };
  return (
    <div className="move-stop">
      <label>
        {days.vehicle}{' '}
        <select value={vehicleId} onChange={({ target }) => choose(setVehicleId)(target.value)}>
          {scenario.vehicles.map(({ id }) => (
            <option key={id}>{id}</option>
          ))}
        </select>
      </label>
      <label>
        {days.moveDay}{' '}
        <select value={date} onChange={({ target }) => choose(setDate)(target.value)}>
          {workdays.map(({ iso }) => (
            <option key={iso} value={iso}>
              {dayTitle(iso, words)}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="edged" disabled={priced === 'asking'} onClick={() => void ask()}>
        {days.askPrice}
      </button>
      <button type="button" className="edged" onClick={move}>
        {days.moveIt}
      </button>
      <button type="button" className="link" onClick={onLeave}>
        {days.leaveIt}
      </button>
      <p className="note" aria-live="polite">
        {priced === 'asking' && words.stock.asking}
        {priced === 'none' && words.stock.noAnswer}
        {Array.isArray(priced) && priceText(priced as readonly MovePriced[], scenario.currency, words)}
      </p>
    </div>
  );
}

function priceText(priced: readonly MovePriced[], currency: string, words: Words): string {
  const { days } = words;
  const hurdle = priced.find(({ reason }) => reason !== null)?.reason;
  if (hurdle) return days.moveNot(words.reasons.UNSERVED_WORDING[hurdle]);
  const sum = (of: (one: MovePriced) => number | null) => priced.reduce((total, one) => total + (of(one) ?? 0), 0);
  const money = (value: number) => withUnit(`${value < 0 ? '−' : ''}${localNumber(Math.abs(value), words)}`, currency);
  const left = priced.reduce((count, { leftBehind }) => count + leftBehind.length, 0);
  return [
    days.movePrice(money(sum(({ cost }) => cost)), money(sum((one) => one.money))),
    ...(priced.some(({ otherDay }) => otherDay) ? [days.moveOtherDay] : []),
    ...(left > 0 ? [days.moveLeaves(localNumber(left, words))] : []),
  ].join(' ');
}
