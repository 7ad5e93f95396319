import type { Problem } from '../../../engine/index.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useWords } from '../../state/use-stores.ts';

/** What does not hold of an entry, with its code and what to do. */
export function ToldProblems({ problems }: { readonly problems: readonly Problem[] }) {
  const words = useWords();
  if (problems.length === 0) return null;
  return (
    <div role="alert">
      <ul className="entry-problems">
        {problems.map((problem) => {
          const { what, remedy } = words.problemOf[problem.code];
          return (
            <li key={`${problem.code} ${problem.column}`}>
              <b className={problem.weight === 'noted' ? '' : 'alarm'}>
                {problem.weight === 'noted'
                  ? paperWords(words).records.notedTitle
                  : paperWords(words).records.problemsTitle}
              </b>{' '}
              {what(problem)} <span className="soft">{remedy}</span> <span className="note">{problem.code}</span>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
