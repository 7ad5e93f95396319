import { addressOfPlace } from '../state/address.ts';
import { useView, useWords } from '../state/use-stores.ts';

/** Leads to what happened, to be entered. */
export function RecordsLink() {
  const place = useView();
  const words = useWords();
  return (
    <a
      className="link"
      href={addressOfPlace({ ...place, view: 'records' })}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey) return;
        event.preventDefault();
        place.go({ view: 'records' });
      }}
    >
      {words.frame.views.records}
    </a>
  );
}
