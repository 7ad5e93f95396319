import { localNumber, withUnit } from '../../../../presentation/local-number.ts';
import type { LeftOut } from '../../../../presentation/views/days-left.ts';
import { useWords } from '../../../state/use-stores.ts';
import { Figure } from '../../figure.tsx';

const NAMED = 4;

/** Who is not served, why, and what would help: one line a reason. */
export function LeftOutLines({ left }: { readonly left: readonly LeftOut[] }) {
  const words = useWords();
  const { dayRoutes, reasons } = words;
  return left.map(({ reason, names, hectares }) => {
    const first = names.slice(0, NAMED).join(', ');
    const more = names.length - NAMED;
    return (
      <p key={reason} className="left-out">
        <b className="alarm">{dayRoutes.notServed}</b>{' '}
        {more > 0 ? dayRoutes.names(first, localNumber(more, words)) : first},{' '}
        <Figure path="delivery.unserved.reason" title={dayRoutes.notServed}>
          {withUnit(localNumber(hectares, words, 1), dayRoutes.ha)}
        </Figure>
        : {reasons.UNSERVED_WORDING[reason]}. {dayRoutes.help(dayRoutes.wouldHelp[reason])}
      </p>
    );
  });
}
