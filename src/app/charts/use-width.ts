import { useEffect, useRef, useState } from 'react';

/** Width of an element in pixels, kept as it changes, so that a chart is drawn at its own size and its letters stay legible. */
export function useWidth(atFirst: number) {
  const element = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(atFirst);
  useEffect(() => {
    const node = element.current;
    if (!node) return;
    const observer = new ResizeObserver(([entry]) => {
      const now = Math.round(entry?.contentRect.width ?? 0);
      if (now > 0) setWidth(now);
    });
    observer.observe(node);
    return () => observer.disconnect();
  }, []);
  return { element, width };
}
