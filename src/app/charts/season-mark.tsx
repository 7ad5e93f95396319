import type { SeasonCost } from '../../engine/index.ts';

/** What cost a season most, as a shape that reads without colour. Drawn around (x, y). */
export function SeasonMark({ cost, x, y }: { readonly cost: SeasonCost; readonly x: number; readonly y: number }) {
  const at = `translate(${x} ${y})`;
  switch (cost) {
    case 'little':
      return <circle className="season-little" transform={at} r="4" />;
    case 'late':
      return <path className="season-late" transform={at} d="M-5.500 -4.500H5.500L0 5.500Z" />;
    case 'hot':
      return <path className="season-hot" transform={at} d="M-4 -4H4V4H-4Z" />;
    case 'no-onset':
      return <path className="season-no-onset" transform={at} d="M-4 -4 4 4M4 -4-4 4" />;
    case 'waiting':
      return <path className="season-waiting" transform={at} d="M0 -5.500 5.500 4.500H-5.500Z" />;
    case 'weak':
      return <path className="season-weak" transform={at} d="M0 -5 5 0 0 5-5 0Z" />;
  }
}
