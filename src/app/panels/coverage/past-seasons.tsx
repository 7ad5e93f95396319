import { useState } from 'react';
import { type CoverageSeasons, coverageSeasons } from '../../../presentation/views/coverage-seasons.ts';
import { asOfText } from '../../../presentation/views/frame-view.ts';
import { PastSeasonsChart, type SeasonOrder } from '../../charts/past-seasons-chart.tsx';
import { SeasonMark } from '../../charts/season-mark.tsx';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { useAmounts } from './use-amounts.ts';

type Shape = SeasonOrder | 'table';

/** This plan in every past season that can say something about this one: as a chart, or as a table. */
export function PastSeasons() {
  const words = useWords();
  const { plan, scenario } = useSeason();
  const { hectares } = useAmounts();
  const [shape, setShape] = useState<Shape>('year');
  if (!plan || !scenario) return null;
  const view = coverageSeasons(plan, scenario);
  const text = words.coverage.seasons;
  if (view.seasons.length === 0) return <p className="note">{text.none}</p>;
  const shapes: readonly (readonly [Shape, string])[] = [
    ['year', text.byYear],
    ['hectares', text.byHectares],
    ['table', text.asTable],
  ];
  return (
    <>
      <div className="chart-head">
        <h2>{text.title(String(view.seasons.length))}</h2>
        {/* biome-ignore lint/a11y/useSemanticElements: a row of three buttons needs no box around it */}
        <span className="switch" role="group" aria-label={text.order}>
          {shapes.map(([name, label]) => (
            <button key={name} type="button" aria-pressed={shape === name} onClick={() => setShape(name)}>
              {label}
            </button>
          ))}
        </span>
      </div>
      {shape === 'table' ? <SeasonTable view={view} /> : <Chart view={view} order={shape} />}
      <p className="note chart-foot">
        {view.always && text.always(text.worst[view.always.cost](hectares(view.always.ha)))} {text.varies}{' '}
        {view.leftOut > 0 && text.leftOut(String(view.leftOut), asOfText(scenario, words))}
      </p>
    </>
  );
}

function Chart({ view, order }: { readonly view: CoverageSeasons; readonly order: SeasonOrder }) {
  const amounts = useAmounts();
  const words = useWords().coverage.seasons;
  return (
    <>
      <ul className="swatches season-key">
        {view.costs.map((cost) => (
          <li key={cost}>
            <svg width="13" height="13" viewBox="-6.5 -6.5 13 13" aria-hidden="true">
              <SeasonMark cost={cost} x={0} y={0} />
            </svg>
            {words.costs[cost]}
          </li>
        ))}
      </ul>
      <PastSeasonsChart view={view} order={order} amounts={amounts} />
    </>
  );
}

function SeasonTable({ view }: { readonly view: CoverageSeasons }) {
  const { hectares } = useAmounts();
  const words = useWords().coverage.seasons;
  return (
    <div className="season-table">
      <table className="ruled">
        <thead>
          <tr>
            <th scope="col">{words.season}</th>
            <th scope="col" className="number">
              {words.ha}
            </th>
            <th scope="col" className="number">
              {words.lost}
            </th>
            <th scope="col">{words.cost}</th>
          </tr>
        </thead>
        <tbody>
          {view.seasons.map((season) => (
            <tr key={season.year}>
              <th scope="row">{season.label}</th>
              <td className="number">
                <Figure path="outcomes.seasons.reachedHa" title={`${words.figureTitle}, ${season.label}`}>
                  {hectares(season.ha)}
                </Figure>
              </td>
              <td className="number">{hectares(season.lostHa)}</td>
              <td>{words.costs[season.cost]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
