import type { CalendarColumn } from '../../presentation/views/days-axis.ts';

/** Widths of the columns that season strip and calendar share, so that their days stand under each other to the pixel. */
export function DayColumns({ columns }: { readonly columns: readonly CalendarColumn[] }) {
  return (
    <colgroup>
      <col className="col-name" />
      <col className="col-note" />
      {columns.map(({ kind, day }) => (
        <col key={day.offset} className={`col-${kind}`} />
      ))}
    </colgroup>
  );
}
