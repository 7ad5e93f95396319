import { type RefObject, useEffect, useRef, useState } from 'react';

/** A place on the screen. */
export interface PointAt {
  readonly x: number;
  readonly y: number;
}

/** What is dragged: where it was taken, where it is, and by what. */
export interface PointerDrag {
  readonly from: PointAt;
  readonly at: PointAt;
  readonly isTouch: boolean;
}

/** A hand is never quite still: less than this is a press. A finger is less still than a mouse. */
const [MOUSE_PIXELS, FINGER_PIXELS] = [4, 8] as const;

/** Whether a pointer went far enough from where it was pressed to mean a drag. */
export const isDragged = (from: PointAt, at: PointAt, isTouch: boolean): boolean =>
  Math.hypot(at.x - from.x, at.y - from.y) >= (isTouch ? FINGER_PIXELS : MOUSE_PIXELS);

interface Ends {
  /** Pressed and let go without a drag. */
  readonly onPress: () => void;
  readonly onDrop: (at: PointAt) => void;
}

/**
 * Drags an element by mouse, pen or finger. Escape, a second finger or a lost pointer end it without a drop. The element itself must not
 * scroll the page under a finger (`touch-action: none`).
 */
export function usePointerDrag(grip: RefObject<HTMLElement | null>, ends: Ends): PointerDrag | null {
  const [drag, setDrag] = useState<PointerDrag | null>(null);
  const latest = useRef(ends);
  latest.current = ends;
  useEffect(() => {
    const element = grip.current;
    if (element === null) return;
    let held: { readonly pointer: number; readonly from: PointAt; readonly isTouch: boolean; isDrag: boolean } | null =
      null;
    const end = () => {
      if (held !== null && element.hasPointerCapture(held.pointer)) element.releasePointerCapture(held.pointer);
      held = null;
      setDrag(null);
      removeEventListener('keydown', onKey, true);
      removeEventListener('blur', end);
      removeEventListener('scroll', onScroll, true);
    };
    // The page went on under a pointer that stayed.
    const onScroll = () => setDrag((drag) => drag && { ...drag });
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      // Of what lies below, nothing is closed by the same key.
      event.stopPropagation();
      end();
    };
    const onDown = (event: PointerEvent) => {
      if (held !== null) return end();
      if (event.button !== 0) return;
      // No text is marked, and the mark of a focus stays where it was.
      event.preventDefault();
      held = {
        pointer: event.pointerId,
        from: { x: event.clientX, y: event.clientY },
        isTouch: event.pointerType === 'touch',
        isDrag: false,
      };
      element.setPointerCapture(event.pointerId);
      addEventListener('keydown', onKey, true);
      addEventListener('blur', end);
      addEventListener('scroll', onScroll, true);
    };
    const onMove = (event: PointerEvent) => {
      if (held?.pointer !== event.pointerId) return;
      const at = { x: event.clientX, y: event.clientY };
      held.isDrag ||= isDragged(held.from, at, held.isTouch);
      if (held.isDrag) setDrag({ from: held.from, at, isTouch: held.isTouch });
    };
    const onUp = (event: PointerEvent) => {
      if (held?.pointer !== event.pointerId) return;
      const { isDrag } = held;
      end();
      if (isDrag) latest.current.onDrop({ x: event.clientX, y: event.clientY });
      else latest.current.onPress();
    };
    const onLost = (event: PointerEvent) => {
      if (held?.pointer === event.pointerId) end();
    };
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('pointerup', onUp);
    element.addEventListener('pointercancel', onLost);
    element.addEventListener('lostpointercapture', onLost);
    return () => {
      end();
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointercancel', onLost);
      element.removeEventListener('lostpointercapture', onLost);
    };
  }, [grip]);
  return drag;
}
