import { isoWeekday, parseIsoDate } from '../../../../engine/index.ts';
import { localNumber, withUnit } from '../../../../presentation/local-number.ts';
import { clockText } from '../../../../presentation/views/days-clock.ts';
import { dayLoad } from '../../../../presentation/views/days-picture.ts';
import { dateText } from '../../../../presentation/views/frame-view.ts';
import type { Words } from '../../../../presentation/wording/words.ts';
import { useWords } from '../../../state/use-stores.ts';
import { Figure } from '../../figure.tsx';
import { type DayCase, useDay, useMinute } from './day-case.ts';
import { RunDay } from './hour-control.tsx';

/** The day on the map: when it is, what is out, what the marks mean. */
export function DayLegend() {
  const day = useDay();
  return day === null ? null : <LegendOf day={day} />;
}

function LegendOf({ day: { plan, runs, iso, hours, left } }: { readonly day: DayCase }) {
  const words = useWords();
  const { dayRoutes } = words;
  const minute = useMinute(hours);
  const { vehicles, stops, inoculantHa } = dayLoad(plan, runs);
  return (
    <div className="day-legend">
      <p className="day-hour">{dayRoutes.dayHour(weekdayDate(iso, words), clockText(minute))}</p>
      <p className="soft">{dayRoutes.onTheRoad(localNumber(vehicles, words), localNumber(stops, words))}</p>
      {inoculantHa > 0 && (
        <p className="soft">
          {dayRoutes.inoculantFor}{' '}
          <Figure path="allocation.consignments.hectares" title={dayRoutes.titles.load}>
            {withUnit(localNumber(inoculantHa, words), dayRoutes.ha)}
          </Figure>
        </p>
      )}
      {runs.length > 0 && <RunDay hours={hours} minute={minute} />}
      <ul className="swatches">
        {(['stop', 'stop-now', 'stop-done'] as const).map((state, i) => (
          <li key={state}>
            <span className={`stop-mark is-${state}`} />
            {[dayRoutes.toCome, dayRoutes.thereNow, dayRoutes.handedOver][i]}
          </li>
        ))}
        {left.length > 0 && (
          <li>
            <span className="swatch hatch-nothing" />
            {dayRoutes.neverServed}
          </li>
        )}
      </ul>
    </div>
  );
}

/** `Tue 24 Nov` */
export function weekdayDate(iso: string, words: Words): string {
  const day = parseIsoDate(iso);
  const weekday = day === null ? '' : (words.weekdays[isoWeekday(day) - 1] ?? '');
  return `${weekday} ${dateText(iso, words, false)}`.trim();
}
