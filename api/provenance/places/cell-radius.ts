/** Semi-major axis of the WGS 84 ellipsoid, metres (NIMA TR8350.2, 3rd edition). */
const EQUATORIAL_RADIUS = 6_378_137;
/** Flattening of the WGS 84 ellipsoid (NIMA TR8350.2, 3rd edition). */
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * Radius in whole metres of a circle about the centre of a cell of the graticule that holds the whole cell, on WGS 84.
 * The way from the centre to a corner along which latitude and longitude change evenly is nowhere longer, per degree, than the meridian
 * is at the edge nearest the pole and the parallel at the edge nearest the equator (radii of curvature in the meridian and in the prime vertical); the
 * shortest way is no longer than that. So it is never too small, and less than 1 % too large for a cell of 0.1 degree at 60 degrees or less.
 * @param latitude of the centre, degrees, -90 to 90
 * @param size side of the cell, degrees, above 0; the cell touches neither pole from beyond nor crosses the equator
 */
export function cellRadius(latitude: number, size: number): number {
  const [near, far] = [Math.abs(latitude) - size / 2, Math.abs(latitude) + size / 2].map(radians);
  const bend = (angle: number): number => 1 - ECCENTRICITY_SQUARED * Math.sin(angle) ** 2;
  const meridian = (EQUATORIAL_RADIUS * (1 - ECCENTRICITY_SQUARED)) / bend(far ?? 0) ** 1.5;
  const parallel = (EQUATORIAL_RADIUS * Math.cos(near ?? 0)) / Math.sqrt(bend(near ?? 0));
  return Math.ceil(Math.hypot(meridian, parallel) * radians(size / 2));
}
