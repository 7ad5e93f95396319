import { clockText, dayNumber, isoDate, type Scenario, type SeasonCalendar, type ValueLost } from '../engine/index.ts';
import { textTable } from './text-table.ts';
import { SEASON_WORDING as WORDS } from './wording/english/season.ts';

const percent = (share: number): string => (Number.isNaN(share) ? '-' : String(Math.round(share * 100)));
const tenth = (value: number): string => (Math.round(value * 10) / 10).toFixed(1);

/** Per zone with planned land: the best day, what it keeps, holding for rain, the latest hour, and where most is lost. */
export function seasonTable(scenario: Scenario, calendar: SeasonCalendar): string {
  const { trip, firstDay, planningDays } = calendar;
  const vehicle = scenario.vehicles[trip.vehicle];
  const hour = trip.leaveMinute === null ? WORDS.earliest : clockText(trip.leaveMinute);
  const rows = [...calendar.plannedHa.entries()]
    .filter(([, hectares]) => hectares > 0)
    .map(([zone]) => zoneRow(scenario, calendar, zone));
  const { zone, hectares, best, kept, rain, late, leave, lost } = WORDS.columns;
  return [
    WORDS.title(scenario.name, isoDate(firstDay), isoDate(dayNumber(firstDay + planningDays - 1))),
    vehicle ? WORDS.trip(vehicle.id, hour, tenth(trip.iceKg)) : WORDS.noVehicle,
    WORDS.hold(String(calendar.release.mm)),
    '',
    textTable([zone, hectares, best, kept, rain, late, leave, lost], rows),
    '',
    WORDS.explain,
  ].join('\n');
}

function zoneRow(scenario: Scenario, calendar: SeasonCalendar, zone: number): string[] {
  const { firstDay, planningDays, release } = calendar;
  const best = calendar.bestDay[zone] as number;
  const cell = zone * planningDays + Math.max(0, best);
  const leave = calendar.latestLeaveMinute[cell] as number;
  return [
    scenario.zones[zone]?.name || scenario.zones[zone]?.id || WORDS.outside,
    tenth(calendar.plannedHa[zone] as number),
    best < 0 ? WORDS.never : isoDate(dayNumber(firstDay + best)),
    best < 0 ? '-' : percent(calendar.value[cell] as number),
    percent(release.value[zone] as number),
    percent(release.tooLate[zone] as number),
    Number.isNaN(leave) ? '-' : clockText(leave),
    mostLost(calendar.lost, cell),
  ];
}

/** Per zone with planned land: rain of the last three days, when the rule lets go, and how often that is too late or never. */
export function releaseTable({ zones }: Scenario, { plannedHa, release }: SeasonCalendar): string {
  const date = (day: number | undefined) => isoDate(dayNumber(Math.round(day ?? 0)));
  const rows = [...plannedHa.entries()]
    .filter(([, hectares]) => hectares > 0)
    .map(([zone]) => {
      const [fired, p20, p50, p80] = [release.firedOn, release.p20, release.p50, release.p80].map((one) => one[zone]);
      const fallen = release.fallenMm[zone] ?? Number.NaN;
      const fires = Number.isNaN(p50) ? WORDS.firesNever : WORDS.firesBy(date(p50), date(p20), date(p80));
      return [
        zones[zone]?.name || zones[zone]?.id || WORDS.outside,
        Number.isNaN(fallen) ? '-' : tenth(fallen),
        Number.isNaN(fired) ? fires : WORDS.fired(date(fired)),
        percent(release.never[zone] as number),
        percent(release.tooLate[zone] as number),
      ];
    });
  const { zone, fallen, fires, never, late } = WORDS.release;
  const title = WORDS.releaseTitle(String(release.mm), String(release.leadDays));
  return [title, textTable([zone, fallen, fires, never, late], rows)].join('\n');
}

function mostLost(lost: ValueLost, cell: number): string {
  const parts = (Object.keys(lost) as (keyof ValueLost)[]).map((part) => [part, lost[part][cell] as number] as const);
  const [part, share] = parts.reduce((most, one) => (one[1] > most[1] ? one : most));
  return `${WORDS.lost[part]} ${percent(share)} %`;
}

/** What each logger recorded, beside what it cost by the pack's own set and by the default and cautious ones. */
export function readingsTable({ readings }: Scenario): string {
  if (readings.length === 0) return WORDS.noReadings;
  const log10 = (value: number) => (Number.isNaN(value) ? WORDS.unknown : value.toFixed(3));
  const { of, hours, range, kinetic, above30, above35, above40, lost, range10 } = WORDS.reading;
  const rows = readings.map(({ lotId, trip, exposure, log10Loss, log10LossDefault, log10LossCautious }) => [
    trip === null ? (lotId ?? '') : `${trip} ${lotId ?? ''}`.trimEnd(),
    tenth(exposure.hours),
    `${tenth(exposure.minC)} - ${tenth(exposure.maxC)}`,
    tenth(exposure.meanKineticC),
    tenth(exposure.hoursAbove30),
    tenth(exposure.hoursAbove35),
    tenth(exposure.hoursAbove40),
    log10(log10Loss),
    `${log10(log10LossDefault)}, ${log10(log10LossCautious)}`,
  ]);
  const names = [of, hours, range, kinetic, above30, above35, above40, lost, range10];
  return [WORDS.readings, textTable(names, rows)].join('\n');
}
