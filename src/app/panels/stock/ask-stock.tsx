import { useCallback } from 'react';
import type { AllocationDifference, StockChange } from '../../../engine/index.ts';
import { differencesView } from '../../../presentation/views/allocation-differences.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Asked } from './asked.tsx';

interface AskStockProps {
  readonly label: string;
  readonly changes: readonly StockChange[];
  readonly atOnce?: boolean;
}

/** Asks what changes would give and take before any is made. */
export function AskStock({ label, changes, atOnce = false }: AskStockProps) {
  const askStock = useSeason((season) => season.askStock);
  const ask = useCallback(() => askStock(changes), [askStock, changes]);
  return (
    <Asked label={label} ask={ask} atOnce={atOnce}>
      {(difference) => <Difference difference={difference} />}
    </Asked>
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
