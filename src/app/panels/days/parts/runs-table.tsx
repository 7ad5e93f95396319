import { localNumber } from '../../../../presentation/local-number.ts';
import { clockText } from '../../../../presentation/views/days-clock.ts';
import { staysAway } from '../../../../presentation/views/days-holds.ts';
import type { VehicleRun } from '../../../../presentation/views/days-vehicles.ts';
import { dateText } from '../../../../presentation/views/frame-view.ts';
import { useSeason, useWords } from '../../../state/use-stores.ts';
import { Figure } from '../../figure.tsx';
import { type CellProps, useGridKeys } from '../../grid-keys.ts';
import { type DayCase, pickVehicle, usePicked } from './day-case.ts';
import { VehicleSignMark } from './vehicle-sign.tsx';

/** Name, then the figures that open, then the decision. */
const COLUMNS = 9;

/** The day's vehicles. A name shows its way on the chart; a figure opens; Away is a decision. */
export function RunsTable({ day: { runs, iso } }: { readonly day: DayCase }) {
  const words = useWords();
  const { dayRoutes } = words;
  const picked = usePicked(runs);
  const { gridProps, cellProps } = useGridKeys(runs.length, COLUMNS);
  const date = dateText(iso, words, false);
  if (runs.length === 0) return <p className="runs-none">{dayRoutes.noRuns(date)}</p>;
  const heads = ['leaves', 'stops', 'km', 'kg', 'cool', 'hottest', 'above', 'back'] as const;
  return (
    <table className="ruled runs" aria-label={dayRoutes.runsOn(date)} {...gridProps}>
      <thead>
        <tr>
          <th scope="col">{date}</th>
          <th scope="col">{dayRoutes.zones}</th>
          {heads.map((head) => (
            <th key={head} scope="col" className="number">
              {dayRoutes[head]}
            </th>
          ))}
          <th scope="col">
            <span className="unseen">{dayRoutes.away}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {runs.map((run, row) => (
          <RunRow
            key={run.id}
            run={run}
            iso={iso}
            isPicked={run === picked}
            cellAt={(column) => cellProps(row, column)}
          />
        ))}
      </tbody>
    </table>
  );
}

interface RunRowProps {
  readonly run: VehicleRun;
  readonly iso: string;
  readonly isPicked: boolean;
  readonly cellAt: (column: number) => CellProps;
}

function RunRow({ run, iso, isPicked, cellAt }: RunRowProps) {
  const words = useWords();
  const { dayRoutes } = words;
  const date = dateText(iso, words, false);
  const title = (what: keyof typeof dayRoutes.titles) => dayRoutes.ofVehicle(dayRoutes.titles[what], run.id, date);
  const number = (value: number, decimals = 0) => localNumber(value, words, decimals);
  const [first = '', ...others] = run.zones;
  return (
    <tr aria-selected={isPicked}>
      <th scope="row">
        <button type="button" className="row-name run-name" {...cellAt(0)} onClick={() => pickVehicle(run.id)}>
          <VehicleSignMark sign={run.sign} /> {run.id}
        </button>
      </th>
      <td title={run.zones.join(', ')} className="run-zones">
        {others.length === 0 ? first : dayRoutes.andMore(first, number(others.length))}
      </td>
      <FigureCell path="delivery.trips.leaveMinute" title={title('leaves')} cell={cellAt(1)}>
        {clockText(run.leaveMinute)}
      </FigureCell>
      <td className="number">{number(run.stops.length)}</td>
      <FigureCell path="delivery.legs.kilometres" title={title('km')} cell={cellAt(2)}>
        {number(run.kilometres)}
      </FigureCell>
      <FigureCell path="delivery.loads.packs" title={title('kg')} cell={cellAt(3)}>
        {number(run.loadKg)}
      </FigureCell>
      {run.boxLitres === 0 ? (
        <NoFigure cell={cellAt(4)} />
      ) : (
        <FigureCell path="allocation.consignments.coolLitres" title={title('cool')} cell={cellAt(4)}>
          {dayRoutes.ofLitres(number(run.coolLitres), number(run.boxLitres))}
        </FigureCell>
      )}
      {run.hotBandMaxC === null ? (
        <NoFigure cell={cellAt(5)} />
      ) : (
        <FigureCell path="delivery.stops.hotBandMaxC" title={title('hottest')} cell={cellAt(5)}>
          {number(run.hotBandMaxC, 1)}
        </FigureCell>
      )}
      {run.hoursAboveStorage === null ? (
        <NoFigure cell={cellAt(6)} />
      ) : (
        <FigureCell
          path="delivery.stops.hoursAboveStorage"
          title={title('above')}
          cell={cellAt(6)}
          className={run.hoursAboveStorage > 0 ? 'firm' : ''}
        >
          {number(run.hoursAboveStorage, run.hoursAboveStorage > 0 ? 1 : 0)}
        </FigureCell>
      )}
      <FigureCell path="delivery.trips.returnMinute" title={title('back')} cell={cellAt(7)}>
        {clockText(run.returnMinute)}
      </FigureCell>
      <td className="number">
        <AwayButton run={run} iso={iso} cell={cellAt(8)} />
      </td>
    </tr>
  );
}

interface FigureCellProps {
  readonly path: string;
  readonly title: string;
  readonly cell: CellProps;
  readonly className?: string;
  readonly children: string;
}

function FigureCell({ children, ...figure }: FigureCellProps) {
  return (
    <td className="number">
      <Figure {...figure}>{children}</Figure>
    </td>
  );
}

function NoFigure({ cell }: { readonly cell: CellProps }) {
  const { dayRoutes } = useWords();
  return (
    <td className="number soft" {...cell}>
      {dayRoutes.none}
    </td>
  );
}

interface AwayButtonProps {
  readonly run: VehicleRun;
  readonly iso: string;
  readonly cell: CellProps;
}

/** Keeps a vehicle away on the day, from the next planning on. */
function AwayButton({ run, iso, cell }: AwayButtonProps) {
  const words = useWords();
  const decisions = useSeason((season) => season.decisions);
  const decide = useSeason((season) => season.decide);
  if (staysAway(decisions, run.id, iso)) {
    return (
      <span className="is-decided" {...cell}>
        {words.dayRoutes.isAway}
      </span>
    );
  }
  return (
    <button
      type="button"
      className="link"
      title={words.dayRoutes.awayTitle(run.id, dateText(iso, words, false))}
      {...cell}
      onClick={() => decide({ kind: 'vehicle-away', vehicleId: run.id, from: iso, to: iso })}
    >
      {words.dayRoutes.away}
    </button>
  );
}
