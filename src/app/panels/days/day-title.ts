import { weekdayOf } from '../../../presentation/views/days-axis.ts';
import { dateText } from '../../../presentation/views/frame-view.ts';
import type { Words } from '../../../presentation/wording/words.ts';

/** `Tue 24 Nov`. */
export const dayTitle = (iso: string, words: Words): string =>
  words.days.weekdayDate(words.weekdays[weekdayOf(iso)] ?? '', dateText(iso, words, false));
