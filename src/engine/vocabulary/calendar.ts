import { type DayNumber, dayNumber, type MinuteOfDay, minuteOfDay } from './units.ts';

/** ISO 8601 weekday, Monday 1 to Sunday 7. */
export type IsoWeekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** A month and day that recurs every year, as `MM-DD`. */
export interface MonthDay {
  readonly month: number;
  readonly day: number;
}

export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/**
 * Day number of a proleptic Gregorian date. The year is counted from 1 March so that the leap day comes last
 * (the usual civil-calendar algorithm; common practice, no source).
 */
export function dayFromCivil(year: number, month: number, day: number): DayNumber {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfMarchYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfMarchYear;
  return dayNumber(era * 146097 + dayOfEra - 719468);
}

export function civilFromDay(day: DayNumber): CivilDate {
  const shifted = day + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfMarchYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfMarchYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return { year, month, day: dayOfMarchYear - Math.floor((153 * marchMonth + 2) / 5) + 1 };
}

/** Day of the year, 1 January = 1. */
export function dayOfYear(day: DayNumber): number {
  const { year, month, day: dayOfMonth } = civilFromDay(day);
  return (DAYS_BEFORE_MONTH[month - 1] ?? 0) + dayOfMonth + (month > 2 && isLeapYear(year) ? 1 : 0);
}

export function isoWeekday(day: DayNumber): IsoWeekday {
  return (((((day + 3) % 7) + 7) % 7) + 1) as IsoWeekday;
}

/** Reads `YYYY-MM-DD` (ISO 8601). Null where the text is of another form or names a day that does not exist. */
export function parseIsoDate(text: string): DayNumber | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!found) return null;
  const [year, month, day] = [Number(found[1]), Number(found[2]), Number(found[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return dayFromCivil(year, month, day);
}

export function isoDate(day: DayNumber): string {
  const { year, month, day: dayOfMonth } = civilFromDay(day);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfMonth)}`;
}

/** Reads `MM-DD`. 29 February is accepted and stands for 28 February in common years. */
export function parseMonthDay(text: string): MonthDay | null {
  const found = /^(\d{2})-(\d{2})$/.exec(text);
  if (!found) return null;
  const [month, day] = [Number(found[1]), Number(found[2])];
  return month < 1 || month > 12 || day < 1 || day > daysInMonth(2000, month) ? null : { month, day };
}

export function dayOfMonthDay(year: number, monthDay: MonthDay): DayNumber {
  return dayFromCivil(year, monthDay.month, Math.min(monthDay.day, daysInMonth(year, monthDay.month)));
}

/** Reads `HH:MM`, 24-hour clock. */
export function parseClock(text: string): MinuteOfDay | null {
  const found = /^(\d{1,2}):(\d{2})$/.exec(text);
  if (!found) return null;
  const minutes = Number(found[1]) * 60 + Number(found[2]);
  return Number(found[2]) > 59 || minutes > 1440 ? null : minuteOfDay(minutes);
}

/** `HH:MM` of a minute of the day, rounded down to the whole minute. */
export function clockText(minutes: number): string {
  const whole = Math.floor(minutes);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}
