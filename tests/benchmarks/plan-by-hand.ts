import { type DispatchState, slotOf } from '../../src/engine/stages/6-delivery/dispatch-state.ts';
import { beginStep } from '../../src/engine/stages/6-delivery/search/change-rows.ts';
import { ALONE } from '../../src/engine/stages/6-delivery/search/find-place.ts';
import { putAt, takeOut } from '../../src/engine/stages/6-delivery/search/judge-places.ts';
import { firstDay, lastDay } from '../../src/engine/stages/6-delivery/search/ties.ts';

/**
 * What people do by hand, common practice, no source: day by day and vehicle by vehicle, from the depot to the nearest place that
 * waits, from there to the next nearest, until the vehicle is full or the day is over; one trip a day, leaving at eight (the shift
 * of the vehicles says when). Rules are kept: what would break one is passed over.
 */
export function planByHand(state: DispatchState): void {
  const { task, rows } = state;
  const slots = task.slots
    .map((slot, index) => ({ slot, index }))
    .sort((a, b) => a.slot.day - b.slot.day || a.index - b.index);
  for (const { slot, index } of slots) {
    let from = 0;
    const passedOver = new Set<number>();
    for (;;) {
      const next = nearestWaiting(state, index, from, passedOver);
      if (next < 0) break;
      const nodes = rows.nodes[index] as number;
      beginStep(rows);
      const heavy = (rows.mostKg[index] as number) + (task.loads[next]?.kg ?? 0) > slot.payloadKg;
      const full = (rows.mostLitres[index] as number) + (task.loads[next]?.coolLitres ?? 0) > slot.coolLitres;
      const fits = !heavy && !(full && slot.coolLitres > 0);
      if (fits && putAt(state.rows, next, index, nodes === 0 ? ALONE : (nodes - 2) * 4)) {
        from = task.loads[next]?.place ?? 0;
        continue;
      }
      if (fits) takeOut(rows, next, index);
      passedOver.add(next);
    }
  }
}

function nearestWaiting(state: DispatchState, index: number, from: number, passedOver: ReadonlySet<number>): number {
  const { task } = state;
  const slot = task.slots[index];
  if (!slot) return -1;
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  task.loads.forEach((load, one) => {
    if (slotOf(state, one) !== -1 || load.depot !== slot.depot || passedOver.has(one)) return;
    if (load.dayCost[slot.day] === Number.POSITIVE_INFINITY) return;
    if (slot.day < firstDay(state.rows, state.ties, one) || slot.day > lastDay(state.rows, state.ties, one)) return;
    const leg = slot.legs.at[from * slot.legs.size + load.place] as number;
    const minutes = load.place === from ? 0 : leg < 0 ? Number.POSITIVE_INFINITY : (slot.legs.minutes[leg] as number);
    if (minutes < least) {
      least = minutes;
      best = one;
    }
  });
  return best;
}
