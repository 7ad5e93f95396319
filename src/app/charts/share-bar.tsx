import type { Land } from '../../presentation/views/stock-land.ts';

interface ShareBarProps {
  readonly land: Land;
  /** Shares held by hand, 0 to 1: drawn as uprights. */
  readonly marks?: readonly number[];
}

const percent = (share: number) => `${100 * Math.max(0, Math.min(1, share))}%`;

/** Planned land as one bar: with seed and inoculant solid, with seed alone hatched wide, without seed hatched close. */
export function ShareBar({ land, marks = [] }: ShareBarProps) {
  const { plannedHa, seedHa, inoculatedHa } = land;
  const of = (hectares: number) => percent(hectares / Math.max(plannedHa, 1e-9));
  return (
    <span className="share-bar" aria-hidden="true">
      <span className="share-bar-full" style={{ width: of(inoculatedHa) }} />
      <span className="hatch-some" style={{ width: of(seedHa - inoculatedHa) }} />
      <span className="hatch-much" style={{ width: of(plannedHa - seedHa) }} />
      {marks.map((share) => (
        <span key={share} className="share-bar-mark" style={{ insetInlineStart: percent(share) }} />
      ))}
    </span>
  );
}
