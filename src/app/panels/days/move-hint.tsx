import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useWords } from '../../state/use-stores.ts';

/** That stops can be taken elsewhere, by hand or by menu. */
export function MoveHint() {
  return <p className="note">{paperWords(useWords()).moves.hint}</p>;
}
