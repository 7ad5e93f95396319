import { localNumber, wholePercent, withUnit } from '../../../../presentation/local-number.ts';
import type { PeriodDay } from '../../../../presentation/views/days-period.ts';
import { aliveClass, type ZoneSkyline } from '../../../../presentation/views/days-zones.ts';
import { dateText } from '../../../../presentation/views/frame-view.ts';
import { useView, useWords } from '../../../state/use-stores.ts';
import { Figure } from '../../figure.tsx';
import { type CellProps, useGridKeys } from '../../grid-keys.ts';
import type { DayCase } from './day-case.ts';
import { columnMarks } from './day-columns.tsx';
import { KnownLine, StripRows } from './strip-rows.tsx';

/** Name and hectares come before the days. */
const DAYS_FROM = 2;

/** The season and, on the same columns, each zone's days: a skyline of what would be reached. Enter shows a day. */
export function Calendar({ day }: { readonly day: DayCase }) {
  const { dayRoutes } = useWords();
  const { days, zones, plan, iso } = day;
  const workdays = days.filter(({ works }) => works);
  const { gridProps, cellProps } = useGridKeys(zones.length, DAYS_FROM + workdays.length);
  return (
    <table className="calendar" aria-label={dayRoutes.season} {...gridProps}>
      <colgroup>
        <col className="calendar-names" />
        {days.map(({ iso: of, works }) => (
          <col key={of} className={works ? 'calendar-day' : 'calendar-gap'} />
        ))}
      </colgroup>
      <thead>
        <KnownLine days={days} seasons={plan.season.memberYears.length} />
        <StripRows days={days} shown={iso} />
        <DateRow days={days} shown={iso} />
      </thead>
      <tbody>
        {zones.map((zone, row) => (
          <ZoneRow
            key={zone.zoneId ?? ''}
            zone={zone}
            days={days}
            shown={iso}
            cellAt={(column) => cellProps(row, column)}
          />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly days: readonly PeriodDay[];
  readonly shown: string;
}

function DateRow({ days, shown }: RowProps) {
  const words = useWords();
  const { dayRoutes } = words;
  return (
    <tr className="calendar-dates">
      <th scope="col">
        {dayRoutes.zone} <span className="strip-note">{dayRoutes.zoneNote}</span>
      </th>
      {days.map((day) =>
        day.works ? (
          <th key={day.iso} scope="col" className={columnMarks(day, days, shown)}>
            <span aria-hidden="true">{day.dayOfMonth}</span>
            <span className="unseen">{dateText(day.iso, words, false)}</span>
          </th>
        ) : (
          <td key={day.iso} className={columnMarks(day, days, shown)} />
        ),
      )}
    </tr>
  );
}

interface ZoneRowProps extends RowProps {
  readonly zone: ZoneSkyline;
  readonly cellAt: (column: number) => CellProps;
}

function ZoneRow({ zone, days, shown, cellAt }: ZoneRowProps) {
  const words = useWords();
  const { dayRoutes } = words;
  const chosen = useView((view) => view.zone);
  const chooseZone = useView((view) => view.chooseZone);
  const isChosen = zone.zoneId !== null && zone.zoneId === chosen;
  const name = zone.name ?? dayRoutes.outside;
  let column = DAYS_FROM - 1;
  return (
    <tr aria-selected={isChosen} data-zone={zone.zoneId}>
      <th scope="row">
        <span className="zone-head">
          <button
            type="button"
            className="row-name"
            {...cellAt(0)}
            onClick={() => chooseZone(isChosen ? null : zone.zoneId)}
          >
            {name}
          </button>
          <Figure path="outcomes.zones.reachedRange" title={dayRoutes.zoneTitle(name)} cell={cellAt(1)}>
            {localNumber(zone.expectedHa, words)}
          </Figure>
        </span>
      </th>
      {days.map((day) => {
        const marks = columnMarks(day, days, shown);
        if (!day.works) return <td key={day.iso} className={marks} />;
        column += 1;
        return (
          <td key={day.iso} className={marks}>
            <DayCell zone={zone} name={name} day={day} cell={cellAt(column)} />
          </td>
        );
      })}
    </tr>
  );
}

interface DayCellProps {
  readonly zone: ZoneSkyline;
  readonly name: string;
  readonly day: PeriodDay;
  readonly cell: CellProps;
}

/** A bar from the row's floor; framed on a day on which the zone is handed its inoculant. */
function DayCell({ zone, name, day, cell }: DayCellProps) {
  const words = useWords();
  const { dayRoutes } = words;
  const chooseDay = useView((view) => view.chooseDay);
  const share = zone.shares[day.offset] ?? null;
  const handed = zone.handed[day.offset] ?? null;
  const percent = share === null ? dayRoutes.noInoculant : withUnit(localNumber(wholePercent(share), words), '%');
  const said = dayRoutes.cell(name, dateText(day.iso, words, false), percent);
  const label = handed === null ? said : `${said}${dayRoutes.handedSaid[handed]}`;
  return (
    <button
      type="button"
      className={`skyline ${handed === null ? '' : `is-${handed}`}`}
      aria-label={label}
      title={label}
      {...cell}
      onClick={() => chooseDay(day.iso)}
    >
      {share !== null && share > 0 && (
        <span
          className="skyline-bar"
          style={{ height: `${Math.max(6, share * 100)}%`, background: `var(--alive-${aliveClass(share)})` }}
        />
      )}
    </button>
  );
}
