import type { Plan } from '../../engine/index.ts';
import { grouped } from '../grouped-figure.ts';

/** A figure whose thousands stay together at the end of a line. */
export const amount = (value: number, decimals = 0): string =>
  grouped(value, decimals).replaceAll(' ', '\u00a0').replace('-', '\u2212');

/** Tonnes from kilograms: whole from 100 t up, one decimal below, two below 1. */
export function tonnes(kilograms: number): string {
  const t = kilograms / 1000;
  const size = Math.abs(t);
  return amount(t, size >= 99.5 ? 0 : size >= 0.95 ? 1 : 2);
}

/** Hectares: whole from 100 up, one decimal below. */
export const hectares = (ha: number): string => amount(ha, ha >= 99.5 ? 0 : 1);

/** `USD 219 800`; the currency's own decimals below a hundred. */
export function money(value: number, currency: string): string {
  const { maximumFractionDigits = 2 } = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions();
  return `${currency}\u00a0${amount(value, Math.abs(value) < 100 ? maximumFractionDigits : 0)}`;
}

/** Draws of the parameters behind the plan's ranges, as its provenance tells; null where it does not. */
export function drawsOf({ provenance }: Plan): number | null {
  const inputs = provenance.flatMap((figure) => figure.inputs);
  const value = inputs.find(({ from }) => from === 'reference:draws')?.value;
  return typeof value === 'number' ? value : null;
}
