import { dayFromCivil, daysInMonth } from '../../vocabulary/calendar.ts';

/** A time as a logger writes it, taken apart but not yet told which number is the day. */
interface TimeParts {
  /** Null where the text names the year first. */
  readonly first: number | null;
  readonly second: number;
  readonly year: number;
  /** Of a year-first text. */
  readonly month: number;
  readonly day: number;
  readonly minute: number;
  /** Minutes that its clock is ahead of UTC; null: local time. */
  readonly offset: number | null;
}

const CLOCK = /(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*([AaPp][Mm])?\s*(Z|[+-]\d{2}:?\d{2})?$/;
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T\s,]+/;
const YEAR_LAST = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})[T\s,]+/;

/** Order of day and month where neither comes after a year. */
export type DayOrder = 'day-first' | 'month-first' | 'unknown';

export interface LoggerTimes {
  /** Local minutes since 1970-01-01 per text; NaN where it is no time. */
  readonly minutes: Float64Array;
  /** `unknown`: no text tells, the day was taken first. */
  readonly order: DayOrder;
}

/**
 * Reads times as loggers write them: ISO 8601 with T or a space, year/month/day, or day and month before the year with
 * slashes, points or hyphens; 24 hours or am and pm; with or without seconds and an offset from UTC. Which of two numbers is
 * the day is decided for the whole file by a number above twelve.
 *
 * @param utcOffsetMinutes of the scenario's clock, for texts that state their own
 */
export function readLoggerTimes(texts: readonly string[], utcOffsetMinutes: number): LoggerTimes {
  const parts = texts.map(takeApart);
  const some = (test: (p: TimeParts & { first: number }) => boolean) =>
    parts.some((p) => p !== null && p.first !== null && test(p as TimeParts & { first: number }));
  const dayFirst = some(({ first }) => first > 12);
  const monthFirst = some(({ second }) => second > 12);
  const isTold = dayFirst !== monthFirst || !some(() => true);
  const order: DayOrder = !isTold ? 'unknown' : monthFirst ? 'month-first' : 'day-first';
  const minutes = Float64Array.from(parts, (p) => (p ? minutesOf(p, order, utcOffsetMinutes) : Number.NaN));
  return { minutes, order };
}

function takeApart(text: string): TimeParts | null {
  const clock = CLOCK.exec(text);
  if (!clock) return null;
  const minute = minuteOfClock(clock);
  if (minute === null) return null;
  const offset = offsetOf(clock[5]);
  const yearFirst = YEAR_FIRST.exec(text);
  if (yearFirst) {
    const [year, month, day] = [1, 2, 3].map((i) => Number(yearFirst[i])) as [number, number, number];
    return { first: null, second: 0, year, month, day, minute, offset };
  }
  const yearLast = YEAR_LAST.exec(text);
  if (!yearLast) return null;
  const [first, second, short] = [1, 2, 3].map((i) => Number(yearLast[i])) as [number, number, number];
  return { first, second, year: short < 100 ? 2000 + short : short, month: 0, day: 0, minute, offset };
}

function minuteOfClock(clock: RegExpExecArray): number | null {
  const [hour, minute, second] = [Number(clock[1]), Number(clock[2]), Number(clock[3] ?? 0)];
  const half = clock[4]?.toLowerCase();
  if (minute > 59 || second > 59 || hour > (half ? 12 : 24)) return null;
  const ofDay = half ? (hour % 12) + (half === 'pm' ? 12 : 0) : hour;
  return ofDay * 60 + minute + second / 60;
}

function offsetOf(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (text === 'Z') return 0;
  const digits = text.replace(':', '');
  const minutes = Number(digits.slice(1, 3)) * 60 + Number(digits.slice(3, 5));
  return digits.startsWith('-') ? -minutes : minutes;
}

function minutesOf(parts: TimeParts, order: DayOrder, utcOffsetMinutes: number): number {
  const { first, second, year, minute, offset } = parts;
  const [month, day] =
    first === null ? [parts.month, parts.day] : order === 'month-first' ? [first, second] : [second, first];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return Number.NaN;
  const local = offset === null ? 0 : utcOffsetMinutes - offset;
  return dayFromCivil(year, month, day) * 1440 + minute + local;
}
