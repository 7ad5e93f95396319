import { placeOnScale, type RangeFigure } from '../../presentation/views/coverage-view.ts';

/**
 * A range as the page draws all ranges: one in ten to nine in ten as a hairline with end ticks, the quarters as a bar, the
 * middle as an upright, what is planned dashed, on a scale with a tick at nought. The words beside it say the same.
 */
export function RangeBar({ range }: { readonly range: RangeFigure }) {
  const x = (value: number) => `${placeOnScale(value, range)}%`;
  const upright = (value: number, from: number, to: number) => ({ x1: x(value), x2: x(value), y1: from, y2: to });
  return (
    <svg className="range-bar" width="100%" height="20" aria-hidden="true">
      <line className="range-axis" x1="0" x2="100%" y1="10" y2="10" />
      <line className="range-nought" {...upright(0, 6.5, 13.5)} />
      {range.planned !== null && <line className="range-planned" {...upright(range.planned, 1, 19)} />}
      <line className="range-hair" x1={x(range.low)} x2={x(range.high)} y1="10" y2="10" />
      <line className="range-hair" {...upright(range.low, 6.5, 13.5)} />
      <line className="range-hair" {...upright(range.high, 6.5, 13.5)} />
      <line className="range-quarters" x1={x(range.lowQuarter)} x2={x(range.highQuarter)} y1="10" y2="10" />
      <line className="range-middle" {...upright(range.middle, 3, 17)} />
    </svg>
  );
}
