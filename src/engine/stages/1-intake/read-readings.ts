import { quantile } from '../../numerics/quantile.ts';
import { SURVIVAL_SETS, type SurvivalSet } from '../../reference/survival-sets.ts';
import { integrateRecord, measureExposure } from '../../science/exposure.ts';
import { packLog10PerDay, survivalSet } from '../../science/survival.ts';
import type { LoggerReading } from '../../vocabulary/readings.ts';
import type { TableRecords } from '../../vocabulary/records.ts';
import type { Lot, Product } from '../../vocabulary/supply.ts';
import type { DayNumber } from '../../vocabulary/units.ts';
import { byNumber, byText, inOrder, type Order } from './canonical-order.ts';
import type { IntakeReport } from './intake-report.ts';
import { findLoggerColumns, type LoggerColumns, loggerNumber, type Unit } from './logger-columns.ts';
import { readLoggerTimes } from './logger-times.ts';

/** Above this median no store or vehicle is taken to have been, °C: the numbers can only be °F. */
const ONLY_FAHRENHEIT_ABOVE = 60;
/** Between this and the above the numbers may be either. */
const CELSIUS_UP_TO = 45;
/** A gap longer than this, and than three usual steps, is not bridged by a straight line (assumed). */
const LONGEST_BRIDGE_MINUTES = 180;
const READABLE_C = { least: -40, most: 100 } as const;

/** What readings may speak of, and the clock they are written by. */
export interface LoggerGround {
  readonly lots: readonly Lot[];
  readonly products: readonly Product[];
  readonly asOf: DayNumber;
  readonly utcOffsetMinutes: number;
}

/**
 * Logger files, each tied to a lot by a column `lot_id` or by the file's name, or to a trip by a column `trip`. Rows may
 * stand in any order; a moment that two rows tell counts with the hotter one.
 */
export function readReadings(
  report: IntakeReport,
  tables: readonly TableRecords[],
  ground: LoggerGround,
): LoggerReading[] {
  return tables.flatMap((table) => readLogger(report, table, ground)).sort(READING_ORDER);
}

const READING_ORDER: Order<LoggerReading> = inOrder(
  byText(({ lotId }) => lotId ?? ''),
  byText(({ trip }) => trip ?? ''),
  byNumber(({ minutes }) => minutes[0] ?? 0),
  byText(({ file }) => file),
);

interface Sample {
  readonly minute: number;
  readonly celsius: number;
}

function readLogger(report: IntakeReport, table: TableRecords, ground: LoggerGround): LoggerReading[] {
  const columns = findLoggerColumns(table);
  const { file } = table;
  if (columns.time < 0 || columns.temperature < 0) {
    report.add('E1970', { file, row: 1, value: table.columns.join(', ') });
    return [];
  }
  const unit = settleUnit(report, table, columns);
  if (unit === null) return [];
  const samples = readSamples(report, table, columns, unit, ground);
  const groups = new Map<string, { lotId: string | null; trip: string | null; samples: Sample[] }>();
  table.rows.forEach((row, i) => {
    const sample = samples[i];
    if (!sample) return;
    const lotId = row.cells[columns.lot] || lotOfFile(file, ground.lots);
    const trip = row.cells[columns.trip] || null;
    const key = JSON.stringify([lotId, trip]);
    const group = groups.get(key) ?? { lotId, trip, samples: [] };
    groups.set(key, group);
    group.samples.push(sample);
  });
  return [...groups.values()].flatMap(({ lotId, trip, samples: own }) => {
    const lot = ground.lots.find(({ id }) => id === lotId) ?? null;
    if ((lotId !== null && lot === null) || (lotId === null && trip === null)) {
      report.add('E1971', { file, value: lotId, facts: { samples: own.length } });
      return [];
    }
    return [layRecord(report, file, lot, trip, own, ground)];
  });
}

