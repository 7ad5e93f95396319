import { useEffect, useId, useRef, useState } from 'react';
import { type FigureInputRow, figureText, figureView, type StatusMark } from '../../presentation/views/figure-view.ts';
import { useSeason, useStale, useView, useWords } from '../state/use-stores.ts';

/** How a figure was made: formula, inputs with source and status. Lies over the panel; Esc closes it. */
export function OpenedFigure() {
  const words = useWords();
  const plan = useSeason((season) => season.plan);
  const { figures, backFigure, closeFigures } = useView();
  const figure = figures.at(-1);
  const titleId = useId();
  const panel = useFocusWhileOpen(closeFigures);
  const stale = useStale(figure?.path ?? '');
  if (!figure) return null;
  const view = plan && figureView(plan, figure.path, words);
  return (
    <section className="opened" role="dialog" aria-labelledby={titleId} ref={panel} tabIndex={-1}>
      <header className="opened-head">
        <h2 id={titleId}>{figure.title}</h2>
        <span className="actions">
          {figures.length > 1 && (
            <button type="button" className="quiet" onClick={backFigure}>
              {words.figure.back}
            </button>
          )}
          {view && <CopyButton text={() => figureText(view, figure.title, figure.shown, words)} />}
          <button type="button" className="edged" onClick={closeFigures}>
            {words.figure.close} <kbd>{words.figure.esc}</kbd>
          </button>
        </span>
      </header>
      <p className="big-figure">{figure.shown}</p>
      {stale && <p className="alarm note">{words.figure.stale}</p>}
      {view === null ? (
        <p>{words.figure.noProvenance}</p>
      ) : (
        <>
          <h3>{words.figure.formula}</h3>
          <p className="formula">{view.formula}</p>
          <p className="note">
            {words.figure.sourceOfFigure}: {view.source}. <StatusWord row={view} />
          </p>
          {view.inputs.length > 0 && <Inputs rows={view.inputs} />}
        </>
      )}
    </section>
  );
}

function Inputs({ rows }: { readonly rows: readonly FigureInputRow[] }) {
  const words = useWords();
  const openFigure = useView((view) => view.openFigure);
  const { what, value, source, status, opens } = words.figure;
  return (
    <>
      <h3>{words.figure.inputs}</h3>
      <table className="ruled inputs">
        <thead>
          <tr>
            {[what, value, source, status].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.name}|${row.source}`}>
              <th scope="row">{row.name}</th>
              <td>{row.value}</td>
              <td className="note">{row.source}</td>
              <td>
                <StatusWord row={row} />
              </td>
              <td>
                {row.opens !== null && (
                  <button
                    type="button"
                    className="link"
                    aria-label={`${opens}: ${row.name}`}
                    onClick={() => openFigure({ path: row.opens ?? '', title: row.name, shown: row.value })}
                  >
                    {opens}
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function StatusWord({ row }: { readonly row: Pick<FigureInputRow, 'status' | 'mark'> }) {
  const words = useWords();
  const isOurs = row.status === 'assumed' || row.status === 'memory';
  return (
    <span className={`status ${isOurs ? 'alarm' : ''}`}>
      <StatusGlyph mark={row.mark} />
      {words.figure.statuses[row.status]}
    </span>
  );
}

/** Marks that tell one status from another without colour. */
function StatusGlyph({ mark }: { readonly mark: StatusMark }) {
  return (
    <svg className="glyph" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      {mark === 'full' && <rect x="1" y="1" width="10" height="10" fill="currentColor" />}
      {mark !== 'full' && (
        <rect
          x="1.5"
          y="1.5"
          width="9"
          height="9"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.5"
          strokeDasharray={mark === 'dashed' ? '2 1.5' : undefined}
          rx={mark === 'ring' ? 4.5 : 0}
        />
      )}
      {mark === 'inner' && <rect x="4" y="4" width="4" height="4" fill="currentColor" />}
      {mark === 'half' && <path d="M1.500 10.500 10.500 1.500V10.500Z" fill="currentColor" />}
      {mark === 'ring' && <circle cx="6" cy="6" r="1.800" fill="currentColor" />}
    </svg>
  );
}

function CopyButton({ text }: { readonly text: () => string }) {
  const words = useWords();
  const [copied, setCopied] = useState(false);
  const copy = () =>
    navigator.clipboard.writeText(text()).then(
      () => setCopied(true),
      () => setCopied(false),
    );
  return (
    <button type="button" className="edged" onClick={() => void copy()}>
      <span aria-live="polite">{copied ? words.figure.copied : words.figure.copy}</span>
    </button>
  );
}

/** Takes the focus when it opens, closes at Esc, and gives the focus back to what had it. */
function useFocusWhileOpen(close: () => void) {
  const panel = useRef<HTMLElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    panel.current?.focus({ preventScroll: true });
    const onKey = (event: KeyboardEvent) => event.key === 'Escape' && close();
    document.addEventListener('keydown', onKey);
    return () => {
      document.removeEventListener('keydown', onKey);
      // What opened it is shown again only after this panel is gone.
      if (before instanceof HTMLElement) queueMicrotask(() => before.focus());
    };
  }, [close]);
  return panel;
}
