import { memo } from 'react';
import { localNumber, NO_BREAK } from '../../presentation/local-number.ts';
import { calendarColumns, type PlanningDay } from '../../presentation/views/days-axis.ts';
import type { CalendarCell, CalendarRow, ZoneCalendar } from '../../presentation/views/days-calendar.ts';
import { dateText } from '../../presentation/views/frame-view.ts';
import { percentOf } from '../../presentation/views/share-text.ts';
import type { Words } from '../../presentation/wording/words.ts';
import { Figure } from '../panels/figure.tsx';
import { type CellProps, useGridKeys } from '../panels/grid-keys.ts';
import { useView, useWords } from '../state/use-stores.ts';
import { DayColumns, leastWidth } from './day-columns.tsx';
import './days-table.css';

/** A cell that is pointed at or has the focus. */
export interface CellAt {
  readonly row: CalendarRow;
  readonly day: PlanningDay;
}

interface DayCalendarProps {
  readonly calendar: ZoneCalendar;
  readonly shownDay: string;
  readonly nameWidth: number;
  readonly onPoint: (cell: CellAt | null) => void;
}

/** Zones by days as a skyline: one bar a cell, chosen days framed, the day on show as a column. One tab stop, arrows within. */
export const DayCalendar = memo(function DayCalendar({ calendar, shownDay, nameWidth, onPoint }: DayCalendarProps) {
  const words = useWords();
  const { days } = words;
  const columns = calendarColumns(calendar.days);
  const worked = columns.filter(({ kind }) => kind === 'day').map(({ day }) => day);
  const { gridProps, cellProps } = useGridKeys(calendar.rows.length, worked.length + 2);
  const chooseDay = useView((view) => view.chooseDay);
  return (
    <table
      className="day-table day-calendar"
      aria-label={days.calendar}
      style={leastWidth(columns, nameWidth)}
      {...gridProps}
      onMouseLeave={() => onPoint(null)}
      onBlur={() => onPoint(null)}
    >
      <DayColumns columns={columns} nameWidth={nameWidth} />
      <thead>
        <tr>
          <th scope="col">{days.zone}</th>
          <th scope="col" className="number">
            {days.expectedHa}
          </th>
          {columns.map(({ kind, day }) =>
            kind === 'day' ? (
              <th
                key={day.offset}
                scope="col"
                data-day={day.iso}
                className={day.iso === shownDay ? 'date is-shown' : 'date'}
                aria-current={day.iso === shownDay ? 'date' : undefined}
                title={dateText(day.iso, words)}
              >
                <span className="unseen">{dateText(day.iso, words)}</span>
                <span aria-hidden="true">{day.dayOfMonth}</span>
              </th>
            ) : (
              <td key={day.offset} className="gap" />
            ),
          )}
        </tr>
      </thead>
      <tbody>
        {calendar.rows.map((row, r) => (
          <ZoneRow key={row.zoneId ?? ''} row={row} cellProps={(column) => cellProps(r, column)}>
            {columns.map(({ kind, day }) => {
              const cell = row.cells[day.offset];
              if (kind === 'gap' || !cell) return <td key={day.offset} className="gap" />;
              return (
                <td key={day.offset} data-day={day.iso} className={day.iso === shownDay ? 'is-shown' : ''}>
                  <DayCell
                    cell={cell}
                    label={cellLabel(row, day, cell, words)}
                    isShown={day.iso === shownDay}
                    reach={cellProps(r, 2 + worked.indexOf(day))}
                    onChoose={() => chooseDay(day.iso)}
                    onPoint={() => onPoint({ row, day })}
                  />
                </td>
              );
            })}
          </ZoneRow>
        ))}
      </tbody>
    </table>
  );
});

interface ZoneRowProps {
  readonly row: CalendarRow;
  readonly cellProps: (column: number) => CellProps;
  readonly children: React.ReactNode;
}

/** Name and expected hectares of a zone; the name chooses it everywhere. */
function ZoneRow({ row, cellProps, children }: ZoneRowProps) {
  const words = useWords();
  const chosen = useView((view) => view.zone);
  const chooseZone = useView((view) => view.chooseZone);
  const name = row.name ?? row.zoneId ?? words.days.outside;
  const isChosen = row.zoneId !== null && row.zoneId === chosen;
  return (
    <tr aria-selected={isChosen} data-zone={row.zoneId}>
      <th scope="row">
        <button
          type="button"
          className="row-name"
          title={name}
          {...cellProps(0)}
          onClick={() => chooseZone(isChosen ? null : row.zoneId)}
        >
          {name}
        </button>
      </th>
      <td className="number">
        <Figure path="outcomes.zones.reachedHa" title={words.days.expectedTitle(name)} cell={cellProps(1)}>
          {localNumber(row.reachedHa, words)}
        </Figure>
      </td>
      {children}
    </tr>
  );
}

interface DayCellProps {
  readonly cell: CalendarCell;
  readonly label: string;
  readonly isShown: boolean;
  readonly reach: CellProps;
  readonly onChoose: () => void;
  readonly onPoint: () => void;
}

const BAR_PIXELS = 17;

function DayCell({ cell, label, isShown, reach, onChoose, onPoint }: DayCellProps) {
  const { onFocus, ...rest } = reach;
  return (
    <button
      type="button"
      className={`day-cell ${cell.handed === null ? '' : `is-${cell.handed}`}`}
      aria-label={label}
      aria-pressed={isShown}
      {...rest}
      onFocus={() => {
        onFocus();
        onPoint();
      }}
      onMouseEnter={onPoint}
      onClick={onChoose}
    >
      {cell.share !== null && (
        <span
          className={`day-bar alive-${cell.aliveClass}`}
          style={{ height: `${Math.max(2, cell.share * BAR_PIXELS)}px` }}
        />
      )}
    </button>
  );
}

function cellLabel(row: CalendarRow, day: PlanningDay, cell: CalendarCell, words: Words): string {
  const { days } = words;
  const zone = row.name ?? row.zoneId ?? days.outside;
  const date = `${words.weekdays[day.weekday]} ${dateText(day.iso, words, false)}`;
  const said =
    cell.share === null ? days.cellNone(zone, date) : days.cell(zone, date, `${percentOf(cell.share)}${NO_BREAK}%`);
  return cell.handed === null ? said : `${said}, ${days.cellHanded[cell.handed]}`;
}
