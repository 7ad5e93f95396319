import type { ReactNode } from 'react';
import type { PeriodDay } from '../../../../presentation/views/days-period.ts';

interface DayColumnsProps {
  readonly days: readonly PeriodDay[];
  /** ISO date of the column that is framed. */
  readonly shown: string;
  readonly className?: string;
  /** The cell of a workday. */
  readonly children: (day: PeriodDay) => ReactNode;
}

/** One cell a day of a row, with a narrow one for days without work. The day shown and the end of what is known are marked. */
export function DayColumns({ days, shown, className = '', children }: DayColumnsProps) {
  return days.map((day) => (
    <td key={day.iso} className={`${className} ${columnMarks(day, days, shown)}`}>
      {day.works && children(day)}
    </td>
  ));
}

/** Class names of a day's column. */
export function columnMarks(day: PeriodDay, days: readonly PeriodDay[], shown: string): string {
  const marks = [day.works ? 'is-day' : 'is-gap'];
  if (day.iso === shown) marks.push('is-shown');
  if (day.isKnown && days[day.offset + 1]?.isKnown === false) marks.push('is-last-known');
  return marks.join(' ');
}
