import { Fragment } from 'react';
import type { SeasonCalendar } from '../../../engine/index.ts';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { hourText, planningDays } from '../../../presentation/views/days-axis.ts';
import { type ZoneDayWorth, type ZoneRelease, zoneDayWorth } from '../../../presentation/views/days-worth.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { useView, useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { dayTitle } from './day-title.ts';

interface ZoneWorthProps {
  readonly shown: DayShown;
  readonly worth: SeasonCalendar | null;
}

/** The chosen zone on the day shown: what is kept and what takes the rest, when to leave, and whether to wait for rain. */
export function ZoneWorth({ shown: { plan, scenario, day }, worth }: ZoneWorthProps) {
  const words = useWords();
  const { days } = words;
  const zoneId = useView((view) => view.zone);
  if (worth === null) return null;
  const zone = scenario.zones.findIndex(({ id }) => id === zoneId);
  if (zoneId === null || zone < 0) return <p className="note">{days.worthHint}</p>;
  const offset = planningDays(plan).find(({ iso }) => iso === day)?.offset ?? -1;
  const told = zoneDayWorth(worth, zone, offset);
  const name = scenario.zones[zone]?.name ?? zoneId;
  if (told === null) return <p className="note">{days.worthNoLand(name)}</p>;
  const vehicle = scenario.vehicles[worth.trip.vehicle]?.id ?? null;
  return (
    <section className="zone-worth">
      <h2>{days.worthTitle(name, dayTitle(day, words))}</h2>
      <div className="zone-worth-columns">
        <div>
          <p>
            <b>{days.worthKept(percent(told.kept, words))}</b>{' '}
            {told.best && days.worthBest(dayTitle(told.best.day, words), percent(told.best.kept, words))}
          </p>
          <Parts told={told} />
        </div>
        <div>
          <p>{tripText(told, vehicle, worth, words)}</p>
          <p>{leaveText(told, words)}</p>
          <p className="soft">{airText(told, words)}</p>
          {told.release && <Release release={told.release} best={told.best?.kept ?? 0} />}
        </div>
      </div>
    </section>
  );
}

const percent = (share: number, words: Words): string => withUnit(localNumber(share * 100, words), '%');

/** Shares of value lost, on one scale with what is kept. */
function Parts({ told }: { readonly told: ZoneDayWorth }) {
  const words = useWords();
  const { days } = words;
  return (
    <table className="ruled worth-parts">
      <thead>
        <tr>
          <th scope="col">{days.worthPart}</th>
          <th scope="col" className="number">
            {days.worthShare}
          </th>
          <td />
          <th scope="col" className="number">
            {days.worthLog10}
          </th>
        </tr>
      </thead>
      <tbody>
        {told.parts.map(({ part, share, log10 }) => (
          <tr key={part}>
            <th scope="row">{days.worthParts[part]}</th>
            <td className="number">{localNumber(share * 100, words, 1)}</td>
            <td className="loss-column">
              <svg width="100%" height="10" aria-hidden="true">
                <rect className="loss-bar" height="10" width={`${100 * share}%`} />
              </svg>
            </td>
            <td className="number">{log10 === null ? days.none : localNumber(log10, words, 2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Go or wait: the rule, when it is expected to fire, and what it keeps beside the best fixed day. */
function Release({ release, best }: { readonly release: ZoneRelease; readonly best: number }) {
  const words = useWords();
  const { days } = words;
  const { mm, expected, early, late, tooLate, never, kept, isDue } = release;
  const date = (iso: string | null) => (iso === null ? days.none : dayTitle(iso, words));
  const lines = [
    isDue
      ? days.releaseDue
      : expected === null
        ? days.releaseNever
        : days.releaseExpected(date(expected), date(early), date(late)),
    ...(never >= 0.005 ? [days.releaseNot(percent(never, words))] : []),
    days.releaseLate(percent(tooLate, words)),
    days.releaseKept(percent(kept, words), percent(best, words)),
  ];
  const WORTH_WAITING = 0.005;
  return (
    <>
      <h3>{days.releaseTitle(localNumber(mm, words))}</h3>
      <p>
        <b>{isDue || kept <= best + WORTH_WAITING ? days.releaseGo : days.releaseWait}</b>{' '}
        {lines.map((line) => (
          <Fragment key={line}>{line} </Fragment>
        ))}
      </p>
    </>
  );
}

function tripText(told: ZoneDayWorth, vehicle: string | null, { trip }: SeasonCalendar, words: Words): string {
  const { days } = words;
  if (vehicle === null || told.driveMinutes === null) return days.worthNoWay;
  const ice = trip.iceKg > 0 ? days.withIce(localNumber(trip.iceKg, words, 1)) : days.withoutIce;
  return days.worthTrip(vehicle, ice, hourText(told.leaveMinute ?? 0), localNumber(told.driveMinutes, words));
}

function leaveText({ driveMinutes, latestLeaveMinute, packMaxC, hotBandMaxC }: ZoneDayWorth, words: Words): string {
  const { days } = words;
  if (driveMinutes === null) return '';
  const celsius = (value: number | null) => (value === null ? days.none : localNumber(value, words, 1));
  const leave = latestLeaveMinute === null ? days.leaveNever : days.leaveBy(hourText(latestLeaveMinute));
  return `${leave} ${days.worthHottest(celsius(packMaxC), celsius(hotBandMaxC))}`;
}

function airText({ maximumC, hoursAbove }: ZoneDayWorth, words: Words): string {
  const { days } = words;
  if (maximumC === null) return '';
  const [over30 = '', over35 = '', over40 = ''] = hoursAbove.map((hours) => localNumber(hours, words, 1));
  return days.worthAir(localNumber(maximumC, words), over30, over35, over40);
}
