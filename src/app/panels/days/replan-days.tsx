import { changesView } from '../../../presentation/views/days-changes.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useChangedInputs, useSeason, useWords } from '../../state/use-stores.ts';

/** Plans the days alone again after a change on the road, and says whose goods come otherwise. */
export function ReplanDays() {
  const words = useWords();
  const { changes } = paperWords(words).runs;
  const changed = useChangedInputs();
  const { plan, scenario, difference, planning, replanDays, dismissDifference } = useSeason();
  if (plan === null || scenario === null) return null;
  const told = difference && changesView(difference, plan, scenario, words);
  return (
    <section className="replan-days" aria-live="polite">
      {changed > 0 && planning === null && (
        <p>
          <button type="button" className="edged" onClick={() => void replanDays()}>
            {changes.replan}
          </button>{' '}
          <span className="note">{changes.replanNote}</span>
        </p>
      )}
      {told && (
        <>
          <h2>{changes.title}</h2>
          <p>
            <b>{told.headline}</b>{' '}
            <button type="button" className="link" onClick={dismissDifference}>
              {words.planning.dismiss}
            </button>
          </p>
          <ul className="note">
            {[...told.vehicles, ...told.communities].map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
