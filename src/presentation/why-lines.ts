import type { Plan } from '../engine/index.ts';
import { grouped } from './grouped-figure.ts';
import { WHY_WORDING as WORDS } from './wording/english/headline.ts';
import {
  LOT_REASON_WORDING,
  SHORTFALL_WORDING,
  UNREACHABLE_WORDING,
  UNSERVED_WORDING,
} from './wording/english/reasons.ts';

/** Why the plan gives no more: shortfalls, loads not served, lots not given and places not reached, one line a reason. */
export function whyLines(plan: Plan): string[] {
  return [...shortfallLines(plan), ...unservedLines(plan), ...lotLines(plan), ...unreachableLines(plan)];
}

function shortfallLines({ allocation: { shortfalls } }: Plan): string[] {
  const hectares = sumBy(
    shortfalls.reason,
    shortfalls.hectares,
    (reason, row) => `${WORDS.short[shortfalls.commodity[row] ?? 'seed']}: ${SHORTFALL_WORDING[reason]}`,
  );
  return hectares.map(([words, ha]) => `${grouped(ha, 1)} ${words}`);
}

function unservedLines({ delivery: { unserved, loads }, allocation: { consignments } }: Plan): string[] {
  const isFertiliser = (row: number) =>
    consignments.group[loads.consignment[unserved.load[row] ?? -1] ?? -1] === 'fertiliser';
  const hectares = sumBy(
    unserved.reason,
    unserved.hectares,
    (reason, row) => `${isFertiliser(row) ? WORDS.fertiliserLeft : WORDS.unserved}: ${UNSERVED_WORDING[reason]}`,
  );
  return hectares.map(([words, ha]) => `${grouped(ha, 1)} ${words}`);
}

function lotLines({ ids, allocation: { lots } }: Plan): string[] {
  return lots.reasons.flatMap((reasons, lot) =>
    reasons.length === 0
      ? []
      : [`${ids.lots[lot]} ${WORDS.lot}: ${reasons.map((r) => LOT_REASON_WORDING[r]).join('; ')}`],
  );
}

function unreachableLines({ ids, places: { unreachable } }: Plan): string[] {
  const ones = unreachable.reason.map(() => 1);
  const places = sumBy(unreachable.reason, ones, (reason, row) => {
    const vehicle = ids.vehicles[unreachable.vehicle[row] ?? -1] ?? '';
    return `${WORDS.places} ${vehicle}: ${UNREACHABLE_WORDING[reason]}`;
  });
  return places.map(([words, count]) => `${grouped(count)} ${words}`);
}

/** Sums of a column by the words of each row, largest first; equal ones in the order met. */
function sumBy<T>(
  rows: readonly T[],
  column: readonly number[],
  wordsOf: (row: T, index: number) => string,
): [words: string, sum: number][] {
  const sums = new Map<string, number>();
  rows.forEach((row, i) => {
    const words = wordsOf(row, i);
    sums.set(words, (sums.get(words) ?? 0) + (column[i] ?? 0));
  });
  return [...sums].sort(([, a], [, b]) => b - a);
}
