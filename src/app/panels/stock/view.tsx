import { lazy, memo, Suspense, useState } from 'react';
import { saveFile } from '../../../adapters/browser/save-file.ts';
import type { Decision, Needs, Plan, Scenario } from '../../../engine/index.ts';
import { EMPTY_PICTURE, type MapPicture } from '../../../presentation/views/map-view.ts';
import { lotsView } from '../../../presentation/views/stock-lots.ts';
import { stockPicture } from '../../../presentation/views/stock-picture.ts';
import { changedTones } from '../../../presentation/views/stock-rates.ts';
import { type StockView, stockView } from '../../../presentation/views/stock-view.ts';
import type { Words } from '../../../presentation/wording/words.ts';
import { LotsChart } from '../../charts/lots-chart.tsx';
import { rememberLast } from '../../state/remember-last.ts';
import { saveTable } from '../../state/save-tables.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import type { ViewParts } from '../../views.ts';
import { NotPlanned } from '../empty-states.tsx';
import { PaperLink } from '../paper-link.tsx';
import { ShareLegend } from '../share-legend.tsx';
import { SeedRates } from './seed-rates.tsx';
import { SharingRules } from './sharing-rules.tsx';
import { ShortageTable } from './shortage-table.tsx';
import { ToldText } from './told-text.tsx';
import { ZoneGrid } from './zone-grid.tsx';
import './stock.css';

interface Planned {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly stock: StockView;
}

const remembered = rememberLast(stockView);
/** Tables that are drawn anew only where what they show is another. */
const Shortages = memo(ShortageTable);
const Zones = memo(ZoneGrid);
// Loaded after the first view: they stand below the table.
const Orders = memo(lazy(async () => ({ default: (await import('./order-table.tsx')).OrderTable })));
const LotTable = lazy(async () => ({ default: (await import('./lot-table.tsx')).LotTable }));
const Questions = memo(lazy(async () => ({ default: (await import('./what-if.tsx')).WhatIf })));

let lastOnCells: readonly Decision[] = [];

/** Decisions on cells of the table, as the same list while they are the same: others leave the view as it is. */
function onCells(decisions: readonly Decision[]): readonly Decision[] {
  const found = decisions.filter((decision) => 'crop' in decision);
  const isSame = found.length === lastOnCells.length && found.every((decision, i) => decision === lastOnCells[i]);
  if (!isSame) lastOnCells = found;
  return lastOnCells;
}

/** The plan with what the view says of it; null before there is one. */
function usePlanned(): Planned | null {
  const words = useWords();
  const plan = useSeason((season) => season.plan);
  const scenario = useSeason((season) => season.scenario);
  const decisions = useSeason((season) => season.decisions);
  if (plan === null || scenario === null) return null;
  return { plan, scenario, stock: remembered(plan, scenario, onCells(decisions), words) };
}

function Answer() {
  const planned = usePlanned();
  if (planned === null) return <NotPlanned />;
  return (
    <h1>
      <ToldText told={planned.stock.headline} />
    </h1>
  );
}

function Panel() {
  const words = useWords();
  const planned = usePlanned();
  if (planned === null) return null;
  const { plan, scenario, stock } = planned;
  return (
    <>
      <Shortages shortages={stock.shortages} />
      <SharingRules plan={plan} scenario={scenario} />
      <SeedRates plan={plan} scenario={scenario} />
      <Zones plan={plan} scenario={scenario} stock={stock} />
      <Suspense>
        <Orders plan={plan} scenario={scenario} />
        <Questions scenario={scenario} />
      </Suspense>
      <footer className="grid-foot note">
        <BarKey />
        {stock.cutOff > 0 && <p>{words.stock.dagger(String(stock.cutOff), stock.cutOff === 1)}</p>}
        <p>{words.stock.gridHelp}</p>
        <p>
          {words.stock.saveTables}:{' '}
          <button type="button" className="link" onClick={() => void saveTable('allocation.csv', plan, scenario)}>
            {words.stock.saveAllocation}
          </button>{' '}
          <button type="button" className="link" onClick={() => void saveShortfalls(plan)}>
            {words.stock.saveShortfalls}
          </button>{' '}
          <PaperLink paper="card">{words.papers.cards}</PaperLink>{' '}
          <PaperLink paper="pick">{words.papers.pick}</PaperLink>
        </p>
      </footer>
    </>
  );
}

