import { useLayoutEffect, useRef } from 'react';
import { pageStyle } from '../../../presentation/papers/page-style.ts';
import { renderPages } from '../../../presentation/papers/render-page.ts';
import { usePaperSize } from './paper-size.ts';
import './papers.css';
import { usePapers } from './use-papers.ts';

/** The sheets as they will be printed. */
export default function PapersPanel() {
  const shown = usePapers();
  const size = usePaperSize();
  const place = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(pageStyle(size));
    document.adoptedStyleSheets.push(sheet);
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== sheet);
    };
  }, [size]);
  const pages = shown?.pages ?? [];
  useLayoutEffect(() => {
    // The renderer escapes every word; the same markup goes into files.
    if (place.current) place.current.innerHTML = renderPages(pages);
  }, [pages]);
  return <div className="paper-preview" ref={place} />;
}
