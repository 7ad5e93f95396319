import type { Text } from '../../presentation/papers/page.ts';

/** A line of a paper on the screen. */
export function PaperText({ text }: { readonly text: Text }) {
  if (typeof text === 'string') return text;
  return text.map((part) => (typeof part === 'string' ? part : <b key={part.strong}>{part.strong}</b>));
}
