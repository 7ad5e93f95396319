import type { Commodity, Plan, Scenario } from '../../../engine/index.ts';
import { smallestChangeText, worstLack } from '../../../presentation/views/smallest-change.ts';
import type { Cell } from '../../../presentation/views/stock-cells.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Asked } from './asked.tsx';

interface AskLiftProps {
  readonly plan: Plan;
  readonly scenario: Scenario;
  readonly cell: Cell;
  readonly commodity: Commodity;
}

/** The smallest change that lifts the whole shortfall of the community of the cell that lacks most. */
export function AskLift({ plan, scenario, cell, commodity }: AskLiftProps) {
  const words = useWords();
  const askSmallestChange = useSeason((season) => season.askSmallestChange);
  const plannedFrom = useSeason((season) => season.plannedFrom);
  const worst = worstLack(plan, scenario, cell, commodity);
  if (worst === null) return null;
  return (
    <Asked label={words.stock.askLift(worst.community)} ask={() => askSmallestChange(worst.shareRow, commodity)}>
      {(change) => <p>{smallestChangeText(change, scenario, plannedFrom?.decisions ?? [], words)}.</p>}
    </Asked>
  );
}
