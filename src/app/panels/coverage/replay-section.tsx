import { worstSeasonTexts } from '../../../presentation/views/coverage-replay.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { ComparePlans } from './compare-plans.tsx';
import './replay.css';
import { RankUnknowns } from './rank-unknowns.tsx';
import { useReplay } from './use-replay.ts';

/** What past seasons would have made of the plan: the worst explained, what makes the spread, another plan beside it. */
export function ReplaySection() {
  const words = useWords();
  const { page, sameSeasons } = paperWords(words).replay;
  const { plan, scenario } = useSeason();
  const replay = useReplay();
  if (!plan || !scenario || plan.season.memberYears.length === 0) return null;
  if (replay === 'asking' || replay === null)
    return (
      <p className="note replay-wait" role="status">
        {replay === null ? page.noAnswer : page.asking}
      </p>
    );
  return (
    <div className="replay">
      <section className="replay-worst">
        <h2>{page.worstTitle}</h2>
        <ul>
          {worstSeasonTexts(replay, scenario, words).map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        <p className="note">{sameSeasons}</p>
      </section>
      <RankUnknowns key={plan.stageHashes['outcomes']} prepared={replay.prepared} />
      <ComparePlans key={`beside ${plan.stageHashes['outcomes']}`} played={replay} />
    </div>
  );
}
