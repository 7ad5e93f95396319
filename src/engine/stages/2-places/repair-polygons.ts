import { polygonAreaHa } from '../../numerics/equal-area.ts';
import type { PolygonOverlay } from '../../numerics/polygon-overlay.ts';
import type { MultiPolygon, PlaceGeometry } from '../../vocabulary/places.ts';
import { type Problem, problem } from '../../vocabulary/problems.ts';
import { rounded } from './rounded.ts';

/** A community or a zone, as far as its ground is concerned. */
interface PlaceOnGround {
  readonly id: string;
  readonly geometry: PlaceGeometry;
}

export interface MeasuredPolygons {
  /** Valid polygons, null for a point and where a polygon covers no ground. */
  readonly polygons: readonly (MultiPolygon | null)[];
  /** Hectares; NaN where there are no polygons. */
  readonly areaHa: Float64Array;
  readonly problems: readonly Problem[];
}

/** Makes invalid polygons valid, one by one, and measures all of them. `kind` names the places in what is noted. */
export function repairPolygons(
  places: readonly PlaceOnGround[],
  kind: 'community' | 'zone',
  overlay: PolygonOverlay,
): MeasuredPolygons {
  const problems: Problem[] = [];
  const polygons = places.map(({ id, geometry }) => {
    if (geometry.kind === 'point' || overlay.isValid(geometry.polygons)) {
      return geometry.kind === 'point' ? null : geometry.polygons;
    }
    const repaired = overlay.makeValid(geometry.polygons);
    const code = repaired ? 'E2001' : 'E2002';
    const facts = {
      kind,
      id,
      beforeHa: rounded(polygonAreaHa(geometry.polygons), 3),
      afterHa: rounded(repaired ? polygonAreaHa(repaired) : 0, 3),
    };
    problems.push(
      problem(code, { column: 'geometry', about: { part: kind === 'zone' ? 'zones' : 'communities', id }, facts }),
    );
    return repaired;
  });
  const areaHa = Float64Array.from(polygons, (held) => (held ? polygonAreaHa(held) : Number.NaN));
  return { polygons, areaHa, problems };
}