/** `readings/LOT.csv` and `readings/LOT__anything.csv` are of lot LOT. */
function lotOfFile(file: string, lots: readonly Lot[]): string | null {
  const stem = file.replace(/^.*\//, '').replace(/\.csv$/i, '');
  const name = stem.split('__')[0] as string;
  return lots.some(({ id }) => id === name) ? name : null;
}

function settleUnit(report: IntakeReport, table: TableRecords, columns: LoggerColumns): Unit | null {
  if (columns.unit !== null) return columns.unit;
  const { file } = table;
  const column = table.columns[columns.temperature] as string;
  const middle = quantile(
    table.rows.map(({ cells }) => loggerNumber(cells[columns.temperature] ?? '')),
    0.5,
  );
  const facts = { median: middle };
  if (middle > ONLY_FAHRENHEIT_ABOVE) {
    report.add('E1973', { file, column, facts });
    return 'F';
  }
  if (middle > CELSIUS_UP_TO) {
    report.add('E1974', { file, column, facts });
    return null;
  }
  report.add('E1972', { file, column, facts });
  return 'C';
}

/** One sample a row; null where the row has no time or reading that can be used, or lies after the as-of day. */
function readSamples(
  report: IntakeReport,
  { file, columns: names, rows }: TableRecords,
  columns: LoggerColumns,
  unit: Unit,
  { asOf, utcOffsetMinutes }: LoggerGround,
): (Sample | null)[] {
  const texts = rows.map(({ cells }) =>
    [cells[columns.time], columns.clock < 0 ? null : cells[columns.clock]].filter((part) => part !== null).join(' '),
  );
  const { minutes, order } = readLoggerTimes(texts, utcOffsetMinutes);
  if (order === 'unknown') report.add('E1975', { file, row: rows[0]?.row ?? null, value: texts[0] ?? null });
  let late = 0;
  const samples = rows.map((row, i): Sample | null => {
    const minute = minutes[i] as number;
    const cell = row.cells[columns.temperature] ?? '';
    const met = loggerNumber(cell);
    const celsius = unit === 'F' ? ((met - 32) * 5) / 9 : met;
    if (Number.isNaN(minute)) {
      report.add('E1976', { file, row: row.row, column: names[columns.time] ?? null, value: texts[i] ?? null });
      return null;
    }
    if (!(celsius >= READABLE_C.least && celsius <= READABLE_C.most)) {
      // A logger that was read out leaves its cell blank: a gap, told as such.
      if (cell !== '')
        report.add('E1976', { file, row: row.row, column: names[columns.temperature] ?? null, value: cell });
      return null;
    }
    if (minute >= (asOf + 1) * 1440) {
      late++;
      return null;
    }
    return { minute, celsius };
  });
  if (late > 0) report.add('E1977', { file, facts: { count: late } });
  return samples;
}

function layRecord(
  report: IntakeReport,
  file: string,
  lot: Lot | null,
  trip: string | null,
  sent: readonly Sample[],
  { products }: LoggerGround,
): LoggerReading {
  const ordered = onePerMinute(report, file, sent);
  const { samples, gapHours, gaps } = fillGaps(ordered);
  if (gaps > 0) report.add('E1979', { file, facts: { gaps, hours: Math.round(gapHours * 10) / 10 } });
  const minutes = Float64Array.from(samples, ({ minute }) => minute);
  const celsius = Float64Array.from(samples, (sample) => sample.celsius);
  const lossBy = (set: SurvivalSet) => integrateRecord(minutes, celsius, (c) => packLog10PerDay(c, set));
  const product = products.find(({ id }) => id === lot?.productId);
  const sets = product?.kind === 'inoculant' ? product.crops.map((crop) => survivalSet(product, crop)) : [];
  return {
    file,
    lotId: lot?.id ?? null,
    trip,
    minutes,
    celsius,
    exposure: measureExposure(minutes, celsius),
    gapHours,
    log10Loss: sets.length === 0 ? Number.NaN : Math.max(...sets.map(lossBy)),
    log10LossDefault: lossBy(SURVIVAL_SETS.default.value),
    log10LossCautious: lossBy(SURVIVAL_SETS.cautious.value),
  };
}

/** Ascending; of two rows of one minute the hotter. A clock set back at the end of summer time repeats an hour. */
function onePerMinute(report: IntakeReport, file: string, sent: readonly Sample[]): Sample[] {
  const sorted = [...sent].sort((a, b) => a.minute - b.minute || b.celsius - a.celsius);
  const kept = sorted.filter((sample, i) => i === 0 || sample.minute > (sorted[i - 1] as Sample).minute);
  const backwards = sent.filter((sample, i) => i > 0 && sample.minute < (sent[i - 1] as Sample).minute).length;
  const isReversed = backwards === sent.length - 1;
  if (kept.length < sorted.length || (backwards > 0 && !isReversed))
    report.add('E1978', { file, facts: { repeated: sorted.length - kept.length, backwards } });
  return kept;
}

/** Over a long gap the hotter of its two ends is taken to hold: the cautious reading of what nobody saw. */
function fillGaps(samples: readonly Sample[]): { samples: Sample[]; gapHours: number; gaps: number } {
  const steps = samples.slice(1).map(({ minute }, i) => minute - (samples[i] as Sample).minute);
  const longest = Math.max(LONGEST_BRIDGE_MINUTES, 3 * (quantile(steps, 0.5) || 0));
  const filled: Sample[] = [];
  let [gapMinutes, gaps] = [0, 0];
  samples.forEach((sample, i) => {
    const before = samples[i - 1];
    if (before && sample.minute - before.minute > longest) {
      gaps++;
      gapMinutes += sample.minute - before.minute;
      const celsius = Math.max(before.celsius, sample.celsius);
      // A minute either side, so that times stay ascending.
      filled.push({ minute: before.minute + 1, celsius }, { minute: sample.minute - 1, celsius });
    }
    filled.push(sample);
  });
  return { samples: filled, gapHours: gapMinutes / 60, gaps };
}
