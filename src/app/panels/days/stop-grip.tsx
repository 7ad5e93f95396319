import { useRef } from 'react';
import { localNumber } from '../../../presentation/local-number.ts';
import type { DayStop, VehicleDay } from '../../../presentation/views/days-fleet.ts';
import type { MoveTarget } from '../../../presentation/views/days-move.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useWords } from '../../state/use-stores.ts';
import type { DayShown } from './day-shown.ts';
import { DraggedStop } from './dragged-stop.tsx';
import { moveAim } from './move-aim.ts';
import { usePointerDrag } from './use-pointer-drag.ts';

interface StopGripProps {
  readonly shown: DayShown;
  readonly vehicle: VehicleDay;
  readonly stop: DayStop;
  readonly place: string;
  /** Null: pressed without being dragged. */
  readonly onMove: (to: MoveTarget | null) => void;
}

/** A stop's number, by which it is dragged. Not for keys: the button beside it does the same without dragging. */
export function StopGrip({ shown, vehicle, stop, place, onMove }: StopGripProps) {
  const words = useWords();
  const { moves } = paperWords(words);
  const grip = useRef<HTMLSpanElement>(null);
  const from = { vehicleId: vehicle.id, date: shown.day };
  const drag = usePointerDrag(grip, {
    onPress: () => onMove(null),
    onDrop: (at) => {
      const aim = moveAim(at, from);
      if (aim !== null && !aim.isHere) onMove(aim.target);
    },
  });
  const number = localNumber(stop.number, words);
  return (
    <>
      <span ref={grip} className={`stop-grip ${drag ? 'is-held' : ''}`} title={moves.grip(place)}>
        <svg width="8" height="14" aria-hidden="true">
          {[2, 7, 12].map((y) => (
            <path key={y} d={`M1 ${y}h2M5 ${y}h2`} />
          ))}
        </svg>{' '}
        {number}
      </span>
      {drag && <DraggedStop {...{ shown, stop, from, number, place, drag }} />}
    </>
  );
}
