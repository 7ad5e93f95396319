/** A figure with its thousands set apart by a space (ISO 80000-1), so that no comma can be taken for a decimal sign. */
export function grouped(value: number, decimals = 0): string {
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const spaced = whole.replace(/\B(?=(\d{3})+$)/g, ' ');
  const sign = value < 0 && Number(value.toFixed(decimals)) !== 0 ? '-' : '';
  return `${sign}${spaced}${fraction === undefined ? '' : `.${fraction}`}`;
}
