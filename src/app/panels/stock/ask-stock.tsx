import { useState } from 'react';
import type { AllocationDifference, StockChange } from '../../../engine/index.ts';
import { differencesView } from '../../../presentation/views/allocation-differences.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';

interface AskStockProps {
  readonly label: string;
  readonly changes: readonly StockChange[];
}

/** Asks what changes would give and take before any is made: the stock is shared out again beside the page. */
export function AskStock({ label, changes }: AskStockProps) {
  const { stock } = useWords();
  const askStock = useSeason((season) => season.askStock);
  const [answer, setAnswer] = useState<AllocationDifference | 'asking' | 'none'>();
  const ask = async () => {
    setAnswer('asking');
    setAnswer((await askStock(changes)) ?? 'none');
  };
  return (
    <div className="asked" aria-live="polite">
      <button type="button" className="edged" disabled={answer === 'asking'} onClick={() => void ask()}>
        {label}
      </button>
      {answer === 'asking' && <p className="note">{stock.asking}</p>}
      {answer === 'none' && <p className="note">{stock.noAnswer}</p>}
      {typeof answer === 'object' && <Difference difference={answer} />}
    </div>
  );
}

function Difference({ difference }: { readonly difference: AllocationDifference }) {
  const words = useWords();
  const scenario = useSeason((season) => season.scenario);
  if (scenario === null) return null;
  const { price, goods, cells, lots } = differencesView(difference, scenario, words);
  return (
    <>
      <p>
        <b>{price}</b>
      </p>
      <ul className="differences note">
        {[...goods, ...cells, ...lots].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p className="note">{words.stock.beforeDelivery}</p>
    </>
  );
}
