import { lazy, Suspense, useState } from 'react';
import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import type { RemedyView } from '../../../presentation/views/stock-remedies.ts';
import type { Lack, Shortage } from '../../../presentation/views/stock-shortages.ts';
import { useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';
import { ToldText } from './told-text.tsx';

const AskStock = lazy(async () => ({ default: (await import('./ask-stock.tsx')).AskStock }));

/** What runs out, most hectares first: how much is missing, what it costs, why, and what would help most. */
export function ShortageTable({ shortages }: { readonly shortages: readonly Shortage[] }) {
  const { stock } = useWords();
  const most = shortages[0]?.hectares ?? 0;
  if (shortages.length === 0) return null;
  return (
    <table className="ruled shortages">
      <thead>
        <tr>
          <th scope="col">{stock.whatRunsOut}</th>
          <th scope="col" className="number">
            {stock.shortBy}
          </th>
          <th scope="col">{stock.land}</th>
          <th scope="col">{stock.why}</th>
          <th scope="col">{stock.worthMost}</th>
        </tr>
      </thead>
      <tbody>
        {shortages.map((shortage, rank) => (
          <ShortageRow key={shortage.key} shortage={shortage} most={most} shown={rank === 0 ? 2 : 1} />
        ))}
      </tbody>
    </table>
  );
}

const HATCH: Readonly<Record<Lack, string>> = {
  'not-inoculated': 'hatch-some',
  'without-seed': 'hatch-much',
  'cut-off': 'hatch-nothing',
};

interface ShortageRowProps {
  readonly shortage: Shortage;
  /** Hectares of the longest bar. */
  readonly most: number;
  /** Remedies shown: the worst shortage has room for a second. */
  readonly shown: number;
}

function ShortageRow({ shortage, most, shown }: ShortageRowProps) {
  const words = useWords();
  const { stock } = words;
  const { name, lack, hectares, where, why, remedies } = shortage;
  const [asked, setAsked] = useState<RemedyView | null>(null);
  return (
    <>
      <tr>
        <th scope="row">
          <b>{name}</b>
          {lack === 'cut-off' && ' †'}
          <span className="note">
            <ToldText told={where} />
          </span>
        </th>
        <td className="number">
          <ShortBy shortage={shortage} />
        </td>
        <td>
          <span className="land-lost">
            <span className="land-bar">
              <span
                className={`swatch ${HATCH[lack]}`}
                style={{ width: `${(56 * hectares) / Math.max(most, 1e-9)}px` }}
                aria-hidden="true"
              />
            </span>
            <Figure path="allocation.shortfalls.hectares" title={stock.hectaresTitle(name)} className="firm">
              {withUnit(localNumber(hectares, words, 1), 'ha')}
            </Figure>
          </span>
          <span className="note">{lack === 'not-inoculated' ? stock.notInoculated : stock.withoutSeed}</span>
        </td>
        <td className="told-why">{why}</td>
        <td className="told-why worth">
          {remedies.length === 0 && <span className="soft">{stock.noRemedy}</span>}
          {remedies.slice(0, shown).map((remedy) => (
            <Remedy
              key={remedy.what}
              remedy={remedy}
              isAsked={asked === remedy}
              onAsk={() => setAsked(asked === remedy ? null : remedy)}
            />
          ))}
        </td>
      </tr>
      {asked !== null && (
        <tr className="asked-of">
          <td colSpan={5}>
            <b>{asked.what}</b>
            <Suspense>
              <AskStock key={asked.what} label={stock.ask} changes={asked.changes} atOnce />
            </Suspense>
          </td>
        </tr>
      )}
    </>
  );
}

function ShortBy({ shortage: { name, shortBy, shortKg, bagSize } }: { readonly shortage: Shortage }) {
  const { stock } = useWords();
  if (shortBy === null) return shortKg;
  return (
    <>
      <Figure path="allocation.shortfalls.shortKg" title={stock.shortTitle(name)}>
        {shortBy}
      </Figure>
      {shortKg !== null && bagSize !== null && <span className="note">{stock.bagNote(bagSize, shortKg)}</span>}
    </>
  );
}

interface RemedyProps {
  readonly remedy: RemedyView;
  readonly isAsked: boolean;
  readonly onAsk: () => void;
}

/** A remedy as an estimate; asking shares the stock out again with it. */
function Remedy({ remedy: { what, hectares, cost, ifCleared, changes }, isAsked, onAsk }: RemedyProps) {
  const { stock } = useWords();
  const [before, after] = (ifCleared ? stock.worthIfCleared('|') : '|').split('|');
  return (
    <p>
      <b>{what}</b>: {before}
      <Figure path="allocation.remedies.hectares" title={stock.worthTitle}>
        {hectares}
      </Figure>
      {after}
      {cost !== null && ', '}
      {cost !== null && (
        <Figure path="allocation.remedies.cost" title={stock.costTitle}>
          {cost}
        </Figure>
      )}{' '}
      {changes.length > 0 && (
        <button
          type="button"
          className="link"
          aria-expanded={isAsked}
          aria-label={stock.tryRemedy(what)}
          onClick={onAsk}
        >
          {stock.tryIt}
        </button>
      )}
    </p>
  );
}
