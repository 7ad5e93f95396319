import { readFileSync } from 'node:fs';
import { interpolateBlues, interpolateViridis, interpolateYlOrRd } from 'd3-scale-chromatic';
import { describe, expect, it } from 'vitest';

// The ramps of the page on light ground are cut out of published ones, read here from d3-scale-chromatic (ISC): viridis by
// van der Walt and Smith 2015 (matplotlib), YlOrRd and Blues by ColorBrewer (Brewer 2003).

const tokens = readFileSync(new URL('../../src/app/tokens.css', import.meta.url), 'utf8');
const light = tokens.slice(0, tokens.indexOf('[data-theme="dark"]'));
const rampOf = (name: string) =>
  [...light.matchAll(new RegExp(`--${name}-\\d: (#[0-9a-f]{6})`, 'g'))].map(([, hex]) => hex ?? '');

/** Red, green, blue of `#rrggbb` or `rgb(r, g, b)`. */
function channels(colour: string): number[] {
  if (!colour.startsWith('#')) return [...colour.matchAll(/\d+/g)].map(Number);
  return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}

/** Where along the published ramp a colour lies, and how far off in its worst channel. */
function placeOn(ramp: (t: number) => string, colour: string): { at: number; off: number } {
  const wanted = channels(colour);
  let best = { at: 0, off: 256 };
  for (let step = 0; step <= 2000; step++) {
    const found = channels(ramp(step / 2000));
    const off = Math.max(...found.map((value, channel) => Math.abs(value - (wanted[channel] ?? Number.NaN))));
    if (off < best.off) best = { at: step / 2000, off };
  }
  return best;
}

describe('colour ramps', () => {
  it('have the published ends of viridis in the reference library', () => {
    expect(interpolateViridis(0)).toBe('#440154');
    expect(interpolateViridis(1)).toBe('#fde725');
  });

  it.each([
    { name: 'alive', ramp: interpolateViridis, rises: false },
    { name: 'heat', ramp: interpolateYlOrRd, rises: true },
    { name: 'sow', ramp: interpolateBlues, rises: true },
  ])('$name lies on its published ramp, in order', ({ name, ramp, rises }) => {
    const colours = rampOf(name);
    expect(colours).toHaveLength(6);
    const places = colours.map((colour) => placeOn(ramp, colour));
    // Two in 255: the reference cuts viridis into 256 colours without shades between.
    for (const { off } of places) expect(off).toBeLessThanOrEqual(2);
    const along = places.map(({ at }) => at);
    const inOrder = [...along].sort((a, b) => (rises ? a - b : b - a));
    expect(along).toEqual(inOrder);
    expect(new Set(along).size).toBe(6);
  });
});
