import type { Decisions } from '../../vocabulary/decisions.ts';
import type { Scenario } from '../../vocabulary/scenario.ts';
import type { StockChange } from '../../vocabulary/stock-change.ts';
import type { Lot } from '../../vocabulary/supply.ts';
import { type DayNumber, dayNumber } from '../../vocabulary/units.ts';

interface Supposed {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
}

/** How long packs not yet bought are taken to keep, days: no label says (assumed). */
const KEEPS_DAYS = 365;

/** Scenario and decisions as they would be. Lots that are new stand last, so that the others keep their places. */
export function applyChange(scenario: Scenario, decisions: Decisions, change: StockChange): Supposed {
  const withLots = (lots: readonly Lot[]): Supposed => ({ scenario: { ...scenario, lots }, decisions });
  const editLot = (lotId: string, edit: (lot: Lot) => Lot) =>
    scenario.lots.map((lot) => (lot.id === lotId ? edit(lot) : lot));
  const withDecisions = (list: Decisions['decisions']): Supposed => ({
    scenario,
    decisions: { ...decisions, decisions: list },
  });
  switch (change.kind) {
    case 'more-packs':
      return withLots([...scenario.lots, boughtLot(scenario, change)]);
    case 'lot-fails':
      return withLots(editLot(change.lotId, (lot) => ({ ...lot, status: 'awaiting' })));
    case 'lot-cleared':
      return withLots(editLot(change.lotId, (lot) => ({ ...lot, status: 'cleared' })));
    case 'lot-replaced': {
      const lot = scenario.lots.find(({ id }) => id === change.lotId);
      return withLots(
        lot ? [...scenario.lots, boughtLot(scenario, { ...lot, arrives: change.arrives })] : scenario.lots,
      );
    }
    case 'packs-moved':
      return withLots(moveLot(scenario, change));
    case 'reserve':
      return { scenario: { ...scenario, policy: { ...scenario.policy, reservePercent: change.percent } }, decisions };
    case 'decide':
      return withDecisions([...decisions.decisions, change.decision]);
    case 'release':
      return withDecisions(decisions.decisions.filter((_, index) => index !== change.index));
  }
}

interface Purchase {
  readonly productId: string;
  readonly depotId: string;
  readonly packs: number;
  readonly arrives: DayNumber;
}

/** Packs that meet their label: an inoculant the count it states, else the regulator's minimum. */
function boughtLot({ products }: Scenario, { productId, depotId, packs, arrives }: Purchase): Lot {
  const product = products.find(({ id }) => id === productId);
  return {
    id: `bought ${productId} at ${depotId}`,
    productId,
    depotId,
    packs,
    status: 'cleared',
    availableFrom: arrives,
    expires: dayNumber(arrives + KEEPS_DAYS),
    testedCountPerG: product?.kind === 'inoculant' && product.countPerG === null ? product.minCountPerG : null,
    testedOn: null,
    germinationPercent: null,
    seedClass: null,
  };
}

function moveLot({ lots }: Scenario, change: Extract<StockChange, { readonly kind: 'packs-moved' }>): Lot[] {
  const from = lots.find(({ id }) => id === change.lotId);
  if (!from) return [...lots];
  const packs = Math.min(change.packs, from.packs);
  const left = lots.map((lot) => (lot === from ? { ...lot, packs: lot.packs - packs } : lot));
  const availableFrom = dayNumber(Math.max(change.arrives, from.availableFrom ?? change.arrives));
  return [...left, { ...from, id: `${from.id} at ${change.depotId}`, depotId: change.depotId, packs, availableFrom }];
}
