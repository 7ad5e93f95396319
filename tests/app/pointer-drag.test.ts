import { describe, expect, it } from 'vitest';
import { isDragged } from '../../src/app/panels/days/use-pointer-drag.ts';

describe('a press', () => {
  const pressed = { x: 100, y: 100 };

  it('is no drag while the hand is merely not still', () => {
    expect(isDragged(pressed, { x: 102, y: 102 }, false)).toBe(false);
    expect(isDragged(pressed, { x: 104, y: 104 }, true)).toBe(false);
  });

  it('becomes one in any direction, sooner by mouse than by finger', () => {
    expect(isDragged(pressed, { x: 95, y: 100 }, false)).toBe(true);
    expect(isDragged(pressed, { x: 95, y: 100 }, true)).toBe(false);
    expect(isDragged(pressed, { x: 100, y: 92 }, true)).toBe(true);
  });
});
