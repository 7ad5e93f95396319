import { isoDate, type Plan, type Scenario } from '../../engine/index.ts';

/** One movement of packs of a lot, and what is left after it. */
export interface LotMove {
  readonly lot: number;
  readonly date: string;
  readonly kind: 'in' | 'out';
  readonly packs: number;
  readonly balance: number;
  /** Of what came in. */
  readonly why: 'opening' | 'arrival';
  readonly communityId: string;
  readonly vehicleId: string;
}

/**
 * What comes to and goes from each lot, by lot, then day, in the order in which vehicles leave. A lot stands on its card from
 * the day that is known, or from the day it arrives.
 */
export function lotMoves(plan: Plan, scenario: Scenario): LotMove[] {
  const out = packsOut(plan);
  return scenario.lots.flatMap((lot, index) => {
    const isLater = lot.availableFrom !== null && lot.availableFrom > scenario.asOf;
    const opening: LotMove = {
      lot: index,
      date: isoDate(isLater && lot.availableFrom !== null ? lot.availableFrom : scenario.asOf),
      kind: 'in',
      packs: lot.packs,
      balance: lot.packs,
      why: isLater ? 'arrival' : 'opening',
      communityId: '',
      vehicleId: '',
    };
    let balance = lot.packs;
    const left = (out.get(index) ?? []).map((move): LotMove => {
      balance -= move.packs;
      return { ...opening, ...move, kind: 'out', balance };
    });
    return [opening, ...left];
  });
}

type Out = Pick<LotMove, 'lot' | 'date' | 'packs' | 'communityId' | 'vehicleId'>;

/** Packs that trips of the plan carry away, by lot; trips stand by day. */
function packsOut({ ids, delivery, allocation }: Plan): Map<number, Out[]> {
  const moves = new Map<number, Out[]>();
  delivery.stops.loads.forEach((loads, stop) => {
    const trip = delivery.stops.trip[stop] ?? -1;
    for (const load of loads) {
      (delivery.loads.grants[load] ?? []).forEach((grant, i) => {
        const lot = allocation.grants.lot[grant] ?? -1;
        const move = {
          lot,
          date: delivery.trips.date[trip] ?? '',
          packs: delivery.loads.packs[load]?.[i] ?? 0,
          communityId: ids.communities[allocation.grants.community[grant] ?? -1] ?? '',
          vehicleId: ids.vehicles[delivery.trips.vehicle[trip] ?? -1] ?? '',
        };
        moves.set(lot, [...(moves.get(lot) ?? []), move]);
      });
    }
  });
  for (const own of moves.values()) own.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  return moves;
}
