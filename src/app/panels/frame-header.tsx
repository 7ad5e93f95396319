import { asOfText, seasonText } from '../../presentation/views/frame-view.ts';
import { addressOfPlace } from '../state/address.ts';
import { useChangedInputs, useSeason, useView, useWords } from '../state/use-stores.ts';
import type { ViewName } from '../state/view-store.ts';
import { FilesMenu } from './files-menu.tsx';
import { OwnMark } from './own-mark.tsx';

const TABS: readonly ViewName[] = ['stock', 'days', 'coverage'];

/** One line: whose season this is, the three views, whether the plan is current, and what can be done with it. */
export function FrameHeader() {
  const words = useWords();
  const scenario = useSeason((season) => season.scenario);
  return (
    <header className="header">
      <span className="name">
        <OwnMark />
        {words.frame.name}
      </span>
      <FilesMenu />
      {scenario && (
        <span className="of-season">
          {words.frame.season} <b>{seasonText(scenario)}</b>
        </span>
      )}
      {scenario && (
        <span className="of-season">
          {words.frame.asOf} <b>{asOfText(scenario, words)}</b>
        </span>
      )}
      <Tabs />
      <span className="spring" />
      <PlanState />
      <Actions />
    </header>
  );
}

function Tabs() {
  const words = useWords();
  const place = useView();
  return (
    <nav className="tabs" aria-label={words.frame.viewsLabel}>
      {TABS.map((view) => (
        <a
          key={view}
          href={addressOfPlace({ ...place, view })}
          aria-current={place.view === view ? 'page' : undefined}
          onClick={(event) => {
            if (event.metaKey || event.ctrlKey || event.shiftKey) return;
            event.preventDefault();
            place.go({ view });
          }}
        >
          {words.frame.views[view]}
        </a>
      ))}
    </nav>
  );
}

function PlanState() {
  const words = useWords();
  const changed = useChangedInputs();
  const { plan, read, planning, replan } = useSeason();
  if (read === null) return null;
  const canPlan = read.scenario !== null && planning === null;
  return (
    <span className="plan-state">
      {plan === null && <span>{words.frame.notPlanned}</span>}
      {plan !== null && changed === 0 && (
        <span>
          {words.frame.planIs} <b>{words.frame.current}</b>
        </span>
      )}
      {changed > 0 && (
        <span>
          <b>{words.frame.inputsChanged(changed)}</b>
        </span>
      )}
      {(plan === null || changed > 0) && (
        <button type="button" className="strong" disabled={!canPlan} onClick={() => void replan()}>
          {plan === null ? words.frame.plan : words.frame.replan}
        </button>
      )}
    </span>
  );
}

function Actions() {
  const words = useWords();
  const { decisions, undone, undo, redo, findings } = useSeason();
  const { theme, setTheme, language, setLanguage } = useView();
  const isDark = theme === 'dark';
  return (
    <span className="actions header-actions">
      <button type="button" className="quiet" disabled={decisions.length === 0} onClick={() => undo()}>
        {words.frame.undo}
      </button>
      <button type="button" className="quiet" disabled={undone.length === 0} onClick={redo}>
        {words.frame.redo}
      </button>
      <button type="button" className="quiet" disabled={(findings ?? []).length > 0} onClick={() => window.print()}>
        {words.frame.print}
      </button>
      <select
        className="quiet"
        aria-label={words.frame.languageLabel}
        value={language}
        onChange={(event) => setLanguage(event.target.value === 'pseudo' ? 'pseudo' : 'english')}
      >
        {/* Languages are written in themselves. */}
        <option value="english">English</option>
        <option value="pseudo">Pšéúdó</option>
      </select>
      <button type="button" className="quiet" onClick={() => setTheme(isDark ? 'light' : 'dark')}>
        {isDark ? words.frame.light : words.frame.dark}
      </button>
    </span>
  );
}
