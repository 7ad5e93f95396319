import { useEffect, useState } from 'react';
import { clockText } from '../../../../presentation/views/days-clock.ts';
import { useView, useWords } from '../../../state/use-stores.ts';

const [STEP_MINUTES, PAGE_MINUTES] = [5, 60];

interface HourProps {
  readonly hours: readonly [number, number];
  readonly minute: number;
}

/** The hour that map and chart share: arrows 5 minutes, page keys an hour. */
export function HourSlider({ hours: [from, to], minute }: HourProps) {
  const { dayRoutes } = useWords();
  const chooseHour = useView((view) => view.chooseHour);
  return (
    <input
      type="range"
      className="hour-slider"
      aria-label={dayRoutes.hour}
      aria-valuetext={clockText(minute)}
      min={from}
      max={to}
      step={STEP_MINUTES}
      value={minute}
      onChange={({ target }) => chooseHour(Number(target.value))}
      onKeyDown={(event) => {
        const pages = event.key === 'PageUp' ? 1 : event.key === 'PageDown' ? -1 : 0;
        if (pages === 0) return;
        event.preventDefault();
        chooseHour(Math.max(from, Math.min(to, minute + pages * PAGE_MINUTES)));
      }}
    />
  );
}

const [RUN_MINUTES, RUN_MILLISECONDS] = [10, 250];

/** Lets the day go by; not offered where the system asks for less motion. */
export function RunDay({ hours: [from, to], minute }: HourProps) {
  const { dayRoutes } = useWords();
  const chooseHour = useView((view) => view.chooseHour);
  const [running, setRunning] = useState(false);
  const isStill = useIsStill();
  useEffect(() => {
    if (!running) return;
    if (minute >= to) {
      setRunning(false);
      return;
    }
    const timer = setTimeout(() => chooseHour(Math.min(to, minute + RUN_MINUTES)), RUN_MILLISECONDS);
    return () => clearTimeout(timer);
  }, [running, minute, to, chooseHour]);
  if (isStill) return null;
  const toggle = () => {
    if (!running && minute >= to) chooseHour(from);
    setRunning(!running);
  };
  return (
    <button type="button" className="edged run-day" onClick={toggle}>
      {running ? dayRoutes.stopRunning : dayRoutes.run}
    </button>
  );
}

function useIsStill(): boolean {
  const [query] = useState(() => matchMedia('(prefers-reduced-motion: reduce)'));
  const [matches, setMatches] = useState(query.matches);
  useEffect(() => {
    const heed = () => setMatches(query.matches);
    query.addEventListener('change', heed);
    return () => query.removeEventListener('change', heed);
  }, [query]);
  return matches;
}
