import type { OverlayPolygons, PolygonOverlay, PreparedPolygon } from '../../engine/index.ts';
import { type Geos, type Pointer, readPolygons, writePolygons } from './geos-heap.ts';
import { closeRings } from './rings.ts';

const STRUCTURE_METHOD = 1;

/**
 * Overlay by GEOS (geos-wasm, LGPL-3.0-or-later), loaded when first asked for, so that it stays a chunk of its own that
 * can be replaced. Runs in Node and in a browser worker. Rings are closed here; numbers must be finite.
 */
export async function loadGeosOverlay(): Promise<PolygonOverlay> {
  const library = (await import('geos-wasm')) as unknown as { default(config: object): Promise<Geos> };
  return geosOverlay(await library.default({ errorHandler: ignore, noticeHandler: ignore }));
}

/** A failed call gives 0 or 2, which is dealt with at the call; the text for the console is of no use. */
function ignore(): void {}

function geosOverlay(geos: Geos): PolygonOverlay {
  return {
    name: 'geos',
    version: geos.GEOSversion(),
    options: 'make valid by structure',
    isValid: (polygons) => {
      const closed = closeRings(polygons);
      return sameParts(polygons, closed) && withGeometry(geos, closed, (geometry) => geos.GEOSisValid(geometry) === 1);
    },
    makeValid: (polygons) => withGeometry(geos, closeRings(polygons), (geometry) => makeValid(geos, geometry)),
    prepare: (polygons) => new GeosPrepared(geos, polygons),
  };
}

class GeosPrepared implements PreparedPolygon {
  private readonly geos: Geos;
  private readonly geometry: Pointer;
  private readonly prepared: Pointer;

  constructor(geos: Geos, polygons: OverlayPolygons) {
    this.geos = geos;
    this.geometry = writePolygons(geos, closeRings(polygons));
    this.prepared = geos.GEOSPrepare(this.geometry);
  }

  covers(other: OverlayPolygons): boolean {
    return withGeometry(this.geos, closeRings(other), (b) => this.geos.GEOSPreparedCovers(this.prepared, b) === 1);
  }

  intersection(other: OverlayPolygons): OverlayPolygons {
    const { geos } = this;
    return withGeometry(geos, closeRings(other), (b) => {
      if (geos.GEOSPreparedIntersects(this.prepared, b) === 0) return [];
      return readAndFree(geos, geos.GEOSIntersection(this.geometry, b));
    });
  }

  release(): void {
    this.geos.GEOSPreparedGeom_destroy(this.prepared);
    this.geos.GEOSGeom_destroy(this.geometry);
  }
}

/** A ring that covers nothing makes its polygon invalid. */
function sameParts(before: OverlayPolygons, after: OverlayPolygons): boolean {
  return before.length === after.length && before.every((rings, i) => rings.length === after[i]?.length);
}

function makeValid(geos: Geos, geometry: Pointer): OverlayPolygons | null {
  const parameters = geos.GEOSMakeValidParams_create();
  geos.GEOSMakeValidParams_setMethod(parameters, STRUCTURE_METHOD);
  const valid = geos.GEOSMakeValidWithParams(geometry, parameters);
  geos.GEOSMakeValidParams_destroy(parameters);
  const polygons = readAndFree(geos, valid);
  return polygons.length > 0 ? polygons : null;
}

function readAndFree(geos: Geos, geometry: Pointer): OverlayPolygons {
  if (geometry === 0) throw new Error('GEOS could not overlay these polygons');
  const polygons = readPolygons(geos, geometry);
  geos.GEOSGeom_destroy(geometry);
  return polygons;
}

function withGeometry<T>(geos: Geos, closed: OverlayPolygons, use: (geometry: Pointer) => T): T {
  const geometry = writePolygons(geos, closed);
  try {
    return use(geometry);
  } finally {
    geos.GEOSGeom_destroy(geometry);
  }
}
