import { isSameTarget, type MoveTarget } from '../../../presentation/views/days-move.ts';
import type { PointAt } from './use-pointer-drag.ts';

/** A place on the screen, px from its upper left corner. */
interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** What a dragged stop is over. */
export interface MoveAim {
  readonly target: MoveTarget;
  /** Where the stop is planned now. */
  readonly isHere: boolean;
  /** Around the vehicle's row or the day's column of the page; null on the board, which marks its own places. */
  readonly frame: Frame | null;
}

/** The vehicle or the day under a point, on the board or on the page; the other of the two stays as it is. */
export function moveAim({ x, y }: PointAt, from: MoveTarget): MoveAim | null {
  const found = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-vehicle], [data-day]');
  if (!found) return null;
  const { vehicle, day } = found.dataset;
  const target = { vehicleId: vehicle ?? from.vehicleId, date: day ?? from.date };
  const isOnBoard = found.closest('.move-board') !== null;
  const parts =
    day === undefined ? [found] : [...document.querySelectorAll<HTMLElement>(`.day-table [data-day="${day}"]`)];
  return { target, isHere: isSameTarget(target, from), frame: isOnBoard ? null : frameAround(parts) };
}

/** The frame around elements, as far as what they are moved within shows them. */
function frameAround(parts: readonly HTMLElement[]): Frame {
  const boxes = parts.map((part) => part.getBoundingClientRect());
  const within = parts[0]?.closest('.scrolls')?.getBoundingClientRect();
  const left = Math.max(within?.left ?? 0, Math.min(...boxes.map((box) => box.left)));
  const right = Math.min(within?.right ?? innerWidth, Math.max(...boxes.map((box) => box.right)));
  const top = Math.min(...boxes.map((box) => box.top));
  const bottom = Math.max(...boxes.map((box) => box.bottom));
  return { left, top, width: right - left, height: bottom - top };
}
