import { addressOfPlace } from '../state/address.ts';
import { useView, useWords } from '../state/use-stores.ts';

interface HandoverLinkProps {
  readonly community: string;
  readonly name: string;
  readonly zone: string | null;
}

/** Leads to the amounts of one community. */
export function HandoverLink({ community, name, zone }: HandoverLinkProps) {
  const { papers } = useWords();
  const place = useView();
  return (
    <a
      className="link handover-link"
      href={addressOfPlace({ ...place, view: 'handover', community, zone })}
      aria-label={papers.amountsOf(name)}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey) return;
        event.preventDefault();
        place.go({ view: 'handover', community, zone });
      }}
    >
      {papers.amounts}
    </a>
  );
}
