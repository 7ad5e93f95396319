import type { RoutingInstance } from '../../engine/index.ts';
import { amountAt, countAt, InstanceFault, numberAt, vehicleNumbers } from './instance-fault.ts';
import { lengthsBetween, TENTHS } from './rounding.ts';

/** Solomon's text (1987, Oper. Res. 35:254) and its larger kin: vehicles and capacity, then a row a place, the depot first. */
export function readSolomonText(lines: readonly string[]): RoutingInstance {
  const rows = lines.map((text, i) => ({ line: i + 1, words: text.trim().split(/\s+/) }));
  const begins = (word: string) => {
    const row = rows.find(({ words }) => words[0]?.toUpperCase() === word);
    if (!row) throw new InstanceFault(`There is no line ${word}.`);
    return row.line;
  };
  const numeric = (row: { words: readonly string[] }) => /^[-+.\d]/.test(row.words[0] ?? '');
  const fleet = rows.slice(begins('NUMBER')).find(numeric);
  const number = countAt(fleet?.words[0], fleet?.line ?? 0, 'the number of vehicles');
  const capacity = amountAt(fleet?.words[1], fleet?.line ?? 0, 'the capacity');
  const places = rows.slice(begins('CUSTOMER')).filter(numeric);
  if (places.length < 2) throw new InstanceFault('There are no customers.');
  const column = (at: number, what: string) => places.map(({ words, line }) => numberAt(words[at], line, what));
  const scaled = (at: number, what: string) => Float64Array.from(column(at, what), (v) => v * TENTHS.scale);
  const lengths = lengthsBetween(column(1, 'x'), column(2, 'y'), TENTHS);
  return {
    name: lines[0]?.trim() ?? '',
    places: places.length,
    lengths,
    minutes: lengths,
    demand: Float64Array.from(places, ({ words, line }) => amountAt(words[3], line, 'the demand')),
    opens: scaled(4, 'the ready time'),
    closes: scaled(5, 'the due date'),
    service: scaled(6, 'the service time'),
    release: new Float64Array(places.length),
    vehicleTypes: [
      {
        numbers: vehicleNumbers(1, number, places.length - 1),
        capacity,
        fixedCost: 0,
        costPerLength: 1,
        mostMinutes: Number.POSITIVE_INFINITY,
        mayVisit: null,
      },
    ],
    mayReload: false,
    timed: true,
    costUnits: TENTHS.scale,
  };
}
