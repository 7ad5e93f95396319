import { useLayoutEffect } from 'react';
import { MapFrame } from './map/map-frame.tsx';
import { DropFiles } from './panels/drop-files.tsx';
import { EmptyPage } from './panels/empty-states.tsx';
import { FrameHeader } from './panels/frame-header.tsx';
import { OpenedFigure } from './panels/opened-figure.tsx';
import { PlanningLine } from './panels/planning-line.tsx';
import { useSeason, useView, useWords } from './state/use-stores.ts';
import { VIEWS } from './views.ts';

/** The page: header, the answer, the map over the chart, and the panel; stacked where the page is narrow. */
export function App() {
  useDocumentMarks();
  const words = useWords();
  const isOpen = useSeason((season) => season.read !== null);
  return (
    <DropFiles>
      <button type="button" className="skip" onClick={() => document.getElementById('answer')?.focus()}>
        {words.frame.skip}
      </button>
      <FrameHeader />
      <main className="frame">{isOpen ? <OpenView /> : <EmptyPage />}</main>
    </DropFiles>
  );
}

function OpenView() {
  const words = useWords();
  const name = useView((view) => view.view);
  const hasFigure = useView((view) => view.figures.length > 0);
  const { Answer, Panel, Chart } = VIEWS[name];
  return (
    <>
      <section className="where" aria-label={words.frame.mapLabel}>
        <MapFrame />
      </section>
      <section className="when" aria-label={words.frame.chartLabel}>
        <Chart />
      </section>
      <div className="told">
        <PlanningLine />
        <section className="answer" id="answer" tabIndex={-1} aria-label={words.frame.answerLabel}>
          <Answer />
        </section>
        {hasFigure && <OpenedFigure />}
        <section className="panel" aria-label={words.frame.panelLabel} hidden={hasFigure}>
          <Panel />
        </section>
      </div>
    </>
  );
}

/** Theme and language stand on the document, where the style sheet and readers look for them. */
function useDocumentMarks(): void {
  const words = useWords();
  const theme = useView((view) => view.theme);
  const view = useView((state) => state.view);
  const name = useSeason((season) => season.scenario?.name ?? null);
  useLayoutEffect(() => {
    document.documentElement.dataset['theme'] = theme;
    document.documentElement.lang = words.language.code;
    document.title = [words.frame.views[view], name, words.frame.name].filter((part) => part !== null).join(' · ');
  }, [theme, words, view, name]);
}
