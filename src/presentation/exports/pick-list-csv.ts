import type { Plan, Scenario } from '../../engine/index.ts';
import { lotMoves } from '../views/stock-moves.ts';
import { csvText } from './csv-text.ts';

const HEADER = ['date', 'depot_id', 'lot_id', 'packs', 'community_id', 'vehicle_id', 'balance_after'];

/** What leaves the stores: one row a lot, day, vehicle and community, by day and depot, with what is left of the lot. */
export function pickListCsv(plan: Plan, scenario: Scenario): string {
  const depotOf = (lot: number) => scenario.lots[lot]?.depotId ?? '';
  const moves = lotMoves(plan, scenario).filter(({ kind }) => kind === 'out');
  const order = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
  return csvText(
    HEADER,
    moves
      .sort((a, b) => order(a.date, b.date) || order(depotOf(a.lot), depotOf(b.lot)) || a.lot - b.lot)
      .map(({ date, lot, packs, communityId, vehicleId, balance }) => [
        date,
        depotOf(lot),
        scenario.lots[lot]?.id ?? '',
        packs,
        communityId,
        vehicleId,
        balance,
      ]),
  );
}
