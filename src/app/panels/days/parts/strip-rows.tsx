import { localNumber, wholePercent, withUnit } from '../../../../presentation/local-number.ts';
import type { PeriodDay } from '../../../../presentation/views/days-period.ts';
import { dateText } from '../../../../presentation/views/frame-view.ts';
import { useWords } from '../../../state/use-stores.ts';
import { Figure } from '../../figure.tsx';
import { DayColumns } from './day-columns.tsx';

interface StripProps {
  readonly days: readonly PeriodDay[];
  readonly shown: string;
}

/** The season over the calendar's columns: chance of sowing, heat, rain, roads. */
export function StripRows({ days, shown }: StripProps) {
  const words = useWords();
  const { dayRoutes } = words;
  return (
    <>
      <tr className="strip-sown">
        <RowHead path="season.windows" name={dayRoutes.sown} note={dayRoutes.sownNote} title={dayRoutes.titles.sown} />
        <DayColumns days={days} shown={shown}>
          {({ sownChance, sowClass }) => (
            <>
              <span className="sown-figure">{localNumber(wholePercent(sownChance), words)}</span>
              <span
                className="sown-bar"
                style={{ height: `${2 + 28 * sownChance}px`, background: `var(--sow-${sowClass})` }}
              />
            </>
          )}
        </DayColumns>
      </tr>
      <tr className="strip-heat">
        <RowHead
          path="season.tmaxC"
          name={dayRoutes.maximum}
          note={dayRoutes.maximumNote}
          title={dayRoutes.titles.maximum}
        />
        <DayColumns days={days} shown={shown}>
          {({ maximumC, heatClass }) =>
            maximumC !== null && (
              <span className="heat-cell" style={{ borderColor: `var(--heat-${heatClass})` }}>
                {localNumber(maximumC, words)}
              </span>
            )
          }
        </DayColumns>
      </tr>
      <tr className="strip-rain">
        <RowHead name={dayRoutes.rain} note={dayRoutes.rainNote} />
        <DayColumns days={days} shown={shown}>
          {({ rainMm }) => rainMm !== null && rainMm >= 4 && localNumber(rainMm, words)}
        </DayColumns>
      </tr>
      <tr className="strip-roads">
        <RowHead path="season.roadState" name={dayRoutes.roads} title={dayRoutes.titles.roads}>
          <RoadKey />
        </RowHead>
        <DayColumns days={days} shown={shown}>
          {({ road, iso }) => (
            <span className={`road road-${road}`}>
              <span className="unseen">{`${dateText(iso, words, false)}: ${dayRoutes.roadStates[road]}`}</span>
            </span>
          )}
        </DayColumns>
      </tr>
    </>
  );
}

interface RowHeadProps {
  readonly name: string;
  readonly note?: string;
  readonly path?: string;
  readonly title?: string;
  readonly children?: React.ReactNode;
}

function RowHead({ name, note, path, title = name, children }: RowHeadProps) {
  return (
    <th scope="row" className="strip-head">
      <span className="strip-name">
        {path === undefined ? (
          name
        ) : (
          <Figure path={path} title={title}>
            {name}
          </Figure>
        )}
      </span>
      {note !== undefined && <span className="strip-note">{note}</span>}
      {children}
    </th>
  );
}

/** The three road states, each beside its line. */
function RoadKey() {
  const { dayRoutes } = useWords();
  return (
    <span className="road-key" aria-hidden="true">
      {dayRoutes.roadStates.map((state, road) => (
        <span key={state} title={state}>
          <span className={`road road-${road}`} />
        </span>
      ))}
    </span>
  );
}

/** Where what is known ends and past seasons begin, over the columns. */
export function KnownLine({ days, seasons }: { readonly days: readonly PeriodDay[]; readonly seasons: number }) {
  const words = useWords();
  const { dayRoutes } = words;
  const last = days.findLast(({ isKnown }) => isKnown);
  const known = last === undefined ? 0 : last.offset + 1;
  return (
    <tr className="strip-known">
      <td />
      {last !== undefined && (
        <td colSpan={known} className="known-text is-last-known">
          {known > 4 && dayRoutes.knownTo(dateText(last.iso, words, false))}
        </td>
      )}
      {known < days.length && (
        <td colSpan={days.length - known} className="past-text">
          {dayRoutes.fromSeasons(withUnit(localNumber(seasons, words), '').trim())}
        </td>
      )}
    </tr>
  );
}
