import type { DispatchState } from '../../src/engine/stages/6-delivery/dispatch-state.ts';
import { iceLeftFor, setLoad, setPlan } from '../../src/engine/stages/6-delivery/dispatch-state.ts';
import { planSlot } from '../../src/engine/stages/6-delivery/plan-slot.ts';
import { iceForTrip } from '../../src/engine/stages/6-delivery/rules/ice-stock.ts';
import { firstDayAfterSeed, lastDayBeforeInoculant } from '../../src/engine/stages/6-delivery/rules/seed-first.ts';

/**
 * What people do by hand, common practice, no source: day by day and vehicle by vehicle, from the depot to the nearest place that
 * waits, from there to the next nearest, until the vehicle is full or the day is over; one trip a day, leaving at eight (the shift
 * of the vehicles says when). Rules are kept: what would break one is passed over.
 */
export function planByHand(state: DispatchState): void {
  const { task, trial } = state;
  const slots = task.slots
    .map((slot, index) => ({ slot, index }))
    .sort((a, b) => a.slot.day - b.slot.day || a.index - b.index);
  for (const { slot, index } of slots) {
    const loads: number[] = [];
    let from = 0;
    const passedOver = new Set<number>();
    for (;;) {
      const next = nearestWaiting(state, index, from, passedOver);
      if (next < 0) break;
      const load = task.loads[next];
      if (!load) break;
      const mayTrain = load.mayTrain && (trial.trainer[load.community] as number) < 0;
      const aboard = [...loads, next];
      const cold = aboard.some((one) => (task.loads[one]?.inoculantKg ?? 0) > 0);
      const iceLeft = iceLeftFor(state, slot) + (state.plans[index]?.iceKg ?? 0);
      const wish = { loads: aboard, iceKg: cold ? iceForTrip(slot.boxIceKg, iceLeft) : 0, readyMinute: Number.NaN };
      const plan = planSlot(trial, slot, [wish], mayTrain ? next : -1);
      if (!plan) {
        passedOver.add(next);
        continue;
      }
      setPlan(state, index, plan);
      setLoad(state, next, index);
      loads.push(next);
      from = load.place;
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
    if (state.slotOf[one] !== -1 || load.depot !== slot.depot || passedOver.has(one)) return;
    if (load.dayCost[slot.day] === Number.POSITIVE_INFINITY) return;
    if (slot.day < firstDayAfterSeed(task.seedLinks, one, state.dayOf)) return;
    if (slot.day > lastDayBeforeInoculant(task.seedLinks, one, state.dayOf)) return;
    const leg = slot.legs.at[from * slot.legs.size + load.place] as number;
    const minutes = load.place === from ? 0 : leg < 0 ? Number.POSITIVE_INFINITY : (slot.legs.minutes[leg] as number);
    if (minutes < least) {
      least = minutes;
      best = one;
    }
  });
  return best;
}
