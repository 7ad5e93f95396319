import { useId } from 'react';
import type { Plan, Scenario } from '../../../engine/index.ts';
import { changeRate, type SeedRate, seedRates, stockAgainstNeed } from '../../../presentation/views/stock-rates.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';

/** Seed rates as controls: need, headline and map follow at once; the plan itself waits for the next planning. */
export function SeedRates({ plan, scenario }: { readonly plan: Plan; readonly scenario: Scenario }) {
  const words = useWords();
  const decisions = useSeason((season) => season.decisions);
  const needs = useSeason((season) => season.changedNeeds);
  return (
    <section className="rule-line seed-rates" aria-label={words.stock.seedRates}>
      <p className="soft">{words.stock.seedRates}</p>
      {seedRates(plan, scenario, decisions, words).map((rate) => (
        <RateField key={rate.crop} rate={rate} />
      ))}
      <p role="status" className="firm">
        {needs && stockAgainstNeed(plan, scenario, needs, words)}
      </p>
    </section>
  );
}

function RateField({ rate }: { readonly rate: SeedRate }) {
  const id = useId();
  const decide = useSeason((season) => season.decide);
  return (
    <p>
      <label htmlFor={id}>{rate.name}</label>{' '}
      <input
        id={id}
        type="number"
        min={1}
        max={500}
        step="any"
        className={rate.isChanged ? 'rate is-changed' : 'rate'}
        key={rate.kgPerHa}
        defaultValue={rate.kgPerHa}
        onChange={({ target }) => {
          const kgPerHa = target.valueAsNumber;
          if (target.validity.valid && kgPerHa !== rate.kgPerHa) decide(changeRate(rate.crop, kgPerHa));
        }}
      />
    </p>
  );
}
