import { useEffect, useRef, useState } from 'react';
import type { Plan } from '../../../engine/index.ts';
import type { DayStop } from '../../../presentation/views/days-fleet.ts';
import { type MovePrice, type MoveTarget, movePrice, moveQuestion } from '../../../presentation/views/days-move.ts';
import type { SeasonState } from '../../state/season-state.ts';
import { useSeason } from '../../state/use-stores.ts';

/** A price, none to be had, or null: not known yet. */
export type PriceTold = MovePrice | 'none' | null;

/** What moving a stop to a target costs; none where nothing of it can be moved, or nobody can answer. */
export async function askMovePrice(
  askMove: SeasonState['askMove'],
  plan: Plan,
  stop: DayStop,
  target: MoveTarget,
): Promise<MovePrice | 'none'> {
  const question = moveQuestion(plan, stop, target);
  const answer = question && (await askMove(question));
  return question && answer ? movePrice(question, answer) : 'none';
}

const keyOf = ({ vehicleId, date }: MoveTarget) => `${vehicleId} ${date}`;

/** Prices of all that a stop may be taken to, one after the other; what is pointed at is asked first. */
export function useMovePrices(
  plan: Plan,
  stop: DayStop,
  targets: readonly MoveTarget[],
  aimed: MoveTarget | null,
): (target: MoveTarget) => PriceTold {
  const askMove = useSeason((season) => season.askMove);
  const [prices, setPrices] = useState<ReadonlyMap<string, MovePrice | 'none'>>(new Map());
  const isAsking = useRef(false);
  const isGone = useRef(false);
  const unknown = (target: MoveTarget) => !prices.has(keyOf(target));
  const next = aimed !== null && unknown(aimed) ? aimed : targets.find(unknown);
  useEffect(() => {
    isGone.current = false;
    return () => {
      isGone.current = true;
    };
  }, []);
  useEffect(() => {
    // One at a time: an answer asks for the next.
    if (next === undefined || isAsking.current) return;
    isAsking.current = true;
    void askMovePrice(askMove, plan, stop, next).then((price) => {
      isAsking.current = false;
      if (!isGone.current) setPrices((known) => new Map(known).set(keyOf(next), price));
    });
  });
  return (target) => prices.get(keyOf(target)) ?? null;
}
