import { addressOfPlace } from '../state/address.ts';
import { useView } from '../state/use-stores.ts';
import type { Place } from '../state/view-store.ts';

interface PaperLinkProps {
  /** Which paper, by its name in the address. */
  readonly paper: string;
  readonly place?: Partial<Place>;
  readonly children: string;
}

/** Leads to a paper, ready to print. */
export function PaperLink({ paper, place: to = {}, children }: PaperLinkProps) {
  const place = useView();
  const there = { view: 'papers', paper, ...to } as const;
  return (
    <a
      className="link"
      href={addressOfPlace({ ...place, ...there })}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey) return;
        event.preventDefault();
        place.go(there);
      }}
    >
      {children}
    </a>
  );
}
