import { type FormEvent, useId } from 'react';
import { saveFile } from '../../../adapters/browser/save-file.ts';
import { mendableCells, type ProblemEntry } from '../../../presentation/views/problem-view.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';

/** New values for the cells that did not hold: written to the copy in the page, then all is read again. */
export function MendCells({ entry, onDone }: { readonly entry: ProblemEntry; readonly onDone: () => void }) {
  const words = useWords().problems;
  const { files, replaceFiles } = useSeason();
  const id = useId();
  const file = entry.file ?? '';
  const column = entry.column ?? '';
  const bytes = files.get(file);

  async function mend(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const said = new FormData(event.currentTarget);
    if (bytes === undefined) return;
    const { mendTable } = await import('../../../adapters/browser/mend-table.ts');
    const cells = mendableCells(entry).map(({ row }) => ({ row, column, value: String(said.get(String(row)) ?? '') }));
    await replaceFiles(new Map([[file, mendTable(bytes, cells)]]));
    onDone();
  }

  return (
    <form className="mend" onSubmit={(event) => void mend(event)}>
      <table className="ruled">
        <thead>
          <tr>
            <th scope="col">{words.row('')}</th>
            <th scope="col">{words.asSent}</th>
            <th scope="col" id={id}>
              {words.newValue}
            </th>
          </tr>
        </thead>
        <tbody>
          {mendableCells(entry).map(({ row, value }) => (
            <tr key={row}>
              <th scope="row" id={`${id}-${row}`}>
                {row}
              </th>
              <td className="alarm">{value === null || value === '' ? words.empty : value}</td>
              <td>
                <input name={String(row)} defaultValue={value ?? ''} aria-labelledby={`${id} ${id}-${row}`} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="actions">
        <button type="submit" className="strong">
          {words.useValues}
        </button>
        <button
          type="button"
          className="edged"
          onClick={() => bytes && saveFile(file, new TextDecoder().decode(bytes))}
        >
          {words.saveMended(file)}
        </button>
      </p>
      <p className="note">{words.mendNote}</p>
    </form>
  );
}
