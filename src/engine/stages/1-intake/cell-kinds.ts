import { type MonthDay, parseClock, parseIsoDate, parseMonthDay } from '../../vocabulary/calendar.ts';
import type { ProblemCode } from '../../vocabulary/problems.ts';
import { type DayNumber, dayNumber, type MinuteOfDay, minuteOfDay } from '../../vocabulary/units.ts';
import { nearestWord } from './nearest-word.ts';
import { looksActive, stripControls } from './plain-text.ts';

type Facts = Readonly<Record<string, string | number>>;

/** Something to say of a cell whose value is used all the same. */
export interface CellNote {
  readonly code: ProblemCode;
  readonly value?: string;
  readonly facts?: Facts;
}

export type CellReading<T> =
  | { readonly value: T; readonly notes?: readonly CellNote[] }
  | { readonly fault: ProblemCode; readonly facts?: Facts };

/** How the text of a cell becomes a value. `none` stands in for a value that was not read, in rows that are set aside. */
export interface CellKind<T> {
  readonly read: (text: string) => CellReading<T>;
  readonly none: T;
}

/** Plain text, never markup: it is kept as sent, without control characters. */
export const TEXT: CellKind<string> = {
  none: '',
  read: (sent) => {
    const value = stripControls(sent);
    if (value === '') return { fault: 'E1300' };
    const notes: CellNote[] = [];
    if (value !== sent) notes.push({ code: 'E1310' });
    if (looksActive(value)) notes.push({ code: 'E1309' });
    return notes.length > 0 ? { value, notes } : { value };
  },
};

interface Range {
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly above?: number;
}

/** Digits with a decimal point (the numbers of RFC 8259, a leading + or bare point allowed): no commas, units or spaces. */
const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** A finite decimal number within a range. */
export function number(range: Range = {}): CellKind<number> {
  const {
    atLeast = Number.NEGATIVE_INFINITY,
    atMost = Number.POSITIVE_INFINITY,
    above = Number.NEGATIVE_INFINITY,
  } = range;
  return {
    none: Number.NaN,
    read: (text) => {
      const value = DECIMAL.test(text) ? Number(text) : Number.NaN;
      if (!Number.isFinite(value)) return { fault: 'E1301' };
      return value < atLeast || value > atMost || value <= above ? { fault: 'E1302', facts: { ...range } } : { value };
    },
  };
}

export function whole(range: Range = {}): CellKind<number> {
  const any = number(range);
  return {
    none: Number.NaN,
    read: (text) => {
      const found = any.read(text);
      return 'value' in found && !Number.isInteger(found.value) ? { fault: 'E1311' } : found;
    },
  };
}

const orFault = <T>(value: T | null, fault: ProblemCode): CellReading<T> => (value === null ? { fault } : { value });

/** `YYYY-MM-DD`. */
export const DATE: CellKind<DayNumber> = {
  none: dayNumber(Number.NaN),
  read: (text) => orFault(parseIsoDate(text), 'E1303'),
};

/** `MM-DD`, every year. */
export const MONTH_DAY: CellKind<MonthDay> = {
  none: { month: 1, day: 1 },
  read: (text) => orFault(parseMonthDay(text), 'E1303'),
};

/** `HH:MM`, 24-hour clock. */
export const CLOCK: CellKind<MinuteOfDay> = {
  none: minuteOfDay(Number.NaN),
  read: (text) => orFault(parseClock(text), 'E1304'),
};

export const YES_NO: CellKind<boolean> = {
  none: false,
  read: (text) => {
    const found = word(['yes', 'no', 'true', 'false']).read(text);
    return 'value' in found ? { value: found.value === 'yes' || found.value === 'true' } : found;
  },
};

/** Letter case, spaces and hyphens do not matter: `Common bean` is `common_bean`. */
const spelling = (text: string): string => text.toLowerCase().replace(/[\s-]+/g, '_');

const suggestion = (met: string, words: readonly string[]): Facts => {
  const near = nearestWord(spelling(met), words);
  return { known: words.join(', '), ...(near === null ? {} : { suggestion: near }) };
};

/** One word of a list. */
export function word<const W extends string>(words: readonly W[]): CellKind<W> {
  return {
    none: words[0] as W,
    read: (text) => {
      const spelt = spelling(text);
      const found = words.find((known) => spelling(known) === spelt);
      return found === undefined ? { fault: 'E1305', facts: suggestion(text, words) } : { value: found };
    },
  };
}

/** Several words of a list, separated by `;`, each once and in the list's own order. Unknown ones are left out and said. */
export function wordList<const W extends string>(words: readonly W[]): CellKind<readonly W[]> {
  const one = word(words);
  return {
    none: [],
    read: (text) => {
      const found = new Set<W>();
      const notes: CellNote[] = [];
      for (const item of splitList(text)) {
        const reading = one.read(item);
        if ('value' in reading) found.add(reading.value);
        else notes.push({ code: 'E1312', value: item, facts: { ...reading.facts, scope: 'value' } });
      }
      if (found.size === 0) return { fault: 'E1305', facts: suggestion(text, words) };
      return { value: words.filter((known) => found.has(known)), notes };
    },
  };
}

/** Items of a cell, separated by `;`. */
export function splitList(text: string): string[] {
  return text
    .split(';')
    .map((item) => item.trim())
    .filter((item) => item !== '');
}

/** Items of any kind, separated by `;`; those that cannot be read are left out and said. */
export function listOf<T>(kind: CellKind<T>): CellKind<readonly T[]> {
  return {
    none: [],
    read: (text) => {
      const value: T[] = [];
      const notes: CellNote[] = [];
      for (const item of splitList(text)) {
        const reading = kind.read(item);
        if ('fault' in reading)
          notes.push({ code: reading.fault, value: item, facts: { ...reading.facts, scope: 'value' } });
        else {
          value.push(reading.value);
          notes.push(...(reading.notes ?? []));
        }
      }
      return { value, notes };
    },
  };
}
