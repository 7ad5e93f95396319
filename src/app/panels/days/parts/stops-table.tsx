import type { Plan, Scenario } from '../../../../engine/index.ts';
import { localNumber } from '../../../../presentation/local-number.ts';
import { clockText } from '../../../../presentation/views/days-clock.ts';
import { areHeld, locksAt } from '../../../../presentation/views/days-holds.ts';
import { stateOfStop } from '../../../../presentation/views/days-paths.ts';
import type { RunStop, VehicleRun } from '../../../../presentation/views/days-vehicles.ts';
import { dateText } from '../../../../presentation/views/frame-view.ts';
import { useSeason, useView, useWords } from '../../../state/use-stores.ts';
import { Figure } from '../../figure.tsx';
import { type CellProps, useGridKeys } from '../../grid-keys.ts';
import { type DayCase, useMinute, usePicked } from './day-case.ts';

/** Place, arrival, load, packs, hold. */
const COLUMNS = 5;

/** The stops of the vehicle on the chart. Hold here keeps its hand-over on this vehicle and day. */
export function StopsTable({ day }: { readonly day: DayCase }) {
  const { dayRoutes } = useWords();
  const run = usePicked(day.runs);
  const { gridProps, cellProps } = useGridKeys(run?.stops.length ?? 0, COLUMNS);
  if (run === null) return null;
  const title = dayRoutes.stopsOf(run.sign.letter, run.id);
  return (
    <>
      <h2 className="stops-head">{title}</h2>
      <table className="ruled stops" aria-label={title} {...gridProps}>
        <thead>
          <tr>
            <th scope="col" className="number">
              <span className="unseen">{dayRoutes.stops}</span>
            </th>
            <th scope="col">{dayRoutes.place}</th>
            <th scope="col">{dayRoutes.forWhom}</th>
            <th scope="col" className="number">
              {dayRoutes.arrives}
            </th>
            <th scope="col" className="number">
              {dayRoutes.kg}
            </th>
            <th scope="col" className="number">
              {dayRoutes.packs}
            </th>
            <th scope="col">
              <span className="unseen">{dayRoutes.hold}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {run.stops.map((stop, row) => (
            <StopRow key={stop.row} day={day} run={run} stop={stop} cellAt={(column) => cellProps(row, column)} />
          ))}
        </tbody>
      </table>
    </>
  );
}

interface StopRowProps {
  readonly day: DayCase;
  readonly run: VehicleRun;
  readonly stop: RunStop;
  readonly cellAt: (column: number) => CellProps;
}

function StopRow({ day: { plan, scenario, iso, hours }, run, stop, cellAt }: StopRowProps) {
  const words = useWords();
  const { dayRoutes } = words;
  const chooseHour = useView((view) => view.chooseHour);
  const state = stateOfStop(stop, useMinute(hours));
  const place = placeName(plan, scenario, stop.place);
  const names = stop.communities.map((community) => scenario.communities[community]?.name ?? '');
  const title = (what: string) => dayRoutes.ofVehicle(`${place}, ${what}`, run.id, dateText(iso, words, false));
  return (
    <tr>
      <td className="number">
        <span className={`stop-mark is-${state}`} style={{ color: `var(--${run.sign.tone})` }}>
          <span>{stop.number}</span>
        </span>
      </td>
      <th scope="row">
        <button
          type="button"
          className="row-name"
          {...cellAt(0)}
          onClick={() => chooseHour(Math.ceil(stop.arriveMinute))}
        >
          {place}
        </button>
      </th>
      <td className="soft">{names.join(', ')}</td>
      <td className="number">
        <Figure path="delivery.stops.departMinute" title={title(dayRoutes.arrives)} cell={cellAt(1)}>
          {clockText(stop.arriveMinute)}
        </Figure>
      </td>
      <td className="number">
        <Figure path="delivery.loads.packs" title={title(dayRoutes.kg)} cell={cellAt(2)}>
          {localNumber(stop.loadKg, words, stop.loadKg < 10 ? 1 : 0)}
        </Figure>
      </td>
      {stop.packC === null ? (
        <td className="number soft" {...cellAt(3)}>
          {dayRoutes.none}
        </td>
      ) : (
        <td className="number">
          <Figure path="delivery.stops.packC" title={title(dayRoutes.packs)} cell={cellAt(3)}>
            {localNumber(stop.packC, words, 1)}
          </Figure>
        </td>
      )}
      <td className="number">
        <HoldButton plan={plan} run={run} stop={stop} iso={iso} place={place} cell={cellAt(4)} />
      </td>
    </tr>
  );
}

interface HoldButtonProps {
  readonly plan: Plan;
  readonly run: VehicleRun;
  readonly stop: RunStop;
  readonly iso: string;
  readonly place: string;
  readonly cell: CellProps;
}

function HoldButton({ plan, run, stop, iso, place, cell }: HoldButtonProps) {
  const words = useWords();
  const { dayRoutes } = words;
  const decisions = useSeason((season) => season.decisions);
  const decide = useSeason((season) => season.decide);
  const locks = locksAt(plan, stop.row, run.id, iso);
  if (areHeld(decisions, locks)) {
    return (
      <span className="is-decided" {...cell}>
        {dayRoutes.isHeld}
      </span>
    );
  }
  return (
    <button
      type="button"
      className="link"
      title={dayRoutes.holdTitle(place, run.id, dateText(iso, words, false))}
      {...cell}
      onClick={() => decide(...locks)}
    >
      {dayRoutes.hold}
    </button>
  );
}

function placeName({ ids }: Plan, { handoverPoints, communities }: Scenario, place: number): string {
  const id = ids.places[place] ?? '';
  return [...handoverPoints, ...communities].find((one) => one.id === id)?.name ?? id;
}
