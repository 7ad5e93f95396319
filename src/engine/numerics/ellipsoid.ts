/** WGS 84 (read: geographiclib documentation): semi-major axis in metres and flattening. */
export const SEMI_MAJOR_M = 6378137;
const FLATTENING = 1 / 298.257223563;

/** First eccentricity squared, and semi-minor axis in metres (derived from the two above). */
export const ECCENTRICITY2 = FLATTENING * (2 - FLATTENING);
export const SEMI_MINOR_M = SEMI_MAJOR_M * (1 - FLATTENING);

export const RADIANS_PER_DEGREE = Math.PI / 180;
