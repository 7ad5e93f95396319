import type { Scenario } from '../../vocabulary/scenario.ts';
import type { DispatchState } from './dispatch-state.ts';

/** Vehicle-days, crew, kilometres and ice, in the scenario's currency; null where nothing of it has a price. */
export function moneyOf(scenario: Scenario, state: DispatchState): number | null {
  const priced =
    scenario.vehicles.some((v) => v.costPerDay > 0 || v.costPerKm > 0 || v.crew * v.perDiem > 0) ||
    scenario.prices.icePerKg !== null;
  if (!priced) return null;
  const { task, rows } = state;
  return task.slots.reduce((total, slot, i) => {
    if (rows.nodes[i] === 0) return total;
    let iceKg = 0;
    for (let iced = rows.iced[i] as number; iced > 0; iced &= iced - 1) iceKg += slot.boxIceKg;
    return total + slot.dayCost + (rows.km[i] as number) * slot.kmCost + iceKg * slot.icePerKg;
  }, 0);
}
