import type { OverlayPolygons } from '../../engine/index.ts';
import type { Ring, Rings } from './rings.ts';

/** A geometry in the memory of GEOS; 0 stands for none. */
export type Pointer = number;

const POLYGON = 3;
const MULTI_POLYGON = 6;
const BYTES_PER_DOUBLE = 8;
const BYTES_PER_POINTER = 4;

/** The functions of the GEOS C interface that the overlay uses; the package's own types describe no default export. */
export interface Geos {
  readonly Module: {
    readonly HEAPF64: Float64Array;
    readonly HEAPU32: Uint32Array;
    _malloc(bytes: number): Pointer;
    _free(pointer: Pointer): void;
  };
  GEOSversion(): string;
  GEOSCoordSeq_copyFromBuffer(buffer: Pointer, size: number, hasZ: number, hasM: number): Pointer;
  GEOSCoordSeq_copyToBuffer(sequence: Pointer, buffer: Pointer, hasZ: number, hasM: number): number;
  GEOSCoordSeq_getSize(sequence: Pointer, size: Pointer): number;
  GEOSGeom_createLinearRing(sequence: Pointer): Pointer;
  GEOSGeom_createPolygon(shell: Pointer, holes: Pointer, count: number): Pointer;
  GEOSGeom_createCollection(type: number, members: Pointer, count: number): Pointer;
  GEOSGeom_destroy(geometry: Pointer): void;
  GEOSGeom_getCoordSeq(ring: Pointer): Pointer;
  GEOSGeomTypeId(geometry: Pointer): number;
  GEOSGetNumGeometries(geometry: Pointer): number;
  GEOSGetGeometryN(geometry: Pointer, n: number): Pointer;
  GEOSGetExteriorRing(polygon: Pointer): Pointer;
  GEOSGetNumInteriorRings(polygon: Pointer): number;
  GEOSGetInteriorRingN(polygon: Pointer, n: number): Pointer;
  GEOSisEmpty(geometry: Pointer): number;
  GEOSisValid(geometry: Pointer): number;
  GEOSIntersection(a: Pointer, b: Pointer): Pointer;
  GEOSMakeValidParams_create(): Pointer;
  GEOSMakeValidParams_setMethod(parameters: Pointer, method: number): number;
  GEOSMakeValidParams_destroy(parameters: Pointer): void;
  GEOSMakeValidWithParams(geometry: Pointer, parameters: Pointer): Pointer;
  GEOSPrepare(geometry: Pointer): Pointer;
  GEOSPreparedCovers(prepared: Pointer, other: Pointer): number;
  GEOSPreparedIntersects(prepared: Pointer, other: Pointer): number;
  GEOSPreparedGeom_destroy(prepared: Pointer): void;
}

/** Copies polygons with closed rings into the memory of GEOS. The caller frees the geometry. */
export function writePolygons(geos: Geos, polygons: OverlayPolygons): Pointer {
  return withPointers(
    geos,
    polygons.map((rings) => writePolygon(geos, rings)),
    (members) => geos.GEOSGeom_createCollection(MULTI_POLYGON, members, polygons.length),
  );
}

function writePolygon(geos: Geos, [exterior, ...holes]: Rings): Pointer {
  const shell = writeRing(geos, exterior ?? []);
  return withPointers(
    geos,
    holes.map((hole) => writeRing(geos, hole)),
    (members) => geos.GEOSGeom_createPolygon(shell, members, holes.length),
  );
}

function writeRing(geos: Geos, ring: Ring): Pointer {
  const buffer = geos.Module._malloc(ring.length * 2 * BYTES_PER_DOUBLE);
  geos.Module.HEAPF64.set(ring.flat(), buffer / BYTES_PER_DOUBLE);
  const sequence = geos.GEOSCoordSeq_copyFromBuffer(buffer, ring.length, 0, 0);
  geos.Module._free(buffer);
  return geos.GEOSGeom_createLinearRing(sequence);
}

/** GEOS takes ownership of the members, not of the list of their pointers. */
function withPointers(geos: Geos, members: readonly Pointer[], make: (list: Pointer) => Pointer): Pointer {
  const list = geos.Module._malloc(Math.max(1, members.length) * BYTES_PER_POINTER);
  geos.Module.HEAPU32.set(members, list / BYTES_PER_POINTER);
  const made = make(list);
  geos.Module._free(list);
  return made;
}

/** Copies the polygons of a geometry out; points and lines in a mixed collection cover nothing and are left out. */
export function readPolygons(geos: Geos, geometry: Pointer): OverlayPolygons {
  if (geos.GEOSisEmpty(geometry)) return [];
  const type = geos.GEOSGeomTypeId(geometry);
  if (type === POLYGON) return [readPolygon(geos, geometry)];
  if (type < MULTI_POLYGON) return [];
  const polygons: Rings[] = [];
  for (let n = 0; n < geos.GEOSGetNumGeometries(geometry); n++) {
    polygons.push(...readPolygons(geos, geos.GEOSGetGeometryN(geometry, n)));
  }
  return polygons;
}

function readPolygon(geos: Geos, polygon: Pointer): Rings {
  const rings = [readRing(geos, geos.GEOSGetExteriorRing(polygon))];
  for (let n = 0; n < geos.GEOSGetNumInteriorRings(polygon); n++) {
    rings.push(readRing(geos, geos.GEOSGetInteriorRingN(polygon, n)));
  }
  return rings;
}

function readRing(geos: Geos, ring: Pointer): Ring {
  const sequence = geos.GEOSGeom_getCoordSeq(ring);
  const sizeAt = geos.Module._malloc(BYTES_PER_DOUBLE);
  geos.GEOSCoordSeq_getSize(sequence, sizeAt);
  const size = geos.Module.HEAPU32[sizeAt / BYTES_PER_POINTER] as number;
  geos.Module._free(sizeAt);
  const buffer = geos.Module._malloc(size * 2 * BYTES_PER_DOUBLE);
  geos.GEOSCoordSeq_copyToBuffer(sequence, buffer, 0, 0);
  const values = geos.Module.HEAPF64.slice(buffer / BYTES_PER_DOUBLE, buffer / BYTES_PER_DOUBLE + size * 2);
  geos.Module._free(buffer);
  return Array.from({ length: size }, (_, i) => [values[2 * i] as number, values[2 * i + 1] as number] as const);
}