async function saveShortfalls(plan: Plan): Promise<void> {
  const { shortfallsCsv } = await import('../../../presentation/exports/shortfalls-csv.ts');
  saveFile('shortfalls.csv', shortfallsCsv(plan));
}

/** What the bars of the grid mean. */
function BarKey() {
  const { stock } = useWords();
  return (
    <ul className="swatches bar-key">
      <li>
        <span className="swatch full" />
        {stock.keyBoth}
      </li>
      <li>
        <span className="swatch hatch-some" />
        {stock.notInoculated}
      </li>
      <li>
        <span className="swatch hatch-much" />
        {stock.withoutSeed}
      </li>
    </ul>
  );
}

function Chart() {
  const words = useWords();
  const planned = usePlanned();
  const [showAll, setShowAll] = useState(false);
  if (planned === null) return null;
  const { plan, scenario, stock } = planned;
  const lots = lotsView(plan, scenario, stock.shortages, showAll, words);
  return (
    <>
      <header className="chart-head">
        <h2>{lots.title}</h2>
        <span className="note">
          {lots.count}{' '}
          <button type="button" className="link" aria-expanded={showAll} onClick={() => setShowAll(!showAll)}>
            {showAll ? words.stock.showFewLots : words.stock.showAllLots}
          </button>
        </span>
      </header>
      {showAll ? (
        <Suspense>
          <LotTable lots={lots} />
        </Suspense>
      ) : (
        <LotsChart lots={lots} />
      )}
      {!showAll && <ChartKey hasSowing={lots.sowing !== null} />}
    </>
  );
}

function ChartKey({ hasSowing }: { readonly hasSowing: boolean }) {
  const { stock } = useWords();
  return (
    <p className="swatches chart-key">
      {hasSowing && (
        <span title={stock.sowingWindowTitle}>
          <span className="swatch sowing" /> {stock.sowingWindow}
        </span>
      )}
      <span>{stock.thickness}</span>
    </p>
  );
}

function Legend() {
  const words = useWords();
  const { stock } = words;
  const plan = useSeason((state) => state.plan);
  const scenario = useSeason((state) => state.scenario);
  const { fills, hatches } = picture(plan, scenario, words);
  const hasBare = fills.some((tone, community) => tone === null && hatches[community] === null);
  return (
    <>
      <ShareLegend title={stock.legend} nothing={hatches.includes('nothing')} />
      <p className="swatches">
        <span className="swatch-pair">
          <span className="depot-swatch" /> {stock.depot}
        </span>
        {hasBare && (
          <span className="swatch-pair">
            <span className="swatch" /> {stock.noLand}
          </span>
        )}
      </p>
    </>
  );
}

const picture = rememberLast((plan: Plan | null, scenario: Scenario | null, words: Words) =>
  plan === null || scenario === null ? EMPTY_PICTURE : stockPicture(plan, scenario, words),
);

/** The picture of the plan; where needs were changed since, its tones follow them. */
const livePicture = rememberLast(
  (plan: Plan | null, scenario: Scenario | null, needs: Needs | null, words: Words): MapPicture => {
    const planned = picture(plan, scenario, words);
    return plan && scenario && needs ? { ...planned, fills: changedTones(plan, scenario, needs) } : planned;
  },
);

export const STOCK: ViewParts = {
  Answer,
  Panel,
  Chart,
  Legend,
  picture: ({ plan, scenario, changedNeeds }, _, words) => livePicture(plan, scenario, changedNeeds, words),
};
