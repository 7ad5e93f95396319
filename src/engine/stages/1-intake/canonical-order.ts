import type { PlaceGeometry, Position } from '../../vocabulary/places.ts';
import { compareAlongCurve } from './spatial-key.ts';

/**
 * Orders that file order cannot change: first where a thing lies or what it belongs to, then all that is said of it, its
 * labels last. So reordered rows give the same scenario, and renamed ids only rename.
 */
export type Order<T> = (a: T, b: T) => number;

export function inOrder<T>(...orders: Order<T>[]): Order<T> {
  return (a, b) => {
    for (const order of orders) {
      const difference = order(a, b);
      if (difference !== 0) return difference;
    }
    return 0;
  };
}

export const byNumber =
  <T>(of: (item: T) => number): Order<T> =>
  (a, b) =>
    of(a) - of(b);

export const byText =
  <T>(of: (item: T) => string): Order<T> =>
  (a, b) => {
    const [x, y] = [of(a), of(b)];
    return x < y ? -1 : x > y ? 1 : 0;
  };

export const byPosition =
  <T>(of: (item: T) => Position): Order<T> =>
  (a, b) =>
    compareAlongCurve(of(a), of(b));

/** By all that `of` names, as JSON text; the text is made only for items that meet in a tie, and once. */
export function byContent<T extends object>(of: (item: T) => unknown): Order<T> {
  const texts = new Map<T, string>();
  return byText((item) => {
    const known = texts.get(item);
    if (known !== undefined) return known;
    const text = JSON.stringify(of(item));
    texts.set(item, text);
    return text;
  });
}

/** Index of each item by its id. */
export function indexById(items: readonly { readonly id: string }[]): ReadonlyMap<string, number> {
  return new Map(items.map((item, index) => [item.id, index]));
}

/** A point that stands for a place in orders and rough distances: its own, or the middle of its bounding box. */
export function placeMiddle(geometry: PlaceGeometry): Position {
  if (geometry.kind === 'point') return geometry.position;
  let [west, south, east, north] = [180, 90, -180, -90];
  for (const [exterior = []] of geometry.polygons) {
    for (const [lon, lat] of exterior) {
      west = Math.min(west, lon);
      east = Math.max(east, lon);
      south = Math.min(south, lat);
      north = Math.max(north, lat);
    }
  }
  return [(west + east) / 2, (south + north) / 2];
}
