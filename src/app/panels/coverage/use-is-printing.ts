import { useSyncExternalStore } from 'react';

/**
 * Whether the page is being put on paper. The event comes before the pages are counted, and the media query only with them;
 * the query alone tells of a preview of paper on the screen.
 */
export function useIsPrinting(): boolean {
  return useSyncExternalStore(listen, isPrinting, () => false);
}

let announced = false;

function listen(changed: () => void): () => void {
  const query = matchMedia('print');
  const begin = () => announce(true, changed);
  const end = () => announce(false, changed);
  addEventListener('beforeprint', begin);
  addEventListener('afterprint', end);
  query.addEventListener('change', changed);
  return () => {
    removeEventListener('beforeprint', begin);
    removeEventListener('afterprint', end);
    query.removeEventListener('change', changed);
  };
}

function announce(value: boolean, changed: () => void): void {
  announced = value;
  changed();
}

const isPrinting = (): boolean => announced || matchMedia('print').matches;
