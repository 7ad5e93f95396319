import { HANDOVER_WORDING } from './english/handover.ts';
import { spokenPseudo } from './pseudo.ts';
import type { Widened, Words } from './words.ts';

/** The page's words with those of the handover, which only the view of a handover loads. */
export type HandoverWords = Words & { readonly handover: Widened<typeof HANDOVER_WORDING> };

export function handoverWords(words: Words): HandoverWords {
  const pseudo = words.language.code === 'en-XA';
  const handover = pseudo ? (spokenPseudo(HANDOVER_WORDING) as HandoverWords['handover']) : HANDOVER_WORDING;
  return { ...words, handover };
}
