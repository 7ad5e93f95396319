import type { Plan } from '../../engine/index.ts';
import { localNumber, withUnit } from '../local-number.ts';
import type { Words } from '../wording/words.ts';

/** How the coverage view writes its figures in one language. */
export interface Amounts {
  readonly amount: (value: number, decimals?: number) => string;
  /** From kilograms: whole from 100 t up, one decimal below, two below 1. */
  readonly tonnes: (kilograms: number) => string;
  /** Whole from 100 up, one decimal below. */
  readonly hectares: (ha: number) => string;
  /** `USD 219 800`; the currency's own decimals below a hundred. */
  readonly money: (value: number, currency: string) => string;
  /** The same without the currency, beside one that has it. */
  readonly moneyAlone: (value: number, currency: string) => string;
}

export function amountsIn(words: Pick<Words, 'language'>): Amounts {
  // A minus sign, which is as wide as a figure; a hyphen is not.
  const amount = (value: number, decimals = 0) => localNumber(value, words, decimals).replace('-', '\u2212');
  const moneyAlone = (value: number, currency: string) =>
    amount(value, Math.abs(value) < 99.5 ? currencyDecimals(currency) : 0);
  return {
    amount,
    tonnes(kilograms) {
      const size = Math.abs(kilograms) / 1000;
      return amount(kilograms / 1000, size >= 99.5 ? 0 : size >= 0.95 ? 1 : 2);
    },
    hectares: (ha) => amount(ha, ha >= 99.5 ? 0 : 1),
    money: (value, currency) => withUnit(currency, moneyAlone(value, currency)),
    moneyAlone,
  };
}

/** Decimals of a currency (ISO 4217). */
function currencyDecimals(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** Draws of the parameters behind the plan's ranges, as its provenance tells; null where it does not. */
export function drawsOf({ provenance }: Plan): number | null {
  const inputs = provenance.flatMap((figure) => figure.inputs);
  const value = inputs.find(({ from }) => from === 'reference:draws')?.value;
  return typeof value === 'number' ? value : null;
}
