import { isoDate } from '../../vocabulary/calendar.ts';
import type { Position } from '../../vocabulary/places.ts';
import type { TableRecords } from '../../vocabulary/records.ts';
import type { WeatherStation } from '../../vocabulary/scenario.ts';
import type { DayNumber } from '../../vocabulary/units.ts';
import { byContent, byPosition, byText, inOrder, type Order } from './canonical-order.ts';
import { type CellKind, DATE, number, TEXT } from './cell-kinds.ts';
import type { IntakeReport } from './intake-report.ts';
import { openTable } from './open-records.ts';
import { readLatLon } from './read-position.ts';
import type { KeptRow, RowReader } from './row-reader.ts';

const FORMAT = 'station_id*, lat*, lon*, elevation_m, date*, tmin_c*, tmax_c*, rain_mm*';
/** Wider than any station's record (WMO archive: -89.2 and 56.7 °C; 1,825 mm in a day): beyond it a value is a slip. */
const CELSIUS = number({ atLeast: -90, atMost: 60 });
const RAIN_MM = number({ atLeast: 0, atMost: 1825 });
/** Maxima above this are rare anywhere (Niamey's hottest day in forty years: 47.5 °C); a tenth of them is another unit. */
const RARELY_ABOVE_C = 50;
const MOST_ABOVE = 0.1;

interface WeatherDay {
  readonly row: number;
  /** The maximum as sent, in whatever unit and range. */
  readonly sentMax: number;
  readonly day: DayNumber;
  readonly position: Position;
  readonly elevationM: number | null;
  readonly tminC: number;
  readonly tmaxC: number;
  readonly rainMm: number;
}

/** Met so often, and where first. */
interface Tally {
  count: number;
  first: WeatherDay | null;
}

/** weather.csv. `lastDay`: the end of the forecast horizon; later rows are ignored and counted. */
export function readWeather(
  report: IntakeReport,
  records: TableRecords | null,
  lastDay: DayNumber,
): KeptRow<WeatherStation>[] {
  if (records === null) return [];
  const stations = new Map<string, WeatherDay[]>();
  let ignored = 0;
  let firstIgnored: number | null = null;
  for (const row of openTable(report, records, FORMAT)) {
    const id = row.required('station_id', TEXT);
    const day = readDay(row);
    if (day === null) continue;
    const days = stations.get(id) ?? [];
    stations.set(id, days);
    days.push(day);
    if (day.day <= lastDay || Number.isNaN(lastDay)) continue;
    ignored++;
    firstIgnored ??= day.row;
  }
  if (ignored > 0) {
    const facts = { count: ignored, lastDay: isoDate(lastDay) };
    report.add('E1900', { file: records.file, row: firstIgnored, column: 'date', facts });
  }
  return [...stations].flatMap(([id, days]) => gatherStation(report, records.file, id, days, lastDay));
}

function readDay(row: RowReader): WeatherDay | null {
  const day: WeatherDay = {
    row: row.row ?? 0,
    sentMax: Number.parseFloat(row.text('tmax_c')),
    day: row.required('date', DATE),
    position: readLatLon(row),
    elevationM: row.orNull('elevation_m', number({ atLeast: -500, atMost: 9000 })),
    tminC: orMissing(row, 'tmin_c', CELSIUS),
    tmaxC: orMissing(row, 'tmax_c', CELSIUS),
    rainMm: orMissing(row, 'rain_mm', RAIN_MM),
  };
  return row.kept(day) === null ? null : day;
}

const orMissing = (row: RowReader, column: string, kind: CellKind<number>): number =>
  row.orNull(column, kind) ?? Number.NaN;

function gatherStation(
  report: IntakeReport,
  file: string,
  id: string,
  sent: readonly WeatherDay[],
  lastDay: DayNumber,
): KeptRow<WeatherStation>[] {
  const { position, elevationM } = mostStatedPlace(report, file, id, sent);
  noteGaps(report, file, id, sent);
  const days = onePerDay(report, file, id, sent).filter(({ day }) => !(day > lastDay));
  const first = days[0];
  if (first === undefined) return [];
  const crossed: Tally = { count: 0, first: null };
  const isFahrenheit = looksFahrenheit(report, file, id, sent);
  const sound = days.map((each) => {
    if (isFahrenheit) return { ...each, tminC: Number.NaN, tmaxC: Number.NaN };
    if (!(each.tminC > each.tmaxC)) return each;
    crossed.count++;
    crossed.first ??= each;
    return { ...each, tminC: Number.NaN, tmaxC: Number.NaN };
  });
  if (crossed.first !== null) {
    const facts = { station: id, count: crossed.count, date: isoDate(crossed.first.day), tmaxC: crossed.first.tmaxC };
    report.add('E1902', { file, row: crossed.first.row, column: 'tmin_c', value: String(crossed.first.tminC), facts });
  }
  const value: WeatherStation = {
    id,
    position,
    elevationM,
    days: Int32Array.from(sound, ({ day }) => day),
    tminC: Float64Array.from(sound, ({ tminC }) => tminC),
    tmaxC: Float64Array.from(sound, ({ tmaxC }) => tmaxC),
    rainMm: Float64Array.from(sound, ({ rainMm }) => rainMm),
  };
  return [{ file, row: first.row, value }];
}

