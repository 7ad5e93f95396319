import { useSeason, useWords } from '../state/use-stores.ts';
import { FileInput } from './files-menu.tsx';
import { PlanningLine } from './planning-line.tsx';

/** Nothing is open: what stands here, and what it needs. */
export function EmptyPage() {
  const words = useWords();
  const opening = useSeason((season) => season.opening);
  return (
    <div className="told empty-page">
      <PlanningLine />
      {!opening && (
        <section className="answer" id="answer" tabIndex={-1}>
          <h1>{words.empty.title}</h1>
          <p>{words.empty.what}</p>
          <p className="note">{words.empty.needs}</p>
          <p className="actions">
            <FileInput label={words.frame.openFolder} folder className="strong" />
            <FileInput label={words.frame.openZip} accept=".zip" className="edged" />
          </p>
        </section>
      )}
    </div>
  );
}

/** The files are read, but there is no plan to show. */
export function NotPlanned() {
  const words = useWords();
  const { read, planning, replan } = useSeason();
  const blocked = read?.scenario === null;
  return (
    <>
      <h1>{blocked ? words.planning.blocked : words.empty.notPlannedTitle}</h1>
      {!blocked && <p>{words.empty.notPlanned}</p>}
      {!blocked && planning === null && (
        <p className="actions">
          <button type="button" className="strong" onClick={() => void replan()}>
            {words.frame.plan}
          </button>
        </p>
      )}
    </>
  );
}
