import { careTexts, stepTexts } from '../../../presentation/papers/coating-guide.ts';
import type { CommunityTask } from '../../../presentation/papers/community-task.ts';
import type { PaperCase } from '../../../presentation/papers/paper-case.ts';
import { PaperText } from '../paper-text.tsx';

interface CoatingStepsProps {
  readonly c: PaperCase;
  readonly task: Pick<CommunityTask, 'crops' | 'coatings'>;
}

/** The steps of coating, to be ticked off, and what to take care of. */
export function CoatingSteps({ c, task }: CoatingStepsProps) {
  const { stepsTitle, careTitle } = c.said.community;
  return (
    <>
      {task.coatings.length > 0 && (
        <section>
          <h2>{stepsTitle}</h2>
          <ol className="coating-steps">
            {stepTexts(c, task).map((step) => (
              <li key={step}>
                <label>
                  <input type="checkbox" /> <span>{step}</span>
                </label>
              </li>
            ))}
          </ol>
        </section>
      )}
      <section className="care">
        <h2>{careTitle}</h2>
        {careTexts(c).map((text) => (
          <p key={JSON.stringify(text)}>
            <PaperText text={text} />
          </p>
        ))}
        <p>
          <b>{c.said.road.labelWins}</b>
        </p>
      </section>
    </>
  );
}
