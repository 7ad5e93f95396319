import { drawsOf } from '../../../presentation/views/coverage-amounts.ts';
import { type CoverageMethod, coverageMethod } from '../../../presentation/views/coverage-method.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { useAmounts } from './use-amounts.ts';
import { useIsPrinting } from './use-is-printing.ts';

/** How the figures come about, how well what stands behind them is known, and how not to read them. */
export function MethodSection() {
  const { amount } = useAmounts();
  const words = useWords();
  const plan = useSeason((season) => season.plan);
  if (!plan) return null;
  const view = coverageMethod(plan);
  const text = words.coverage.method;
  return (
    <section className="method">
      <h2>{text.title}</h2>
      <p>{text.what(String(plan.season.memberYears.length), amount(drawsOf(plan) ?? 0))}</p>
      <ul className="cautions">
        {text.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        {view.cropsWithoutResponse.length > 0 && (
          <li>{text.noResponse(view.cropsWithoutResponse.map((crop) => words.crops[crop]).join(', '))}</li>
        )}
      </ul>
      {view.leftOpen.length > 0 && (
        <>
          <h3>{text.leftOpen}</h3>
          <ul className="left-open">
            {view.leftOpen.map((problem) => {
              const { what, remedy } = words.problemOf[problem.code];
              return (
                <li key={`${problem.code} ${what(problem)}`}>
                  {what(problem)} <span className="soft">{remedy}</span>
                </li>
              );
            })}
          </ul>
        </>
      )}
      <h3>{text.inputsTitle}</h3>
      <p>
        {text.inputs(amount(view.inputs))} {text.ours(amount(view.ours.length))}
      </p>
      <ul className="status-counts">
        {view.counts.map(({ status, count }) => (
          <li key={status} className={status === 'assumed' || status === 'memory' ? 'alarm' : ''}>
            <b>{amount(count)}</b> {words.figure.statuses[status]}
          </li>
        ))}
      </ul>
      <Assumptions view={view} />
    </section>
  );
}

function Assumptions({ view }: { readonly view: CoverageMethod }) {
  const isPrinting = useIsPrinting();
  const words = useWords();
  const text = words.coverage.method;
  return (
    <details open={isPrinting || undefined}>
      <summary>{text.list}</summary>
      <table className="ruled inputs">
        <thead>
          <tr>
            {[text.name, text.value, text.status, text.source].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.ours.map(({ name, value, status, source }) => (
            <tr key={`${name}|${source}`}>
              <th scope="row">{name}</th>
              <td>{value ?? text.differs}</td>
              <td>{words.figure.statuses[status]}</td>
              <td className="note">{source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
