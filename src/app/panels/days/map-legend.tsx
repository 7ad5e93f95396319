import { useEffect, useState } from 'react';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { hourText } from '../../../presentation/views/days-axis.ts';
import { servedNothing } from '../../../presentation/views/days-unserved.ts';
import { dayTotals } from '../../../presentation/views/days-view.ts';
import { useView, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { type DayShown, useDayShown } from './day-shown.ts';
import { dayTitle } from './day-title.ts';

/** Day and hour, what is handed over, and the marks of the map. */
export function MapLegend() {
  const words = useWords();
  const shown = useDayShown();
  if (shown === null) return null;
  const { days } = words;
  return (
    <div className="day-legend">
      <div className="day-line">
        <h2 className="tabular">{days.dayAndHour(dayTitle(shown.day, words), hourText(shown.hour))}</h2>
        <Totals shown={shown} />
      </div>
      <div className="day-line">
        {shown.vehicles.length > 0 && <RunDay key={shown.day} shown={shown} />}
        <ul className="swatches stop-key">
          <li>
            <span className="stop-dot" /> {days.keyToCome}
          </li>
          <li>
            <span className="stop-dot is-now" /> {days.keyNow}
          </li>
          <li>
            <span className="stop-dot is-done" /> {days.keyDone}
          </li>
          <LeftKey shown={shown} />
        </ul>
      </div>
    </div>
  );
}

/** What the hatches on the map mean, where there are any. */
function LeftKey({ shown: { plan, notServed } }: { readonly shown: DayShown }) {
  const { days } = useWords();
  const bare = servedNothing(plan, notServed);
  const isPartly = notServed.some(({ communities }) => communities.some((community) => !bare.has(community)));
  return (
    <>
      {bare.size > 0 && (
        <li>
          <span className="swatch hatch-nothing" /> {days.keyNotServed}
        </li>
      )}
      {isPartly && (
        <li>
          <span className="swatch hatch-some" /> {days.keyPartly}
        </li>
      )}
    </>
  );
}

function Totals({ shown }: { readonly shown: DayShown }) {
  const words = useWords();
  const { days } = words;
  const totals = dayTotals(shown.plan, shown.vehicles);
  const count = (value: number) => localNumber(value, words);
  const hectares = (value: number, said: string, title: string) =>
    value > 0 && (
      <>
        {said}{' '}
        <Figure path="delivery.loads.hectares" title={title}>
          {withUnit(count(value), days.ha)}
        </Figure>
      </>
    );
  return (
    <p className="note">
      {days.vehiclesStops(count(totals.vehicles), totals.vehicles === 1, count(totals.stops), totals.stops === 1)}
      {hectares(totals.inoculantHa, days.inoculantFor, days.inoculantForTitle(dayTitle(shown.day, words)))}
      {hectares(totals.seedHa, days.seedFor, days.seedForTitle(dayTitle(shown.day, words)))}
    </p>
  );
}

const STEP_MINUTES = 5;
/** A working day runs by in about a quarter of a minute; and a browser keeps no more than some steps a second in the address. */
const STEP_MILLISECONDS = 125;

/** Runs the vehicles through the day. Not offered where motion is not wanted: the hour can be moved by hand. */
function RunDay({ shown: { hour, hours } }: { readonly shown: DayShown }) {
  const { days } = useWords();
  const chooseHour = useView((view) => view.chooseHour);
  const [isRunning, setRunning] = useState(false);
  const wantsStill = useReducedMotion();
  useEffect(() => {
    if (!isRunning) return;
    if (hour >= hours.to) return setRunning(false);
    const timer = setTimeout(() => chooseHour(Math.min(hours.to, hour + STEP_MINUTES)), STEP_MILLISECONDS);
    return () => clearTimeout(timer);
  }, [isRunning, hour, hours, chooseHour]);
  if (wantsStill) return null;
  const toggle = () => {
    if (!isRunning && hour >= hours.to) chooseHour(hours.from);
    setRunning(!isRunning);
  };
  return (
    <button type="button" className="edged run-day" onClick={toggle}>
      {isRunning ? days.stopRun : days.run}
    </button>
  );
}

function useReducedMotion(): boolean {
  const [isReduced, setReduced] = useState(false);
  useEffect(() => {
    const query = matchMedia('(prefers-reduced-motion: reduce)');
    const read = () => setReduced(query.matches);
    read();
    query.addEventListener('change', read);
    return () => query.removeEventListener('change', read);
  }, []);
  return isReduced;
}
