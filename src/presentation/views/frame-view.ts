import { isoDate, type Scenario } from '../../engine/index.ts';
import type { Words } from '../wording/words.ts';

/** `24 Nov 2026`: day, month as a word, year, so that no order of numbers can be misread. */
export function dateText(iso: string, words: Words, withYear = true): string {
  const [year = '', month = '', day = ''] = iso.split('-');
  const name = words.months[Number(month) - 1] ?? month;
  return withYear ? `${Number(day)} ${name} ${year}` : `${Number(day)} ${name}`;
}

/** `2026/27` for a season whose rains are looked for across New Year, else `2026`. */
export function seasonText({ seasonYear, seasons }: Pick<Scenario, 'seasonYear' | 'seasons'>): string {
  const crosses = seasons.some(({ from, to }) => to.month < from.month);
  return crosses ? `${seasonYear}/${String((seasonYear + 1) % 100).padStart(2, '0')}` : String(seasonYear);
}

export const asOfText = (scenario: Scenario, words: Words): string => dateText(isoDate(scenario.asOf), words);
