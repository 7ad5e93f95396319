import { APP_WORDING } from './english/app.ts';
import { COVERAGE_WORDING } from './english/coverage.ts';
import { DAYS_WORDING } from './english/days.ts';
import { PROBLEM_WORDING } from './english/problems.ts';
import * as reasons from './english/reasons.ts';
import { STOCK_WORDING } from './english/stock.ts';

/** All words of the app in English: the shape that every other language has to fill. */
export const english = {
  ...APP_WORDING,
  problemOf: PROBLEM_WORDING,
  reasons,
  coverage: COVERAGE_WORDING,
  days: DAYS_WORDING,
  stock: STOCK_WORDING,
};

/** A dictionary: words of the same meaning at the same place, functions of the same arguments. */
export type Words = Widened<typeof english>;

/** The shape of a dictionary: any words, any functions of the same arguments. */
export type Widened<T> = T extends string
  ? string
  : T extends (...values: infer Values) => string
    ? (...values: Values) => string
    : { readonly [Key in keyof T]: Widened<T[Key]> };

export type Language = 'english' | 'pseudo';
