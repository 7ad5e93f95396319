import { useEffect, useState } from 'react';
import type { TripAtHour } from '../../../engine/index.ts';
import { localNumber } from '../../../presentation/local-number.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import type { DayTrip } from '../../../presentation/views/days-fleet.ts';
import { tripQuestion } from '../../../presentation/views/days-trip.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';

const STEP_MINUTES = 15;

interface LeaveStepperProps {
  readonly shown: DayShown;
  readonly trip: DayTrip;
  /** Hour that is tried; null: as planned. */
  readonly tried: number | null;
  readonly onTry: (minute: number | null) => void;
  readonly answer: TripAtHour | null;
}

/** Leaves earlier or later on trial: the chart shows how warm the packs would get. Nothing of it is kept. */
export function LeaveStepper({ shown: { plan }, trip, tried, onTry, answer }: LeaveStepperProps) {
  const words = useWords();
  const { days } = words;
  const latest = plan.delivery.trips.latestLeaveMinute[trip.row] ?? trip.leaveMinute;
  const minute = tried ?? trip.leaveMinute;
  const move = (by: number) => {
    const to = Math.min(1425, Math.max(0, minute + by));
    onTry(Math.abs(to - trip.leaveMinute) < STEP_MINUTES / 2 ? null : to);
  };
  return (
    <div className="leave-stepper">
      <span>{days.leaves}</span>
      <button type="button" className="edged" aria-label={days.earlier} onClick={() => move(-STEP_MINUTES)}>
        −
      </button>
      <output aria-live="polite">
        <b>{hourText(minute)}</b>
      </output>
      <button type="button" className="edged" aria-label={days.later} onClick={() => move(STEP_MINUTES)}>
        +
      </button>
      <span className="note">
        {days.leaveByPlanned(hourText(latest))}{' '}
        {tried !== null && answer !== null && (
          <span className={tried > latest ? 'alarm' : ''}>
            {days.triedHottest(
              hourText(tried),
              localNumber(answer.packMaxC, words, 1),
              localNumber(answer.hotBandMaxC, words, 1),
              hourText(answer.returnMinute),
            )}
          </span>
        )}
      </span>
    </div>
  );
}

/** The trip at the hour that is tried; null as planned, or until the answer is there. */
export function useTripAtHour(shown: DayShown | null, trip: DayTrip | null, tried: number | null): TripAtHour | null {
  const askTrip = useSeason((season) => season.askTrip);
  const [answer, setAnswer] = useState<TripAtHour | null>(null);
  const row = trip?.row ?? -1;
  useEffect(() => {
    let gone = false;
    if (shown === null || row < 0 || tried === null) {
      setAnswer(null);
      return;
    }
    void askTrip(tripQuestion(shown.plan, shown.scenario, row, tried)).then((told) => {
      if (!gone) setAnswer(told);
    });
    return () => {
      gone = true;
    };
  }, [shown, row, tried, askTrip]);
  return answer?.leaveMinute === tried ? answer : null;
}
