import type { KeyboardEvent } from 'react';
import { hourText } from '../../presentation/views/days-axis.ts';
import { useWords } from '../state/use-stores.ts';

interface HourSliderProps {
  readonly hours: { readonly from: number; readonly to: number };
  readonly hour: number;
  readonly onHour: (minute: number) => void;
  /** Where the chart's plot lies, px. */
  readonly left: number;
  readonly width: number;
  readonly height: number;
}

const STEP_MINUTES = 5;
const PAGE_MINUTES = 60;
/** Width of the thumb, px: the track reaches half of it beyond the plot, so that the pointer and the hour agree. */
const THUMB = 24;

/** A slider that lies unseen over the plot; the chart draws its thumb as the flag of the hour. Arrows 5 min, page keys 1 h. */
export function HourSlider({ hours, hour, onHour, left, width, height }: HourSliderProps) {
  const { days } = useWords();
  const onKeyDown = (event: KeyboardEvent) => {
    const page = event.key === 'PageUp' ? PAGE_MINUTES : event.key === 'PageDown' ? -PAGE_MINUTES : 0;
    if (page === 0) return;
    event.preventDefault();
    onHour(Math.max(hours.from, Math.min(hours.to, hour + page)));
  };
  return (
    <input
      type="range"
      className="hour-slider"
      aria-label={days.hour}
      aria-valuetext={hourText(hour)}
      min={hours.from}
      max={hours.to}
      step={STEP_MINUTES}
      value={hour}
      onChange={(event) => onHour(Number(event.target.value))}
      onKeyDown={onKeyDown}
      style={{ left: `${left - THUMB / 2}px`, width: `${width + THUMB}px`, height: `${height}px` }}
    />
  );
}
