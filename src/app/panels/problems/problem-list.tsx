import { lazy, type ReactNode, Suspense, useState } from 'react';
import { saveFile } from '../../../adapters/browser/save-file.ts';
import { mendableCells, type ProblemEntry, rowsLeftOut } from '../../../presentation/views/problem-view.ts';
import { useSeason, useView, useWords } from '../../state/use-stores.ts';

const MendCells = lazy(async () => ({ default: (await import('./mend-cells.tsx')).MendCells }));

const FIRST_SHOWN = 40;

/** Every problem with where it stands and what to do, heaviest first. */
export function ProblemList({ entries }: { readonly entries: readonly ProblemEntry[] }) {
  const words = useWords();
  const [all, setAll] = useState(false);
  const shown = all ? entries : entries.slice(0, FIRST_SHOWN);
  return (
    <>
      <ListActions entries={entries} />
      <ol className="problems">
        {shown.map((entry, index) => (
          <ProblemItem key={entry.key} entry={entry} number={index + 1} />
        ))}
      </ol>
      {shown.length < entries.length && (
        <button type="button" className="edged" onClick={() => setAll(true)}>
          {words.problems.showAll(entries.length)}
        </button>
      )}
    </>
  );
}

function ListActions({ entries }: { readonly entries: readonly ProblemEntry[] }) {
  const words = useWords();
  const { plan, read, planning, replan } = useSeason();
  const go = useView((view) => view.go);
  const canPlan = plan === null && read?.scenario !== null && planning === null;
  const save = async () => {
    const { problemsCsv } = await import('../../../presentation/exports/problems-csv.ts');
    saveFile('problems.csv', problemsCsv(entries.flatMap(({ problems }) => problems)));
  };
  return (
    <p className="actions list-actions">
      {canPlan && (
        <button
          type="button"
          className="strong"
          onClick={() => {
            go({ view: 'stock' });
            void replan();
          }}
        >
          {words.problems.planNow}
        </button>
      )}
      {entries.length > 0 && (
        <button type="button" className="edged" onClick={() => void save()}>
          {words.problems.saveList}
        </button>
      )}
      <span className="note">{words.problems.orDrop}</span>
    </p>
  );
}

function ProblemItem({ entry, number }: { readonly entry: ProblemEntry; readonly number: number }) {
  const words = useWords();
  const [mending, setMending] = useState(false);
  const cells = mendableCells(entry);
  return (
    <li className={mending ? 'is-mending' : ''}>
      <span className="problem-number tabular">{number}</span>
      <div className="problem-body">
        <p className="problem-place">
          <b className={entry.weight === 'noted' ? '' : 'alarm'}>{words.problems.weights[entry.weight]}</b>{' '}
          <Place entry={entry} />
        </p>
        <p>
          {entry.what} <span className="soft">{entry.remedy}</span>
        </p>
        {mending && (
          <Suspense>
            <MendCells entry={entry} onDone={() => setMending(false)} />
          </Suspense>
        )}
      </div>
      {cells.length > 0 && (
        <button type="button" className="edged" aria-expanded={mending} onClick={() => setMending(!mending)}>
          {words.problems.mend}
          <span className="unseen"> {number}</span>
        </button>
      )}
    </li>
  );
}

function Place({ entry }: { readonly entry: ProblemEntry }): ReactNode {
  const words = useWords().problems;
  const more = rowsLeftOut(entry);
  return (
    <>
      <b>{entry.file ?? words.inThePlan}</b>
      {entry.rows !== '' && `, ${entry.rowCount === 1 ? words.row(entry.rows) : words.rows(entry.rows)}`}
      {more > 0 && ` ${words.andMore(more)}`}
      {entry.column !== null && (
        <>
          , <b>{entry.column}</b>
        </>
      )}
      {entry.value !== null && entry.file !== null && (
        <>
          : <span className="met">{entry.value === '' ? words.empty : entry.value}</span>
        </>
      )}{' '}
      <span className="note">{entry.code}</span>
    </>
  );
}
