import { useState } from 'react';
import type { PlanAsMade, ReplayAnswer } from '../../../adapters/workers/worker-messages.ts';
import type { ReplayedPlan } from '../../../engine/index.ts';
import { comparedPlans } from '../../../presentation/views/coverage-replay.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { useAmounts } from './use-amounts.ts';

/** Another plan, by the name that a reader knows it by: played, being played, or why not. */
interface Beside {
  readonly name: string;
  readonly told: ReplayedPlan | 'asking' | 'unfit' | 'not-json';
}

/** This plan beside another: the one before it, itself held for rain, or one from a file. */
export function ComparePlans({ played }: { readonly played: ReplayAnswer }) {
  const { page } = paperWords(useWords()).replay;
  const { planBefore, plannedFrom, askReplay } = useSeason();
  const [beside, setBeside] = useState<Beside | null>(null);
  const compare = async (name: string, other: PlanAsMade<unknown>) => {
    setBeside({ name, told: 'asking' });
    setBeside({ name, told: (await askReplay(other))?.other ?? 'unfit' });
  };
  const compareFile = async (file: File) => {
    const document = parse(await file.text());
    if (document === undefined) setBeside({ name: file.name, told: 'not-json' });
    else await compare(file.name, { plan: document, decisions: plannedFrom?.decisions ?? [] });
  };
  return (
    <section className="replay-compare" aria-live="polite">
      <h2>{page.compareTitle}</h2>
      <p className="replay-choose">
        {planBefore && (
          <button type="button" className="edged" onClick={() => void compare(page.before, planBefore)}>
            {page.compareBefore}
          </button>
        )}
        <button
          type="button"
          className="edged"
          onClick={() => setBeside({ name: page.released, told: played.released })}
        >
          {page.compareReleased}
        </button>
        <label className="edged file-input">
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const file = event.target.files?.[0];
              if (file) void compareFile(file);
              event.target.value = '';
            }}
          />
          {page.compareFile}
        </label>
      </p>
      {beside?.told === 'asking' && <p className="note">{page.asking}</p>}
      {beside?.told === 'unfit' && <p className="note">{page.unfit(beside.name)}</p>}
      {beside?.told === 'not-json' && <p className="note">{page.notJson(beside.name)}</p>}
      {beside && typeof beside.told === 'object' && (
        <Compared name={beside.name} printed={played.printed} other={beside.told} />
      )}
    </section>
  );
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

interface ComparedProps {
  readonly name: string;
  readonly printed: ReplayedPlan;
  readonly other: ReplayedPlan;
}

function Compared({ name, printed, other }: ComparedProps) {
  const { page } = paperWords(useWords()).replay;
  const { amount, hectares } = useAmounts();
  const scenario = useSeason((season) => season.scenario);
  if (scenario === null) return null;
  const { seasons, scaleHa, more, fewer, same, meanHa } = comparedPlans(printed, other, scenario);
  const signed = (ha: number) => `${ha >= 0.05 ? '+' : ''}${amount(ha, 1)}`;
  const count = (value: number) => amount(value);
  return (
    <>
      <p>
        {page.comparing(name)}{' '}
        <b>
          {more + fewer === 0
            ? page.compareSame
            : page.compareSum(count(more), count(fewer), count(same), signed(meanHa))}
        </b>
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="season-table" aria-label={page.comparing(name)} tabIndex={0}>
        <table className="ruled compared">
          <thead>
            <tr>
              <th scope="col">{page.season}</th>
              {[page.thisHa, page.otherHa, page.moreHa].map((head) => (
                <th key={head} scope="col" className="number">
                  {head}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {seasons.map(({ year, label, thisHa, otherHa, moreHa }) => (
              <tr key={year}>
                <th scope="row">{label}</th>
                <td className="number">{hectares(thisHa)}</td>
                <td className="number">{hectares(otherHa)}</td>
                <td className="number">{signed(moreHa)}</td>
                <td className="compared-bar">
                  <svg width="100%" height="12" aria-hidden="true">
                    <line className="chart-axis" x1="50%" x2="50%" y1="0" y2="12" />
                    <rect
                      className={moreHa < 0 ? 'compared-fewer' : 'compared-more'}
                      x={`${moreHa < 0 ? 50 + (49 * moreHa) / scaleHa : 50}%`}
                      y="2"
                      width={`${(49 * Math.abs(moreHa)) / scaleHa}%`}
                      height="8"
                    />
                  </svg>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p className="note">{page.compareHonest}</p>
    </>
  );
}
