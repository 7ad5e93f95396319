import { type ReactNode, useEffect, useState } from 'react';
import { useSeason, useWords } from '../state/use-stores.ts';
import { openDropped } from './open-chosen.ts';

/** Takes files that are dropped anywhere on the page. Choosing them in the menu does the same. */
export function DropFiles({ children }: { readonly children: ReactNode }) {
  const words = useWords();
  const over = useDrop();
  return (
    <div className="page">
      {children}
      {over && <div className="drop-here">{words.empty.dropHere}</div>}
    </div>
  );
}

/** Whether files hang over the page; those let go are opened. */
function useDrop(): boolean {
  const season = useSeason();
  const [over, setOver] = useState(false);
  useEffect(() => {
    const listeners = new AbortController();
    const listen = (name: 'dragover' | 'dragleave' | 'drop', act: (event: DragEvent) => void) => {
      const forFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') && act(event);
      document.addEventListener(name, forFiles, { signal: listeners.signal });
    };
    listen('dragover', (event) => {
      event.preventDefault();
      setOver(true);
    });
    listen('dragleave', (event) => {
      if (event.relatedTarget === null) setOver(false);
    });
    listen('drop', (event) => {
      event.preventDefault();
      setOver(false);
      if (event.dataTransfer) void openDropped(season, event.dataTransfer);
    });
    return () => listeners.abort();
  }, [season]);
  return over;
}
