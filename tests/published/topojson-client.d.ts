/** The package ships no types; this is the one function that the tests use. */
declare module 'topojson-client' {
  export function feature(topology: unknown, object: unknown): import('geojson').FeatureCollection;
}
