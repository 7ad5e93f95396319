import { type ReactNode, useCallback, useEffect, useState } from 'react';
import { useWords } from '../../state/use-stores.ts';

interface AskedProps<T> {
  readonly label: string;
  readonly ask: () => Promise<T | null>;
  readonly children: (answer: T) => ReactNode;
  /** Asked as soon as it stands on the page and whenever `ask` is another, without a button. */
  readonly atOnce?: boolean;
}

/** A question to the stock and its answer below: the stock is shared out again beside the page, and nothing of it is kept. */
export function Asked<T extends object>({ label, ask, children, atOnce = false }: AskedProps<T>) {
  const { stock } = useWords();
  const [answer, setAnswer] = useState<T | 'asking' | 'none'>();
  const put = useCallback(async () => {
    setAnswer('asking');
    setAnswer((await ask()) ?? 'none');
  }, [ask]);
  useEffect(() => {
    if (atOnce) void put();
  }, [atOnce, put]);
  return (
    <div className="asked" aria-live="polite">
      {!atOnce && (
        <button type="button" className="edged" disabled={answer === 'asking'} onClick={() => void put()}>
          {label}
        </button>
      )}
      {answer === 'asking' && <p className="note">{stock.asking}</p>}
      {answer === 'none' && <p className="note">{stock.noAnswer}</p>}
      {typeof answer === 'object' && children(answer)}
    </div>
  );
}
