/** Row numbers by key, each list ascending, keys in the order first met. */
export function groupRows<Row>(
  rows: readonly Row[],
  keyOf: (row: Row, index: number) => number,
): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  rows.forEach((row, index) => {
    const key = keyOf(row, index);
    const group = groups.get(key);
    if (group) group.push(index);
    else groups.set(key, [index]);
  });
  return groups;
}
