import type { Decision } from '../../../engine/index.ts';
import { decidedTarget } from '../../../presentation/views/days-move.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { dayTitle } from './day-title.ts';

/** Where a stop goes when the season is planned again, if it was decided to move it. */
export function MovesTo({ locks }: { readonly locks: readonly Decision[] }) {
  const words = useWords();
  const { moves } = paperWords(words);
  const to = decidedTarget(
    useSeason((season) => season.decisions),
    locks,
  );
  return to && <p className="moves-to">{moves.movesTo(to.vehicleId, dayTitle(to.date, words))}</p>;
}
