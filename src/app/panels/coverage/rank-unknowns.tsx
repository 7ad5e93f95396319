import { useEffect, useRef, useState } from 'react';
import { Cancelled } from '../../../adapters/workers/cancelled.ts';
import { playInWorkers } from '../../../adapters/workers/play-in-workers.ts';
import { pageWorkers, startPagePlayWorker } from '../../../adapters/workers/start-page-play-worker.ts';
import type { PreparedPlay, RankedUnknowns } from '../../../engine/index.ts';
import { RANKED_OUTCOMES, type RankedOutcome, rankingView } from '../../../presentation/views/coverage-replay.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { UnknownsChart } from '../../charts/unknowns-chart.tsx';
import { useWords } from '../../state/use-stores.ts';
import { useAmounts } from './use-amounts.ts';

/** Rows of each of the two samples: at so many the shares are known to a few hundredths. */
const ROWS = 2048;

/** A share done while it runs, the ranking when it is done. */
type Standing = number | RankedUnknowns | { readonly failed: string } | null;

/** Which unknowns make the spread: worked out on request, beside the page, and called off where that is wanted. */
export function RankUnknowns({ prepared }: { readonly prepared: PreparedPlay }) {
  const { page } = paperWords(useWords()).replay;
  const { amount } = useAmounts();
  const [standing, setStanding] = useState<Standing>(null);
  const calledOff = useRef<AbortController | null>(null);
  useEffect(() => () => calledOff.current?.abort(), []);
  const rank = async () => {
    const abort = new AbortController();
    calledOff.current = abort;
    setStanding(0);
    try {
      const order = { kind: 'unknowns', ask: { outcomes: RANKED_OUTCOMES, rows: ROWS, seed: 1 } } as const;
      const workforce = { start: startPagePlayWorker, workers: pageWorkers(), signal: abort.signal };
      setStanding(await playInWorkers(prepared, order, { ...workforce, progress: setStanding }));
    } catch (error) {
      if (error instanceof Cancelled) setStanding(null);
      else setStanding({ failed: error instanceof Error ? error.message : String(error) });
    }
  };
  return (
    <section className="replay-rank" aria-live="polite">
      <h2>{page.rankTitle}</h2>
      {typeof standing === 'number' ? (
        <p className="replay-running">
          <progress value={standing} max={1} aria-label={page.ranking} />
          <span className="tabular">{`${amount(100 * standing)}\u00a0%`}</span>
          <button type="button" className="edged" onClick={() => calledOff.current?.abort()}>
            {page.cancel}
          </button>
        </p>
      ) : standing === null || 'failed' in standing ? (
        <p>
          <button type="button" className="edged" onClick={() => void rank()}>
            {page.rank}
          </button>{' '}
          <span className="note">{standing?.failed ?? page.rankWhy}</span>
        </p>
      ) : (
        <Ranked ranked={standing as RankedUnknowns} />
      )}
    </section>
  );
}

function Ranked({ ranked }: { readonly ranked: RankedUnknowns }) {
  const words = paperWords(useWords()).replay;
  const { page } = words;
  const { amount } = useAmounts();
  const [outcome, setOutcome] = useState<RankedOutcome>('programmeNitrogenKg');
  const { rows, little, most } = rankingView(ranked, outcome);
  const [first, second] = most.unknowns.map((unknown) => words.unknowns[unknown]);
  const share = `${amount(most.percent)}\u00a0%`;
  const said =
    first === undefined
      ? page.noSpread
      : second === undefined
        ? page.most(first, share)
        : page.mostTwo(first, second, share);
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a row of two buttons needs no box around it */}
      <span className="switch" role="group" aria-label={page.rankOf}>
        {RANKED_OUTCOMES.map((name) => (
          <button key={name} type="button" aria-pressed={name === outcome} onClick={() => setOutcome(name)}>
            {words.unknownsOf[name]}
          </button>
        ))}
      </span>
      <p>{said}</p>
      {rows.length > 0 && <UnknownsChart rows={rows} />}
      <p className="note">
        {page.rankWhy}{' '}
        {little.length > 0 &&
          rows.length > 0 &&
          page.others(little.map((unknown) => words.unknowns[unknown]).join('; '))}{' '}
        {page.rankMethod(amount(ROWS))}
      </p>
    </>
  );
}
