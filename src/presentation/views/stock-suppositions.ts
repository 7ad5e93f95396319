import { dayNumber, type Scenario, type StockChange } from '../../engine/index.ts';

/** What the meeting supposes, as the fields of its form hold it. */
export interface Supposition {
  readonly kind: 'lot-fails' | 'lot-cleared' | 'lot-replaced' | 'more-packs';
  readonly lotId: string;
  readonly productId: string;
  readonly depotId: string;
  readonly packs: number;
}

/** The change that a supposition asks about; null where it names nothing of the scenario. What is bought comes after its lead time. */
export function supposedChange(supposed: Supposition, scenario: Scenario): StockChange | null {
  const lot = scenario.lots.find(({ id }) => id === supposed.lotId);
  const arrives = (productId: string) =>
    dayNumber(scenario.asOf + (scenario.products.find(({ id }) => id === productId)?.leadDays ?? 0));
  if (supposed.kind === 'more-packs') {
    const { productId, depotId, packs } = supposed;
    if (productId === '' || depotId === '') return null;
    return { kind: 'more-packs', productId, depotId, packs, arrives: arrives(productId) };
  }
  if (lot === undefined) return null;
  if (supposed.kind === 'lot-replaced') return { kind: supposed.kind, lotId: lot.id, arrives: arrives(lot.productId) };
  return { kind: supposed.kind, lotId: lot.id };
}
