import { useCallback, useEffect, useRef, useState } from 'react';
import type { SeasonCalendar } from '../../../engine/index.ts';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { zoneCalendar } from '../../../presentation/views/days-calendar.ts';
import { seasonStrip } from '../../../presentation/views/days-strip.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { type CellAt, DayCalendar } from '../../charts/day-calendar.tsx';
import { nameWidthOf } from '../../charts/day-columns.tsx';
import { SeasonStrip } from '../../charts/season-strip.tsx';
import { rememberLast } from '../../state/remember-last.ts';
import { useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { dayTitle } from './day-title.ts';

const strips = rememberLast(seasonStrip);
const calendars = rememberLast(zoneCalendar);

interface SeasonAndCalendarProps {
  readonly shown: DayShown;
  /** Null while the days are being weighed. */
  readonly worth: SeasonCalendar | null;
}

/** The season over the calendar on one day axis, and what moving a zone to the day pointed at would cost. */
export function SeasonAndCalendar({ shown, worth }: SeasonAndCalendarProps) {
  const { plan, scenario, day } = shown;
  const [pointed, setPointed] = useState<CellAt | null>(null);
  const onPoint = useCallback((cell: CellAt | null) => setPointed(cell), []);
  const words = useWords();
  const scrolls = useShownInView(day);
  const calendar = calendars(plan, scenario, worth);
  const nameWidth = nameWidthOf(calendar.rows.map(({ name, zoneId }) => name ?? zoneId ?? words.days.outside));
  return (
    <>
      <CalendarKey />
      <div className="scrolls" ref={scrolls}>
        <SeasonStrip strip={strips(plan, scenario)} nameWidth={nameWidth} />
        <DayCalendar calendar={calendar} shownDay={day} nameWidth={nameWidth} onPoint={onPoint} />
      </div>
      <p className="note cell-cost" role="status">
        {worth === null ? (
          words.days.beingWeighed
        ) : pointed === null ? (
          words.days.readHint
        ) : (
          <CellCost cell={pointed} roadStates={plan.season.roadState} />
        )}
      </p>
    </>
  );
}

/** Moves the days, where there are more than fit, so that the one on show is seen. */
function useShownInView(day: string) {
  const scrolls = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const box = scrolls.current;
    const names = box?.querySelector<HTMLElement>('.day-calendar thead th');
    const date = box?.querySelector<HTMLElement>(`.day-calendar [data-day="${day}"]`);
    if (!box || !names || !date) return;
    const room = { from: box.scrollLeft + names.offsetWidth, to: box.scrollLeft + box.clientWidth };
    const isSeen = date.offsetLeft >= room.from && date.offsetLeft + date.offsetWidth <= room.to;
    if (!isSeen) box.scrollLeft = date.offsetLeft - box.clientWidth / 2;
  }, [day]);
  return scrolls;
}

function CalendarKey() {
  const { days } = useWords();
  return (
    <div className="note calendar-key">
      <p>{days.barMeans}</p>
      <p className="alive-key">
        {days.keyLess}{' '}
        {[1, 2, 3, 4, 5, 6].map((step) => (
          <span key={step} className={`alive-step alive-${step}`} style={{ height: `${4 + step * 1.6}px` }} />
        ))}
        {days.keyAll}
      </p>
      <p className="handed-key">
        <span className="handed-swatch is-inoculant" /> {days.keyInoculant}
        <span className="handed-swatch is-dry" /> {days.keyDry}
      </p>
    </div>
  );
}

/** What the cell's day would give the zone beside the days planned. */
function CellCost({
  cell: { row, day },
  roadStates,
}: {
  readonly cell: CellAt;
  readonly roadStates: readonly number[];
}) {
  const words = useWords();
  const { days } = words;
  const zone = row.name ?? row.zoneId ?? days.outside;
  const date = dayTitle(day.iso, words);
  const cell = row.cells[day.offset];
  if (!cell || cell.share === null || cell.kept === null) return days.readNone(zone, date);
  const hectares = (value: number) => withUnit(localNumber(value, words, 1), days.ha);
  return (
    <>
      {days.readKept(zone, date, withUnit(localNumber(cell.kept * 100, words), '%'))} {days.readMove}{' '}
      <b>{difference(cell.hectares - row.chosenHa, hectares, words)}</b>{' '}
      {days.readRoads(days.roadStates[roadStates[day.offset] ?? 0] ?? '')}
    </>
  );
}

const LEAST_TOLD_HA = 0.05;

function difference(more: number, hectares: (value: number) => string, { days }: Words): string {
  if (Math.abs(more) < LEAST_TOLD_HA) return days.readSame;
  return more > 0 ? days.readMore(hectares(more)) : days.readFewer(hectares(-more));
}