/** °F under a heading of °C: one maximum in ten is hotter than any place on record is more than once in a while. */
function looksFahrenheit(report: IntakeReport, file: string, id: string, sent: readonly WeatherDay[]): boolean {
  const maxima = sent.filter(({ sentMax }) => !Number.isNaN(sentMax));
  const hot = maxima.filter(({ sentMax }) => sentMax > RARELY_ABOVE_C);
  if (hot.length <= MOST_ABOVE * maxima.length) return false;
  const facts = { station: id, share: Math.round((hot.length / maxima.length) * 100), limit: RARELY_ABOVE_C };
  report.add('E1905', { file, row: hot[0]?.row ?? null, column: 'tmax_c', value: String(hot[0]?.sentMax), facts });
  return true;
}

/** Rows with an empty value, in all that was sent. */
function noteGaps(report: IntakeReport, file: string, id: string, sent: readonly WeatherDay[]): void {
  const gaps = sent.filter(({ tminC, tmaxC, rainMm }) => Number.isNaN(tminC + tmaxC + rainMm));
  if (gaps.length === 0) return;
  const missing = (of: (day: WeatherDay) => number) => gaps.filter((day) => Number.isNaN(of(day))).length;
  const facts = {
    station: id,
    count: gaps.length,
    tmin: missing((day) => day.tminC),
    tmax: missing((day) => day.tmaxC),
    rain: missing((day) => day.rainMm),
  };
  report.add('E1901', { file, row: gaps[0]?.row ?? null, facts });
}

/** The position that most rows state; ties go to the smaller as text, so that row order does not matter. */
function mostStatedPlace(report: IntakeReport, file: string, id: string, sent: readonly WeatherDay[]) {
  const places = new Map<string, { readonly day: WeatherDay; count: number }>();
  for (const day of sent) {
    const key = `${day.position.join()},${day.elevationM}`;
    const known = places.get(key);
    if (known === undefined) places.set(key, { day, count: 1 });
    else known.count++;
  }
  const ranked = [...places].sort(([a, x], [b, y]) => y.count - x.count || (a < b ? -1 : 1)).map(([, place]) => place);
  const [most, other] = ranked;
  if (other !== undefined) {
    const facts = { station: id, places: places.size, rows: sent.length - (most?.count ?? 0) };
    report.add('E1904', { file, row: other.day.row, column: 'lat', value: other.day.position.join(';'), facts });
  }
  return (most as { readonly day: WeatherDay }).day;
}

/** By day, each once: the row with most values is kept, then that with the smaller ones, not that which stands first. */
function onePerDay(report: IntakeReport, file: string, id: string, sent: readonly WeatherDay[]): WeatherDay[] {
  const sorted = [...sent].sort((a, b) => a.day - b.day || compareValues(a, b) || a.row - b.row);
  return sorted.filter((each, i) => {
    const before = sorted[i - 1];
    if (before?.day !== each.day) return true;
    report.add('E1903', { file, row: each.row, column: 'date', value: isoDate(each.day), facts: { station: id } });
    return false;
  });
}

function compareValues(a: WeatherDay, b: WeatherDay): number {
  const values = (day: WeatherDay) => [day.tminC, day.tmaxC, day.rainMm];
  const missing = (day: WeatherDay) => values(day).filter(Number.isNaN).length;
  const [x, y] = [values(a), values(b)];
  return missing(a) - missing(b) || x.reduce((found, value, i) => found || value - (y[i] as number) || 0, 0);
}

export const STATION_ORDER: Order<WeatherStation> = inOrder(
  byPosition((station) => station.position),
  byContent(({ id, days, tminC, tmaxC, rainMm, ...content }) => [
    content,
    [days, tminC, tmaxC, rainMm].map((column) => [...column]),
  ]),
  byText((station) => station.id),
);
