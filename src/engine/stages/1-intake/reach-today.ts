import { isoDate, parseIsoDate } from '../../vocabulary/calendar.ts';
import type { ScenarioRecords } from '../../vocabulary/records.ts';
import { dayNumber } from '../../vocabulary/units.ts';
import type { IntakeReport } from './intake-report.ts';
import { entryAt } from './open-document.ts';
import type { ScenarioDocument } from './read-document.ts';

/**
 * What scenario.json says, moved on to the last day that decisions closed, never back. Days that are over are not planned any
 * more: planning begins on the day after all that is known.
 */
export function reachToday(report: IntakeReport, stated: ScenarioDocument, records: ScenarioRecords): ScenarioDocument {
  const asOf = closedDays(records.decisions?.value).reduce((latest, day) => Math.max(latest, day), stated.asOf);
  const { from, to } = stated.planning;
  if (!(asOf >= from)) return { ...stated, asOf: dayNumber(asOf) };
  const file = records.document?.file ?? null;
  const next = dayNumber(asOf + 1);
  report.add('E1207', {
    file,
    column: 'planning.from',
    value: isoDate(from),
    facts: { asOf: isoDate(dayNumber(asOf)) },
  });
  if (next > to && from <= to) {
    report.add('E1202', { file, column: 'planning.to', value: isoDate(to), facts: { from: isoDate(next) } });
  }
  return { ...stated, asOf: dayNumber(asOf), planning: { ...stated.planning, from: next } };
}

/** Days of the decisions that close one, before the decisions themselves are read: everything else is judged by the day reached. */
function closedDays(decisions: unknown): number[] {
  const list = entryAt(decisions, 'decisions');
  return (Array.isArray(list) ? list : []).flatMap((entry) => {
    const date = entryAt(entry, 'kind') === 'day-closed' ? entryAt(entry, 'date') : null;
    const day = typeof date === 'string' ? parseIsoDate(date.trim()) : null;
    return day === null ? [] : [day];
  });
}
