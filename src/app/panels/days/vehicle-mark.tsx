import type { VehicleMark as Mark } from '../../../presentation/views/days-fleet.ts';

/** A vehicle's letter on ink, after a piece of its line. */
export function VehicleMark({ mark }: { readonly mark: Mark }) {
  return (
    <span className="vehicle-mark">
      <svg width="26" height="10" aria-hidden="true" className={`vehicle-line line-${mark.pattern}`}>
        <line x1="0" y1="5" x2="26" y2="5" stroke={`var(--${mark.tone})`} />
      </svg>
      <span className="vehicle-letter">{mark.letter}</span>
    </span>
  );
}
