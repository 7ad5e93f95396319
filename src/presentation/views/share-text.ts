/**
 * A share between 0 and 1 as percent without the sign. A share that is not whole is never rounded up to 100, nor one that
 * is there down to 0.
 */
export function percentOf(share: number): string {
  const percent = Math.round(share * 100);
  if (percent >= 100 && share < 0.9995) return '99';
  return percent <= 0 && share > 0.0005 ? '1' : String(percent);
}
