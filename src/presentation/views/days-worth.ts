import { dayNumber, isoDate, type SeasonCalendar } from '../../engine/index.ts';
import { worthRow } from './days-calendar.ts';

/** What takes value from a zone's hectares when they are handed their packs on one day. */
export type LostPart = keyof SeasonCalendar['lost'];

const PARTS: readonly LostPart[] = [
  'noRoad',
  'tooHot',
  'late',
  'asBought',
  'depotStore',
  'road',
  'communityStore',
  'onSeed',
];

export interface WorthPart {
  readonly part: LostPart;
  /** Share of value lost, 0 to 1. */
  readonly share: number;
  /** log10 of the rhizobia lost; null where the part is none of theirs. */
  readonly log10: number | null;
}

/** One zone on one day, by the reference trip. */
export interface ZoneDayWorth {
  /** Shares of value: of that day, and of the best day, whose ISO date is told. */
  readonly kept: number;
  readonly best: { readonly day: string; readonly kept: number } | null;
  /** Parts with what is kept add up to 1; those of which nothing is lost on any day are left out. */
  readonly parts: readonly WorthPart[];
  readonly leaveMinute: number | null;
  readonly latestLeaveMinute: number | null;
  readonly driveMinutes: number | null;
  readonly packMaxC: number | null;
  readonly hotBandMaxC: number | null;
  readonly maximumC: number | null;
  /** Hours of that day that the air in shade is above 30, 35 and 40 °C. */
  readonly hoursAbove: readonly [number, number, number];
  readonly release: ZoneRelease | null;
}

/** What comes of holding the zone's packs until it has rained. */
export interface ZoneRelease {
  readonly mm: number;
  /** ISO dates: the middle one, and eight seasons in ten between the others; null where that rain has never fallen. */
  readonly expected: string | null;
  readonly early: string | null;
  readonly late: string | null;
  readonly tooLate: number;
  readonly never: number;
  readonly kept: number;
  /** That rain has fallen in every season that this one may still turn out like. */
  readonly isDue: boolean;
}

/** Null where the zone has no planned land or the day is none of the plan's. */
export function zoneDayWorth(worth: SeasonCalendar, zone: number, day: number): ZoneDayWorth | null {
  const row = worthRow(worth, zone);
  const at = (column: Float64Array, on = day) => column[row * worth.planningDays + on] ?? Number.NaN;
  const kept = at(worth.value);
  if (Number.isNaN(kept) || day < 0 || day >= worth.planningDays) return null;
  const bestDay = worth.bestDay[row] ?? -1;
  const known = (value: number) => (Number.isNaN(value) ? null : value);
  return {
    kept,
    best: bestDay < 0 ? null : { day: isoOf(worth, bestDay), kept: at(worth.value, bestDay) },
    parts: partsOf(worth, row, day),
    leaveMinute: known(at(worth.leaveMinute)),
    latestLeaveMinute: known(at(worth.latestLeaveMinute)),
    driveMinutes: known(at(worth.driveMinutes)),
    packMaxC: known(at(worth.packMaxC)),
    hotBandMaxC: known(at(worth.hotBandMaxC)),
    maximumC: known(at(worth.maximumC)),
    hoursAbove: [at(worth.hoursAbove30), at(worth.hoursAbove35), at(worth.hoursAbove40)],
    release: releaseOf(worth, row),
  };
}

function partsOf(worth: SeasonCalendar, row: number, day: number): WorthPart[] {
  const from = row * worth.planningDays;
  const lostOnAnyDay = (part: LostPart) =>
    worth.lost[part].subarray(from, from + worth.planningDays).some((share) => share >= 0.0005);
  return PARTS.filter(lostOnAnyDay).map((part) => {
    const cells = part in worth.log10Lost ? worth.log10Lost[part as keyof SeasonCalendar['log10Lost']] : null;
    const log10 = cells?.[from + day];
    return {
      part,
      share: worth.lost[part][from + day] ?? 0,
      log10: log10 === undefined || Number.isNaN(log10) ? null : log10,
    };
  });
}

function releaseOf({ release, firstDay }: SeasonCalendar, row: number): ZoneRelease | null {
  const [kept, tooLate, never] = [release.value[row], release.tooLate[row], release.never[row]];
  if (kept === undefined || tooLate === undefined || never === undefined || Number.isNaN(kept)) return null;
  const date = (column: Float64Array) => {
    const day = column[row];
    return day === undefined || Number.isNaN(day) ? null : isoDate(dayNumber(Math.round(day)));
  };
  const lastOfAll = release.p80[row] ?? Number.NaN;
  return {
    mm: release.mm,
    expected: date(release.p50),
    early: date(release.p20),
    late: date(release.p80),
    tooLate,
    never,
    kept,
    isDue: never === 0 && lastOfAll < firstDay,
  };
}

const isoOf = ({ firstDay }: SeasonCalendar, offset: number): string => isoDate(dayNumber(firstDay + offset));
