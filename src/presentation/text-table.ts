/** Columns of text under their names: the first flush left, the others flush right. */
export function textTable(names: readonly string[], rows: readonly (readonly string[])[]): string {
  const wide = names.map((name, column) => Math.max(name.length, ...rows.map((row) => (row[column] ?? '').length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, column) => (column === 0 ? cell.padEnd(wide[0] ?? 0) : cell.padStart(wide[column] ?? 0)))
      .join('  ')
      .trimEnd();
  return [names, ...rows].map(line).join('\n');
}
