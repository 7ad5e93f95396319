/**
 * Cuts a whole into parts by shares that sum to 1, so that the parts add up to the whole exactly, in any order. Every part
 * but that of the largest share is laid on the grid of numbers that the whole itself stands on (adding the whole and taking
 * it off again does that); then what is left for the largest share is on the grid too, and nothing is rounded anywhere.
 */
export function shareOut(whole: number, shares: readonly number[]): readonly number[] {
  if (shares.length === 1) return [whole];
  const largest = shares.indexOf(Math.max(...shares));
  const parts = shares.map((share) => whole * share + whole - whole);
  parts[largest] = parts.reduce((left, part, i) => (i === largest ? left : left - part), whole);
  return parts;
}
