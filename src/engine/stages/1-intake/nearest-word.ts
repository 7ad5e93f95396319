/** Most letters to change, add or drop for a word to be meant. */
const FARTHEST = 3;

/** The known word nearest to the one met, for a suggestion; null where none is near. Ties go to the earlier word. */
export function nearestWord(met: string, known: readonly string[]): string | null {
  let nearest: string | null = null;
  let least = Math.min(FARTHEST, Math.floor(met.length / 2)) + 1;
  for (const word of known) {
    if (Math.abs(word.length - met.length) >= least) continue;
    const distance = editDistance(met, word);
    if (distance < least) [nearest, least] = [word, distance];
  }
  return nearest;
}

/** Levenshtein 1966 (Soviet Physics Doklady 10:707-710), row by row. */
function editDistance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (above[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(change, (above[j] as number) + 1, (row[j - 1] as number) + 1));
    }
    above = row;
  }
  return above[b.length] as number;
}
