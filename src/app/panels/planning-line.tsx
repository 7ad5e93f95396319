import { useEffect, useState } from 'react';
import { grouped } from '../../presentation/grouped-figure.ts';
import { PLAN_STAGES } from '../state/stage-order.ts';
import { useSeason, useView, useWords } from '../state/use-stores.ts';

/** What is going on, above the answer: reading, planning, what went wrong, what the check found. */
export function PlanningLine() {
  const opening = useSeason((season) => season.opening);
  const planning = useSeason((season) => season.planning !== null);
  return (
    <div className="lines">
      {opening && <OpeningLine />}
      {planning && <RunningLine />}
      <NoticeLine />
      <FindingsLine />
    </div>
  );
}

function OpeningLine() {
  const words = useWords();
  return (
    <p className="line" role="status">
      {words.planning.opening}
    </p>
  );
}

function RunningLine() {
  const words = useWords();
  const planning = useSeason((season) => season.planning);
  const cancel = useSeason((season) => season.cancel);
  const best = useBest(planning?.best ?? null);
  if (planning === null) return null;
  const { stages, stageOf, starting } = words.planning;
  const number = PLAN_STAGES.indexOf(planning.stage) + 2;
  const name = stages[planning.stage];
  const percent = Math.round(planning.share * 100);
  return (
    <div className="line">
      <span>
        <b>{words.planning.planning}</b>, {name === undefined ? starting : stageOf(stageNumber(number), 7, name)}
      </span>
      <progress value={planning.share} max={1} aria-label={words.planning.planning}>
        {words.planning.share(percent)}
      </progress>
      <span className="tabular">{words.planning.share(percent)}</span>
      {planning.best !== null && (
        <span className="tabular">
          {words.planning.best} <b>{grouped(planning.best)}</b> {words.planning.bestUnit}
        </span>
      )}
      {best.length > 1 && <BestLine values={best} />}
      <button type="button" className="edged" onClick={cancel}>
        {words.planning.cancel}
      </button>
    </div>
  );
}

/** Allocation and delivery run under one name until the search tells of itself. */
const stageNumber = (number: number) => Math.min(7, Math.max(2, number));

/** The best values told so far, for the falling line. */
function useBest(best: number | null): readonly number[] {
  const [values, setValues] = useState<readonly number[]>([]);
  useEffect(() => {
    setValues((before) => (best === null ? [] : [...before, best].slice(-200)));
  }, [best]);
  return values;
}

function BestLine({ values }: { readonly values: readonly number[] }) {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const points = values.map((value, i) => {
    const x = (i / (values.length - 1)) * 80;
    const y = high === low ? 16 : 2 + (1 - (value - low) / (high - low)) * 14;
    return `${x.toFixed(1)},${(18 - y).toFixed(1)}`;
  });
  return (
    <svg width="80" height="18" viewBox="0 0 80 18" aria-hidden="true">
      <polyline points={points.join(' ')} fill="none" stroke="currentColor" strokeWidth="1.5" />
    </svg>
  );
}

function NoticeLine() {
  const words = useWords();
  const { notice, dismiss, replan, plan } = useSeason();
  if (notice === null) return null;
  const text = {
    cancelled: () => words.planning.cancelled,
    'other-plan': () => words.planning.otherPlan,
    failed: () => (plan === null ? '' : words.planning.failedKept),
    'no-scenario-in': () => words.empty.noScenarioIn('text' in notice ? notice.text : ''),
    strangers: () => words.empty.strangers('text' in notice ? notice.text : ''),
  }[notice.kind]();
  return (
    <div className="line" role="status">
      <span>
        {notice.kind === 'failed' && (
          <>
            <b className="alarm">{words.planning.failed}</b> {notice.text}.{' '}
          </>
        )}
        {text}
      </span>
      {(notice.kind === 'failed' || notice.kind === 'cancelled') && (
        <button type="button" className="edged" onClick={() => void replan()}>
          {words.planning.again}
        </button>
      )}
      <button type="button" className="edged" onClick={dismiss}>
        {words.planning.dismiss}
      </button>
    </div>
  );
}

/** The independent check disagrees: the plan is shown, and marked. */
function FindingsLine() {
  const words = useWords();
  const findings = useSeason((season) => season.findings);
  const go = useView((view) => view.go);
  const first = findings?.[0];
  if (!first) return null;
  return (
    <div className="line" role="status">
      <span>
        <b className="alarm">{words.planning.checkFound(findings.length)}</b> {words.problemOf[first.code].what(first)}
      </span>
      <button type="button" className="edged" onClick={() => go({ view: 'problems' })}>
        {words.planning.showIt}
      </button>
      <span className="note">
        {first.code}. {words.planning.printWaits}
      </span>
    </div>
  );
}
