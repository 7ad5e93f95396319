/** The id an index of the plan stands for; null for -1, which stands for none. */
export function idAt(ids: readonly string[], index: number | undefined): string | null {
  return index === undefined || index < 0 ? null : (ids[index] ?? null);
}
