import type { CSSProperties } from 'react';
import type { CalendarColumn } from '../../presentation/views/days-axis.ts';

/** Widths, px. A day stays wide enough to be read and hit; with many days the table is moved within the panel. */
const [NAME, NOTE, DAY, GAP] = [92, 72, 23, 10] as const;
/** About a letter of a zone's name. */
const [LETTER, LONGEST_NAME] = [7.2, 150] as const;

interface DayColumnsProps {
  readonly columns: readonly CalendarColumn[];
  readonly nameWidth: number;
}

/** Columns that season strip and calendar share, so that their days stand under each other to the pixel. */
export function DayColumns({ columns, nameWidth }: DayColumnsProps) {
  return (
    <colgroup>
      <col style={{ width: `${nameWidth}px` }} />
      <col style={{ width: `${NOTE}px` }} />
      {columns.map(({ kind, day }) => (
        <col key={day.offset} className={`col-${kind}`} />
      ))}
    </colgroup>
  );
}

/** Room that the longest of the names takes, within bounds. */
export const nameWidthOf = (names: readonly string[]): number =>
  Math.min(LONGEST_NAME, Math.max(NAME, ...names.map((name) => Math.ceil(name.length * LETTER))));

/** Least width of a table with these columns. */
export function leastWidth(columns: readonly CalendarColumn[], nameWidth: number): CSSProperties {
  const days = columns.filter(({ kind }) => kind === 'day').length;
  return { minWidth: `${nameWidth + NOTE + days * DAY + (columns.length - days) * GAP}px` };
}
