import type { VehicleSign } from '../../../../presentation/views/days-vehicles.ts';

/** A vehicle's line and letter, as on the map. */
export function VehicleSignMark({ sign }: { readonly sign: VehicleSign }) {
  return (
    <span className="sign">
      <svg width="26" height="8" aria-hidden="true" style={{ color: `var(--${sign.tone})` }}>
        <path className={`sign-line line-${sign.pattern}`} d="M0 4H26" />
      </svg>
      <b className="sign-letter">{sign.letter}</b>
    </span>
  );
}
