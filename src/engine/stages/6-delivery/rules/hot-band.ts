import { HOT_LIMIT_CELSIUS } from '../../../reference/boxes.ts';

const LIMIT = HOT_LIMIT_CELSIUS.value;

/** Packs in air 2 K hotter throughout stay below 40 °C up to their hand-over. */
export function staysBelowHotLimit(hotBandC: number): boolean {
  return hotBandC < LIMIT;
}
