import type { Scenario } from '../../../engine/index.ts';
import { transferText } from '../../../presentation/views/transfer-text.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Asked } from './asked.tsx';

const SHOWN = 6;

/** What carrying idle packs to another depot would serve, most land first. */
export function AskTransfers({ scenario }: { readonly scenario: Scenario }) {
  const words = useWords();
  const askTransfers = useSeason((season) => season.askTransfers);
  return (
    <Asked label={words.stock.askTransfers} ask={askTransfers}>
      {(ideas) =>
        ideas.length === 0 ? (
          <p>{words.stock.noTransfer}</p>
        ) : (
          <ul className="differences">
            {ideas.slice(0, SHOWN).map((idea) => (
              <li key={`${idea.lot} ${idea.depot}`}>{transferText(idea, scenario, words)}.</li>
            ))}
          </ul>
        )
      }
    </Asked>
  );
}
