import { isoDate, parseIsoDate } from '../../../../src/engine/vocabulary/calendar.ts';
import type { Decision, Decisions } from '../../../../src/engine/vocabulary/decisions.ts';
import type { Plan } from '../../../../src/engine/vocabulary/plan.ts';
import type { ProblemCode } from '../../../../src/engine/vocabulary/problems.ts';
import type { Scenario } from '../../../../src/engine/vocabulary/scenario.ts';
import { dayNumber } from '../../../../src/engine/vocabulary/units.ts';

/**
 * Ways to spoil a plan that holds, and the code that must appear. Written for any plan: each looks for a row that suits it
 * and says no where there is none. The list stands in the README of the checker.
 */

export type Draft<T> = { -readonly [K in keyof T]: Draft<T[K]> };
export type PlanDraft = Draft<Plan>;

export interface Judged {
  readonly scenario: Scenario;
  readonly decisions: Decisions;
  readonly plan: unknown;
}

export interface Spoil {
  readonly name: string;
  readonly code: ProblemCode;
  /** Spoils a copy; false where the plan has no row that suits, an object where more than the plan changes. */
  readonly spoil: (plan: PlanDraft, scenario: Scenario, decisions: Decisions) => boolean | Partial<Judged>;
}

/** Spoils a copy of a plan; null where the plan has nothing to spoil in this way. */
export function applySpoil(spoil: Spoil, { scenario, decisions, plan }: Judged): Judged | null {
  const draft = structuredClone(plan) as PlanDraft;
  const done = spoil.spoil(draft, scenario, decisions);
  if (done === false) return null;
  return { scenario, decisions, plan: draft, ...(done === true ? {} : done) };
}

// ------------------------------------------------------------------------------------------------ looking for rows

export const at = <T>(list: readonly T[], i: number): T => list[i] as T;
export const where = <T>(list: readonly T[], is: (value: T, i: number) => boolean): number => list.findIndex(is);

/** Runs a spoil on the first row that suits. */
export function onFirst<T>(
  list: readonly T[],
  is: (value: T, i: number) => boolean,
  spoil: (i: number) => unknown,
): boolean {
  const row = where(list, is);
  if (row < 0) return false;
  spoil(row);
  return true;
}

export const set = <T>(list: T[], i: number, value: T): void => {
  list[i] = value;
};
/** Changes members of an object in place. */
export const change = <T extends object>(target: T, patch: Partial<T>): true => {
  Object.assign(target, patch);
  return true;
};
export const emptyTable = (table: object): true => {
  for (const column of Object.values(table) as unknown[][]) column.length = 0;
  return true;
};
export const scale = (list: number[], i: number, by: number): void => {
  list[i] = at(list, i) * by;
};
export const later = (date: string, days: number): string => isoDate(dayNumber((parseIsoDate(date) ?? 0) + days));

export const productOf = (s: Scenario, lot: number) => s.products.find(({ id }) => id === at(s.lots, lot).productId);
export const kindOf = (s: Scenario, lot: number) => productOf(s, lot)?.kind;
export const lotWith = (p: PlanDraft, reason: string) =>
  where(p.allocation.lots.reasons, (reasons) => reasons.includes(reason as never));

/** Gives the first suited grant to another lot. */
export function giveLot(p: PlanDraft, s: Scenario, lot: number): boolean {
  const kind = lot < 0 ? undefined : kindOf(s, lot);
  return (
    lot >= 0 &&
    onFirst(
      p.allocation.grants.lot,
      (other) => kindOf(s, other) === kind,
      (i) => set(p.allocation.grants.lot, i, lot),
    )
  );
}

export const heldBack = (name: string, reason: string): Spoil => ({
  name,
  code: 'E8402',
  spoil: (p, s) => giveLot(p, s, lotWith(p, reason)),
});

/** First stop that hands inoculant over. */
export const coolStop = (p: PlanDraft) =>
  where(p.delivery.stops.loads, (loads) => loads.some((load) => at(p.delivery.loads.inoculantKg, load) > 0));

/** Moves every trip of a row's day to another date. */
export function moveTrip(p: PlanDraft, trip: number, date: string): void {
  set(p.delivery.trips.date, trip, date);
}

/** First date with a test, from planning.from on. */
export function dateWith(s: Scenario, is: (offset: number) => boolean): string | null {
  for (let offset = 0; s.planning.from + offset <= s.planning.to; offset++)
    if (is(offset)) return isoDate(dayNumber(s.planning.from + offset));
  return null;
}

export const decide = (d: Decisions, decision: Decision): Decisions => ({
  ...d,
  decisions: [...d.decisions, decision],
});

/** A community and crop that is given packs of a kind. */
export function grantOf(p: PlanDraft, s: Scenario, kind: 'seed' | 'inoculant') {
  const grant = where(p.allocation.grants.lot, (lot) => kindOf(s, lot) === kind);
  if (grant < 0) return null;
  return {
    grant,
    communityId: at(s.communities, at(p.allocation.grants.community, grant)).id,
    crop: at(s.crops, at(p.allocation.grants.crop, grant)),
    commodity: kind,
  };
}

/** Takes everything that is driven out of a plan. */
export function leaveAllBehind(p: PlanDraft): void {
  const { trips, stops, loads } = p.delivery;
  for (const column of [...Object.values(trips), ...Object.values(stops)] as unknown[][]) column.length = 0;
  p.delivery.legs = [];
  p.delivery.unserved = {
    load: loads.consignment.map((_, load) => load),
    reason: loads.consignment.map(() => 'no-vehicle-day-left'),
    hectares: [...loads.hectares],
  };
}

/** Takes everything that is given out of a plan, and says that roads and vehicles are to blame. */
export function giveNothing(p: PlanDraft, reason: 'stock-short' | 'not-delivered'): void {
  leaveAllBehind(p);
  const { grants, consignments, shares, shortfalls, packShares } = p.allocation;
  const emptied = [grants, consignments, shortfalls, packShares, p.delivery.loads, p.delivery.unserved];
  for (const column of emptied.flatMap((table) => Object.values(table)) as unknown[][]) column.length = 0;
  shares.community.forEach((_, row) => {
    const own = Math.min(at(shares.seedNeedKg, row), at(shares.ownSeedKg, row));
    set(shares.seedGivenKg, row, 0);
    set(shares.inoculantGivenSeedKg, row, 0);
    set(shares.inoculantNeedSeedKg, row, own);
    set(shares.seedShare, row, own / at(shares.seedNeedKg, row));
    set(shares.inoculantShare, row, 0);
    for (const commodity of ['seed', 'inoculant'] as const) {
      const short = commodity === 'seed' ? at(shares.seedNeedKg, row) - own : at(shares.seedNeedKg, row);
      shortfalls.shareRow.push(row);
      shortfalls.commodity.push(commodity);
      shortfalls.shortKg.push(short);
      shortfalls.hectares.push(0);
      shortfalls.reason.push(reason);
      shortfalls.product.push(-1);
    }
  });
}
