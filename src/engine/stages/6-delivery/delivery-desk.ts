import type { Scenario } from '../../vocabulary/scenario.ts';
import type { MoveAsked, MovePriced } from '../../vocabulary/stage-results/move.ts';
import type { CutLoads } from './cut-loads.ts';
import { type DispatchState, dayOfLoad, slotOf } from './dispatch-state.ts';
import type { TaskLoad } from './dispatch-task.ts';
import { firstHurdle } from './explain-unserved.ts';
import { insertInto, insertLoad, removeLoads } from './fill-up.ts';
import { moneyOf } from './money-of.ts';
import { beginStep, takeBack } from './search/change-rows.ts';
import { firstDay, lastDay } from './search/ties.ts';
import type { Slot } from './vehicle-day-slots.ts';

/** Prices moves on a plan as it stands, one at a time; the plan is left as it was. */
export class DeliveryDesk {
  private readonly scenario: Scenario;
  private readonly state: DispatchState;
  private readonly cut: CutLoads;

  constructor(scenario: Scenario, state: DispatchState, cut: CutLoads) {
    this.scenario = scenario;
    this.state = state;
    this.cut = cut;
  }

  /**
   * What it costs to bring the goods of a community with a vehicle on a day. Whatever may not stay where it is without them
   * (inoculant for their seed, loads that share their training) finds the cheapest place again.
   */
  priceMove({ consignment, along = [], vehicle, day }: MoveAsked): MovePriced {
    const { state } = this;
    const { task, rows } = state;
    const moved = [consignment, ...along];
    const own = this.cut.loads.flatMap((load, index) => (moved.includes(load.consignment) ? [index] : []));
    const slot = task.slots.findIndex((s) => s.vehicle === vehicle && s.day === day);
    const nothing = { cost: null, money: null, promisePrice: task.promisePrice, otherDay: false, leftBehind: [] };
    if (own.length === 0 || slot < 0) return { ...nothing, reason: 'no-vehicle-day-left' };
    const before = { cost: rows.cost, money: moneyOf(this.scenario, state) };
    const servedBefore = [...task.loads.keys()].filter((load) => slotOf(state, load) !== -1);
    const daysBefore = own.map((load) => dayOfLoad(state, load));
    beginStep(rows);
    removeLoads(state, own);
    const reason = this.putAll(own, slot);
    let answer: MovePriced = { ...nothing, reason };
    if (reason === null) {
      const absent = servedBefore.filter((load) => slotOf(state, load) === -1);
      for (const load of absent) insertLoad(state, load);
      const money = moneyOf(this.scenario, state);
      answer = {
        reason: null,
        cost: rows.cost - before.cost,
        money: money === null || before.money === null ? null : money - before.money,
        promisePrice: task.promisePrice,
        otherDay: daysBefore.some((was) => was >= 0 && was !== day),
        leftBehind: absent
          .filter((load) => slotOf(state, load) === -1)
          .map((load) => (task.loads[load] as TaskLoad).consignment),
      };
    }
    takeBack(rows);
    return answer;
  }

  /** Puts loads into a vehicle-day one after the other; why not, where a rule forbids it. */
  private putAll(loads: readonly number[], index: number): MovePriced['reason'] {
    const { state } = this;
    const { rows, ties } = state;
    const slot = state.task.slots[index] as Slot;
    for (const load of loads) {
      const { dayCost, depot } = state.task.loads[load] as TaskLoad;
      if (depot !== slot.depot) return 'not-reachable';
      if (slot.day < firstDay(rows, ties, load)) return 'seed-not-delivered';
      const inTime = slot.day <= lastDay(rows, ties, load);
      const allowed = inTime && (dayCost[slot.day] as number) < Number.POSITIVE_INFINITY;
      if (allowed && insertInto(state, load, index)) continue;
      const hurdle = firstHurdle(state, load, slot);
      return hurdle === 'no-vehicle-day-left' && !allowed ? 'decision' : hurdle;
    }
    return null;
  }
}
