/** A figure within a sentence, which opens. */
export interface ToldFigure {
  readonly path: string;
  readonly title: string;
  readonly shown: string;
  readonly isAlarm: boolean;
}

/** A sentence whose figures stand as `{0}`, `{1}`, so that a translation may put them anywhere. */
export interface Told {
  readonly text: string;
  readonly figures: readonly ToldFigure[];
}

/** Two sentences as one; the figures of the second count on. */
export function joinTold(first: Told, second: Told, between = ' '): Told {
  const shifted = second.text.replace(/\{(\d+)\}/g, (_, index) => `{${Number(index) + first.figures.length}}`);
  return { text: `${first.text}${between}${shifted}`, figures: [...first.figures, ...second.figures] };
}

/** The sentence as plain text, for labels and letters. */
export const plainTold = ({ text, figures }: Told): string =>
  text.replace(/\{(\d+)\}/g, (_, index) => figures[Number(index)]?.shown ?? '');
