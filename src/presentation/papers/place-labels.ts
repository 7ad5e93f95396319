import type { Mark, Spot } from './drawing.ts';

interface Label {
  readonly at: Spot;
  readonly text: string;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const SIZE = 12;
/** Mean width of a letter, of the height of the type (common practice, no source). */
const LETTER = 0.56;
const AWAY = 14;

/**
 * Names beside their spots, each on the first side where it covers no disc and no name placed before, within the drawing;
 * where every side is taken, on the one that covers least.
 *
 * @param discs spots that no name may cover
 */
export function placeLabels(labels: readonly Label[], discs: readonly Spot[], width: number, height: number): Mark[] {
  const taken: Box[] = discs.map(([x, y]) => ({ left: x - 11, top: y - 11, right: x + 11, bottom: y + 11 }));
  return labels.map(({ at: [x, y], text }): Mark => {
    const long = text.length * SIZE * LETTER;
    const sides = [
      { anchor: 'start', x: x + AWAY, y: y + 4, left: x + AWAY },
      { anchor: 'end', x: x - AWAY, y: y + 4, left: x - AWAY - long },
      { anchor: 'middle', x, y: y - AWAY, left: x - long / 2 },
      { anchor: 'middle', x, y: y + AWAY + 9, left: x - long / 2 },
      { anchor: 'start', x: x + 9, y: y - 12, left: x + 9 },
      { anchor: 'end', x: x - 9, y: y + 20, left: x - 9 - long },
      { anchor: 'end', x: x - 9, y: y - 12, left: x - 9 - long },
      { anchor: 'start', x: x + 9, y: y + 20, left: x + 9 },
    ] as const;
    const boxed = sides.map((side) => ({
      ...side,
      box: { left: side.left, right: side.left + long, top: side.y - SIZE, bottom: side.y + 3 },
    }));
    const within = boxed.filter(
      ({ box }) => box.left >= 0 && box.right <= width && box.top >= 0 && box.bottom <= height,
    );
    const side = leastCovered(within.length > 0 ? within : boxed, taken);
    if (side === undefined) return { kind: 'word', at: [x, y], text, size: SIZE, anchor: 'start' };
    taken.push(side.box);
    return { kind: 'word', at: [side.x, side.y], text, size: SIZE, anchor: side.anchor, heavy: true, rim: true };
  });
}

/** The first side that covers nothing, else the one that covers the least area. */
function leastCovered<T extends { readonly box: Box }>(sides: readonly T[], taken: readonly Box[]): T | undefined {
  const covered = sides.map(({ box }) => taken.reduce((area, other) => area + sharedArea(box, other), 0));
  return sides[covered.indexOf(Math.min(...covered))];
}

function sharedArea(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}
