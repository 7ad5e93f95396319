import type { ZoneCoverage } from '../../presentation/views/coverage-zones.ts';

/** A zone's land on the scale of all zones: outline planned, tint supplied, hairline eight in ten, upright expected. */
export function ZoneBar({ zone, scaleHa }: { readonly zone: ZoneCoverage; readonly scaleHa: number }) {
  // The last pixel is kept for the outline.
  const x = (ha: number) => `${((99 * ha) / scaleHa).toFixed(3)}%`;
  const { p10, p50, p90 } = zone.expected;
  return (
    <svg className="zone-bar" width="100%" height="16" aria-hidden="true">
      <rect className="zone-supplied" x="0.5" y="3" width={x(zone.suppliedHa)} height="10" />
      <rect className="zone-planned" x="0.5" y="3" width={x(zone.plannedHa)} height="10" />
      <line className="range-hair" x1={x(p10)} x2={x(p90)} y1="8" y2="8" />
      <line className="range-hair" x1={x(p10)} x2={x(p10)} y1="5" y2="11" />
      <line className="range-hair" x1={x(p90)} x2={x(p90)} y1="5" y2="11" />
      <line className="range-middle" x1={x(p50)} x2={x(p50)} y1="1" y2="15" />
    </svg>
  );
}
