import { useSyncExternalStore } from 'react';
import type { PaperSize } from '../../../presentation/papers/page-style.ts';

let size: PaperSize = 'A4';
const listeners = new Set<() => void>();

/** The paper that is in the printer: chosen once, for all sheets of the visit. */
export const usePaperSize = (): PaperSize => useSyncExternalStore(listen, () => size);

export function setPaperSize(to: PaperSize): void {
  size = to;
  for (const changed of listeners) changed();
}

function listen(changed: () => void): () => void {
  listeners.add(changed);
  return () => listeners.delete(changed);
}
