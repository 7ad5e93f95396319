import { countProblems, type ProblemEntry, problemEntries } from '../../../presentation/views/problem-view.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { plainPicture } from '../../map/plain-picture.ts';
import { rememberLast } from '../../state/remember-last.ts';
import type { SeasonState } from '../../state/season-state.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { FileTable } from './file-table.tsx';
import { ProblemList } from './problem-list.tsx';

/** What the check found comes first, then what was met while reading and planning. */
const entriesOf = rememberLast(
  (
    plan: SeasonState['plan'],
    read: SeasonState['read'],
    findings: SeasonState['findings'],
    stale: boolean,
    words: Words,
  ): readonly ProblemEntry[] => {
    const met = plan && !stale ? plan.problems : (read?.problems ?? []);
    return problemEntries([...(findings ?? []), ...met], words);
  },
);

export function useProblemEntries(): readonly ProblemEntry[] {
  const words = useWords();
  const { plan, read, findings, plannedFrom, files } = useSeason();
  return entriesOf(plan, read, findings, plannedFrom?.files !== files, words);
}

function Answer() {
  const words = useWords();
  const files = useSeason((season) => season.files.size);
  const { blocks, setAside, noted } = countProblems(useProblemEntries());
  const { problems } = words;
  const answer =
    blocks > 0
      ? problems.blocked(files, blocks)
      : setAside + noted > 0
        ? problems.open(files, setAside, noted)
        : problems.none(files);
  return (
    <>
      <h1>{answer}</h1>
      <p>{problems.explain}</p>
    </>
  );
}

function Panel() {
  return <ProblemList entries={useProblemEntries()} />;
}

function Chart() {
  return <FileTable entries={useProblemEntries()} />;
}

export const PROBLEMS: ViewParts = {
  Answer,
  Panel,
  Chart,
  Legend: () => null,
  picture: ({ scenario }) => plainPicture(scenario),
};
