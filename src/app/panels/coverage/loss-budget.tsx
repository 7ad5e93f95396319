import type { Amounts } from '../../../presentation/views/coverage-amounts.ts';
import { type LossBudget, lossBudget } from '../../../presentation/views/coverage-losses.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { useAmounts } from './use-amounts.ts';

/** What living rhizobia lose in the store, on the road, in the community and on the seed, side by side on one scale. */
export function LossBudgetTable() {
  const words = useWords().coverage.losses;
  const { plan, scenario } = useSeason();
  if (!plan || !scenario) return null;
  const view = lossBudget(plan, scenario);
  return (
    <section className="losses">
      <h2>{words.title}</h2>
      {view === null ? <p>{words.none}</p> : <Budget view={view} />}
    </section>
  );
}

function Budget({ view }: { readonly view: LossBudget }) {
  const { amount } = useAmounts();
  const words = useWords().coverage.losses;
  const small = { amount, less: words.lessThan };
  const road = view.steps.find(({ step }) => step === 'road')?.percent ?? 0;
  return (
    <>
      <p className="soft">
        {words.most[view.most]} {view.most !== 'road' && words.roadLittle(atLeast(road, 1, small))}
      </p>
      <table className="ruled">
        <thead>
          <tr>
            <th scope="col">{words.step}</th>
            <th scope="col" className="number">
              {words.log10}
            </th>
            <td />
            <th scope="col" className="number">
              {words.percent}
            </th>
          </tr>
        </thead>
        <tbody>
          {view.steps.map(({ step, path, log10, percent }) => (
            <tr key={step}>
              <th scope="row">{words.steps[step]}</th>
              <td className="number">
                <Figure path={path} title={`${words.log10}, ${words.steps[step]}`}>
                  {atLeast(log10, 0.01, small, 2)}
                </Figure>
              </td>
              <td className="loss-column">
                <svg width="100%" height="10" aria-hidden="true">
                  <rect className="loss-bar" height="10" width={`${(100 * log10) / view.log10}%`} />
                </svg>
              </td>
              <td className="number">
                <Figure path={path} title={`${words.percent}, ${words.steps[step]}`}>
                  {atLeast(percent, 1, small)}
                </Figure>
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{words.all}</th>
            <td className="number">{amount(view.log10, 2)}</td>
            <td />
            <td className="number">{amount(view.percent)}</td>
          </tr>
        </tfoot>
      </table>
      <p className="note">
        <Figure path="outcomes.crops.log10PerSeed" title={words.perSeedTitle}>
          {amount(twoDigits(view.perSeed))}
        </Figure>{' '}
        {words.perSeed} {words.floor(amount(view.floor))}
      </p>
    </>
  );
}

/** Counts of cells are known to no more than two digits. */
function twoDigits(count: number): number {
  const unit = 10 ** (Math.floor(Math.log10(Math.max(count, 10))) - 1);
  return Math.round(count / unit) * unit;
}

/** A value too small to show is shown as less than the least step, not as nought. */
function atLeast(
  value: number,
  step: number,
  { amount, less }: { amount: Amounts['amount']; less: (text: string) => string },
  decimals = 0,
): string {
  return value > 0 && value < step ? less(amount(step, decimals)) : amount(value, decimals);
}
