import { localNumber, withUnit } from '../../../presentation/local-number.ts';
import { fertiliserLeft, type NotServed } from '../../../presentation/views/days-unserved.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { Figure } from '../figure.tsx';

const NAMED = 6;

/** Who is not served, why, and what would help; nothing where everyone is. */
export function NotServedLines({ left }: { readonly left: readonly NotServed[] }) {
  const words = useWords();
  const { days } = words;
  return left.map(({ reason, names, zones, hectares, growers }) => {
    const named = names.slice(0, NAMED).join(', ');
    const more = names.length - NAMED;
    const who = more > 0 ? days.andOthers(named, localNumber(more, words)) : named;
    return (
      <p key={reason} className="not-served">
        <b className="alarm">{days.notServed}:</b> {days.inZones(who, zones.join(', '))},{' '}
        <Figure path="delivery.unserved.hectares" title={days.notServed}>
          {withUnit(localNumber(hectares, words, 1), days.ha)}
        </Figure>
        {growers === null ? '. ' : `, ${days.growers(localNumber(growers, words))} `}
        {`${days.because(words.reasons.UNSERVED_WORDING[reason])} `}
        <span className="soft">
          {days.wouldHelp} {days.help[reason]}
        </span>
      </p>
    );
  });
}

/** Land that gets seed and inoculant but not its fertiliser, and why; nothing where none stays behind. */
export function FertiliserLeft() {
  const words = useWords();
  const { plan } = useSeason();
  const left = plan && fertiliserLeft(plan);
  if (!left) return null;
  return (
    <p className="not-served">
      <b>{words.days.fertiliserLeft}:</b>{' '}
      <Figure path="delivery.unserved.hectares" title={words.days.fertiliserLeft}>
        {withUnit(localNumber(left.hectares, words, 1), words.days.ha)}
      </Figure>
      {`. ${words.days.because(words.reasons.UNSERVED_WORDING[left.reason])}`}
    </p>
  );
}
