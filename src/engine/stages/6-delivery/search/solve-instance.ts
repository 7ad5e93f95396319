import type { UnservedReason } from '../../../vocabulary/reasons.ts';
import type { SearchSettings } from '../../../vocabulary/settings.ts';
import { anneal } from './anneal.ts';
import { explainLeftOut } from './explain-left-out.ts';
import { DEPOT, type RouteState } from './route-state.ts';
import { posePublished, type RoutingInstance } from './routing-instance.ts';

export interface InstanceRoute {
  /** Number of the vehicle as the file counts them, from 1. */
  readonly vehicle: number;
  /** Its type, from 1 in the order of the file. */
  readonly vehicleType: number;
  /** Customers of each trip, from 1 in the order of the file. */
  readonly trips: readonly (readonly number[])[];
}

export interface InstanceAnswer {
  /** In what the set reports; customers left out are not priced in it. */
  readonly cost: number;
  readonly routes: readonly InstanceRoute[];
  readonly leftOut: readonly number[];
  /** Why, for each of them: what binds on the vehicle that comes nearest to serving it. */
  readonly leftOutFor: readonly UnservedReason[];
  readonly iterationsDone: number;
  readonly stoppedBy: 'iterations' | 'time';
}

/** Solves a published instance with the search that plans deliveries: heat off, one day. */
export function solveInstance(instance: RoutingInstance, settings: SearchSettings): InstanceAnswer {
  const posed = posePublished(instance);
  const { state, iterationsDone, stoppedBy } = anneal(posed.problem, settings);
  const routes: InstanceRoute[] = [];
  let cost = 0;
  for (let slot = 0; slot < posed.problem.slots.count; slot++) {
    if (state.nodes[slot] === 0) continue;
    cost += state.slotCost[slot] as number;
    routes.push({ ...(posed.vehicles[slot] as (typeof posed.vehicles)[number]), trips: tripsOf(state, slot) });
  }
  const absent = [...state.slotOf].flatMap((slot, visit) => (slot < 0 ? [visit] : []));
  const leftOut = absent.map((visit) => visit + 1);
  const leftOutFor = explainLeftOut(posed.problem, absent);
  routes.sort((a, b) => a.vehicle - b.vehicle);
  return { cost: cost / instance.costUnits, routes, leftOut, leftOutFor, iterationsDone, stoppedBy };
}

function tripsOf(state: RouteState, slot: number): number[][] {
  const row = [...state.load.subarray(slot * state.stride, slot * state.stride + (state.nodes[slot] as number))];
  const trips: number[][] = [];
  for (const visit of row.slice(0, -1)) {
    if (visit === DEPOT) trips.push([]);
    else trips.at(-1)?.push(visit + 1);
  }
  return trips;
}
