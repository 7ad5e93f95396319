import { lazy, memo, Suspense, useId } from 'react';
import type { EqualOver, Fairness, Plan, Scenario } from '../../../engine/index.ts';
import { localNumber } from '../../../presentation/local-number.ts';
import { sharingRule } from '../../../presentation/views/stock-view.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';

const RULES: readonly Fairness[] = ['equal-share', 'most-hectares', 'priority-first'];
const GrowerShares = memo(lazy(async () => ({ default: (await import('./grower-shares.tsx')).GrowerShares })));
const OVERS: readonly EqualOver[] = ['community', 'zone', 'grower'];

/** How what is short is shared. Choosing is a decision: it counts when the season is planned again. */
export function SharingRules({ plan, scenario }: { readonly plan: Plan; readonly scenario: Scenario }) {
  const words = useWords();
  const { stock } = words;
  const decisions = useSeason((season) => season.decisions);
  const decide = useSeason((season) => season.decide);
  const rule = sharingRule(scenario, decisions, words);
  const name = useId();
  const reserved = plan.allocation.lots.packsReserved.reduce((sum, packs) => sum + packs, 0);
  return (
    <div className="rule-line">
      <fieldset className="rule-choice">
        <legend>{stock.sharingRule}</legend>
        {RULES.map((fairness) => (
          <label key={fairness} className={`rule-option ${fairness === rule.fairness ? 'is-chosen' : ''}`}>
            <input
              type="radio"
              name={name}
              className="unseen"
              checked={fairness === rule.fairness}
              onChange={() => decide({ kind: 'sharing', fairness })}
            />
            {stock.fairness[fairness]}
          </label>
        ))}
      </fieldset>
      {rule.fairness === 'equal-share' && (
        <label>
          <span className="unseen">{stock.equalOverLabel}</span>
          <select
            className="quiet"
            value={rule.equalOver}
            onChange={({ target }) => {
              const equalOver = OVERS.find((over) => over === target.value);
              if (equalOver) decide({ kind: 'sharing', equalOver });
            }}
          >
            {OVERS.map((over) => (
              <option key={over} value={over}>
                {stock.equalOver[over]}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        <span className="soft">{stock.reserve}</span>{' '}
        <input
          type="number"
          className="reserve-input"
          min={0}
          max={100}
          step={1}
          value={rule.reservePercent}
          onChange={({ target }) => {
            const reservePercent = target.valueAsNumber;
            if (reservePercent >= 0 && reservePercent <= 100) decide({ kind: 'sharing', reservePercent });
          }}
        />{' '}
        %
      </label>
      <Figure path="allocation.lots.packsReserved" title={stock.reserveTitle}>
        {stock.packsReserved(localNumber(reserved, words), reserved === 1)}
      </Figure>
      <p className="soft">{rule.floor}</p>
      <Suspense>
        <GrowerShares plan={plan} scenario={scenario} />
      </Suspense>
    </div>
  );
}
