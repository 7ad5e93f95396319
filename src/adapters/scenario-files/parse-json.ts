import type { ReadFaultKind } from '../../engine/index.ts';

/** Lists and objects inside one another; GeoJSON needs 8. Deeper text could exhaust the stack of whoever walks through it. */
const DEEPEST = 64;
/** A whole text, or a word that JSON does not know but some programs write for a missing number. */
const TEXT_OR_BARE_NUMBER = /"(?:[^"\\]|\\.)*"|-?\b(?:NaN|Infinity)\b/g;

/** A JSON text (RFC 8259) as a value. Bare NaN and Infinity, which are not JSON, are read as null and said. */
export function parseJson(text: string): { readonly value: unknown; readonly fault: ReadFaultKind | null } {
  if (depthOf(text) > DEEPEST) return { value: undefined, fault: 'too-deep' };
  const value = parseOrUndefined(text);
  if (value !== undefined) return { value, fault: null };
  const mended = text.replace(TEXT_OR_BARE_NUMBER, (found) => (found.startsWith('"') ? found : 'null'));
  const mendedValue = mended === text ? undefined : parseOrUndefined(mended);
  return { value: mendedValue, fault: mendedValue === undefined ? 'not-json' : 'bare-nan' };
}

/** JSON has no undefined, so that it can stand for text that is not JSON. */
function parseOrUndefined(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Most brackets open at once, brackets inside texts not counted. Stops where it is already too deep. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (let i = 0; i < text.length && deepest <= DEEPEST; i++) {
    const at = text.charCodeAt(i);
    if (at === QUOTE) i = endOfText(text, i);
    else if (at === OPEN_LIST || at === OPEN_OBJECT) deepest = Math.max(deepest, ++depth);
    else if (at === CLOSE_LIST || at === CLOSE_OBJECT) depth--;
  }
  return deepest;
}

const [QUOTE, BACKSLASH, OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [0x22, 0x5c, 0x5b, 0x5d, 0x7b, 0x7d];

function endOfText(text: string, start: number): number {
  let i = start + 1;
  while (i < text.length && text.charCodeAt(i) !== QUOTE) i += text.charCodeAt(i) === BACKSLASH ? 2 : 1;
  return i;
}
