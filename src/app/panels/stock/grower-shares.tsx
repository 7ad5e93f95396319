import type { Plan, Scenario } from '../../../engine/index.ts';
import { growerSharesText } from '../../../presentation/views/grower-shares.ts';
import { useWords } from '../../state/use-stores.ts';

const GOODS = ['seed', 'inoculant'] as const;

/** Shares of need met as growers meet them: all, women, small plots. */
export function GrowerShares({ plan, scenario }: { readonly plan: Plan; readonly scenario: Scenario }) {
  const words = useWords();
  return GOODS.map((commodity) => {
    const told = growerSharesText(plan, scenario, commodity, words);
    return (
      told !== null && (
        <p key={commodity} className="soft grower-shares">
          {words.stock.shareMet[commodity]} {told}
        </p>
      )
    );
  });
}
