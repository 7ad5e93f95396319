import { useMemo } from 'react';
import { type Amounts, amountsIn } from '../../../presentation/views/coverage-amounts.ts';
import { useWords } from '../../state/use-stores.ts';

/** The view's figures as the chosen language writes them. */
export function useAmounts(): Amounts {
  const words = useWords();
  return useMemo(() => amountsIn(words), [words]);
}
