// Seeded draws (xorshift32, Marsaglia 2003, J. Stat. Softw. 8:14), so that the same seed makes the same district.
export function draws(seed) {
  let state = seed >>> 0 || 1;
  const next = () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4294967296;
  };
  const between = (low, high) => low + (high - low) * next();
  return {
    next,
    between,
    whole: (low, high) => Math.floor(between(low, high + 1)),
    one: (list) => list[Math.floor(next() * list.length)],
    chance: (p) => next() < p,
    // Nearly normal, mean 0 and standard deviation 1: twelve uniform draws (common practice, no source).
    normal: () => Array.from({ length: 12 }, next).reduce((sum, x) => sum + x, -6),
  };
}

export const rounded = (x, decimals) => Number(x.toFixed(decimals));
