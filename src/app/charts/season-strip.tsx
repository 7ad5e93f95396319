import type { ReactNode } from 'react';
import { localNumber } from '../../presentation/local-number.ts';
import { type CalendarColumn, calendarColumns } from '../../presentation/views/days-axis.ts';
import type { SeasonStrip as Strip, StripDay } from '../../presentation/views/days-strip.ts';
import { dateText } from '../../presentation/views/frame-view.ts';
import type { Words } from '../../presentation/wording/words.ts';
import { Figure } from '../panels/figure.tsx';
import { useWords } from '../state/use-stores.ts';
import { DayColumns, leastWidth } from './day-columns.tsx';
import './days-table.css';

/** The district's season on the calendar's day axis: chance of planting rains, heat, rain, roads. */
export function SeasonStrip({ strip, nameWidth }: { readonly strip: Strip; readonly nameWidth: number }) {
  const words = useWords();
  const { days } = words;
  const columns = calendarColumns(strip.days);
  const at = (column: CalendarColumn) => strip.days[column.day.offset];
  const lastKnown = columns.findLast(({ day }) => strip.known !== null && day.offset <= strip.known.offset);
  const row = (draw: (day: StripDay) => ReactNode, ofGap: (day: StripDay) => string = () => '') =>
    columns.map((column) => {
      const day = at(column);
      const parts = column === lastKnown ? 'parts' : '';
      const gap = column.kind === 'gap' && day ? ofGap(day) : '';
      return (
        <td
          key={column.day.offset}
          data-day={column.kind === 'day' ? column.day.iso : undefined}
          className={`strip-${column.kind} ${parts} ${gap}`}
        >
          {column.kind === 'day' && day ? draw(day) : null}
        </td>
      );
    });
  const printed = printedChances(columns.flatMap((column) => (column.kind === 'day' ? (at(column) ?? []) : [])));
  return (
    <table className="day-table season-strip" aria-label={days.strip} style={leastWidth(columns, nameWidth)}>
      <DayColumns columns={columns} nameWidth={nameWidth} />
      <thead className="unseen">
        <tr>
          <th scope="col" colSpan={2}>
            {days.strip}
          </th>
          {columns.map(({ kind, day }) =>
            kind === 'day' ? (
              <th key={day.offset} scope="col">
                {dateText(day.iso, words, false)}
              </th>
            ) : (
              <td key={day.offset} />
            ),
          )}
        </tr>
      </thead>
      <tbody>
        <tr>
          <td colSpan={2} />
          <td colSpan={columns.length} className="strip-basis">
            <Basis strip={strip} columns={columns} words={words} />
          </td>
        </tr>
        <tr className="strip-sown">
          <StripHead path="season.sownChance" head={days.sown} note={days.sownNote} title={days.sownTitle} />
          {row((day) => (
            <SownBar day={day} isPrinted={printed.has(day.offset)} words={words} />
          ))}
        </tr>
        <tr className="strip-heat">
          <StripHead path="season.tmaxC" head={days.maximum} note={days.maximumNote} title={days.maximumTitle} />
          {row(({ maximumC, heatClass }) =>
            maximumC === null ? null : (
              <>
                {localNumber(maximumC, words)}
                <span className={`heat-line heat-${heatClass}`} />
              </>
            ),
          )}
        </tr>
        <tr className="strip-rain">
          <th scope="row" colSpan={2} title={days.rainTitle}>
            <span className="strip-head">
              {days.rain} <span className="strip-note">{days.rainNote}</span>
            </span>
          </th>
          {row(({ rainMm }) =>
            rainMm === null ? (
              <span className="unseen">{days.noRainKnown}</span>
            ) : rainMm >= 4 ? (
              localNumber(rainMm, words)
            ) : (
              <span className="unseen">{localNumber(rainMm, words)}</span>
            ),
          )}
        </tr>
        <tr className="strip-roads">
          <StripHead path="season.roadState" head={days.roads} note={days.roadsNote} title={days.roads} />
          {row(
            ({ roadState }) => (
              <RoadMark state={roadState} words={words} />
            ),
            ({ roadState }) => `road-gap-${roadState}`,
          )}
        </tr>
      </tbody>
    </table>
  );
}

interface HeadProps {
  readonly path: string;
  readonly head: string;
  readonly note: string;
  readonly title: string;
}

/** What a row shows; the head opens to how it was made. */
function StripHead({ path, head, note, title }: HeadProps) {
  return (
    <th scope="row" colSpan={2}>
      <span className="strip-head">
        <Figure path={path} title={title}>
          {head}
        </Figure>{' '}
        <span className="strip-note">{note}</span>
      </span>
    </th>
  );
}

/** Whence the days on either side of the upright are known. */
function Basis({ strip, columns, words }: BasisProps) {
  const { days } = words;
  const past = days.fromSeasons(localNumber(strip.pastSeasons, words));
  if (strip.known === null) return past;
  const { iso, offset, isForecast } = strip.known;
  const date = dateText(iso, words, false);
  const before = columns.filter(({ day }) => day.offset <= offset);
  const gaps = (list: readonly CalendarColumn[]) => list.filter(({ kind }) => kind === 'gap').length;
  const [all, known] = [columns.length - gaps(columns), before.length - gaps(before)];
  const place = `calc((100% - ${gaps(columns)} * var(--gap)) * ${known / Math.max(1, all)} + ${gaps(before)} * var(--gap))`;
  return (
    <>
      <span className="basis-before" style={{ insetInlineEnd: `calc(100% - ${place})` }}>
        {isForecast ? days.forecastTo(date) : days.measuredTo(date)}
      </span>
      {before.length < columns.length && (
        <span className="basis-after" style={{ insetInlineStart: place }}>
          {past}
        </span>
      )}
    </>
  );
}

interface BasisProps {
  readonly strip: Strip;
  readonly columns: readonly CalendarColumn[];
  readonly words: Words;
}

const BAR_PIXELS = 30;

function SownBar({ day, isPrinted, words }: SownBarProps) {
  const percent = localNumber(day.sownChance * 100, words);
  return (
    <>
      <span className={isPrinted ? 'sown-number' : 'unseen'}>{percent}</span>
      <span
        className={`sown-bar sow-${day.sowClass}`}
        style={{ height: `${Math.max(2, day.sownChance * BAR_PIXELS)}px` }}
      />
    </>
  );
}

interface SownBarProps {
  readonly day: StripDay;
  readonly isPrinted: boolean;
  readonly words: Words;
}

const STEP_PRINTED = 0.05;

/** Days whose chance is printed: the first, the last, and each that differs clearly from the one printed before. */
function printedChances(days: readonly StripDay[]): ReadonlySet<number> {
  const printed = new Set<number>();
  let last = Number.NaN;
  for (const [i, { offset, sownChance }] of days.entries()) {
    if (i > 0 && i < days.length - 1 && Math.abs(sownChance - last) < STEP_PRINTED) continue;
    printed.add(offset);
    last = sownChance;
  }
  return printed;
}

function RoadMark({ state, words }: { readonly state: number; readonly words: Words }) {
  return (
    <>
      <span className={`road-mark road-${state}`} aria-hidden="true">
        {state === 2 ? '×' : ''}
      </span>
      <span className="unseen">{words.days.roadStates[state] ?? ''}</span>
    </>
  );
}
