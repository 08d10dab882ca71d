import { geoContains } from 'd3-geo';
import { landOfCountries, type Box, type Land } from './world-map.ts';

/** Mean radius of the earth (IUGG), metres. */
const EARTH_RADIUS = 6_371_008.8;
/** How far borders and coasts of a map of 1:50 million may be off, metres. */
export const MAP_TOLERANCE = 5_000;

/**
 * The country in which a point lies by Natural Earth 1:50 million, as an ISO 3166-1 code of two letters; null at sea, on islands too small for the
 * map, and on land that no single code stands for. Borders are good to some kilometres: to hold a point against a country use `isInCountry`.
 * Pure; the map is read at the first question (about 60 ms), later ones take a few milliseconds at most.
 * @param latitude degrees, -90 to 90
 * @param longitude degrees, -180 to 180
 */
export function countryOfPoint(latitude: number, longitude: number): string | null {
  return landAt(latitude, longitude)?.country ?? null;
}

/**
 * Whether a place may lie in a country: its point does, or the country begins within its uncertainty and the tolerance of the map. Null where
 * the map does not have the country, so that nothing can be said.
 * @param country ISO 3166-1 code of two letters; that of France holds for French Guiana as well, and so on
 * @param uncertainty radius of the place, metres; 0 where it is not known
 */
export function isInCountry(latitude: number, longitude: number, country: string, uncertainty: number): boolean | null {
  const lands = landOfCountries().filter((land) => land.country === country || land.drawnWith === country);
  if (lands.length === 0) return null;
  const reach = uncertainty + MAP_TOLERANCE;
  const degrees = (reach / EARTH_RADIUS) * (180 / Math.PI);
  return lands.some(
    (land) =>
      (isWithin(land.box, latitude, longitude, 0) && holds(land, latitude, longitude)) ||
      (isWithin(land.box, latitude, longitude, degrees) && distanceTo(land, latitude, longitude) <= reach),
  );
}

function landAt(latitude: number, longitude: number): Land | undefined {
  return landOfCountries().find(
    (land) => isWithin(land.box, latitude, longitude, 0) && holds(land, latitude, longitude),
  );
}

function holds(land: Land, latitude: number, longitude: number): boolean {
  return geoContains({ type: 'Polygon', coordinates: land.rings }, [longitude, latitude]);
}

/** Whether a point lies in a box, or within so many degrees of a great circle of it; true when in doubt near a pole. */
function isWithin(box: Box, latitude: number, longitude: number, margin: number): boolean {
  if (latitude < box.south - margin || latitude > box.north + margin) return false;
  const narrowest = Math.cos((Math.min(90, Math.abs(latitude) + margin) * Math.PI) / 180);
  // a little wider than needed: a box that is too large costs a look at its rings
  const sideways = margin === 0 ? 0 : margin / Math.max(narrowest, 1e-9);
  if (sideways >= 180) return true;
  const along = (((longitude - box.west + sideways) % 360) + 360) % 360;
  return along <= box.width + 2 * sideways;
}

type Vector = readonly [number, number, number];

/** Metres from a point to the nearest border of a piece of land, on a sphere. */
function distanceTo(land: Land, latitude: number, longitude: number): number {
  const point = onSphere(longitude, latitude);
  let nearest = Math.PI;
  for (const ring of land.rings) {
    let from: Vector | null = null;
    for (const [east = 0, north = 0] of ring) {
      const to = onSphere(east, north);
      if (from !== null) nearest = Math.min(nearest, angleToArc(point, from, to));
      from = to;
    }
  }
  return nearest * EARTH_RADIUS;
}

/** The angle between a point and the nearest point of the shorter arc of the great circle between two others, radians. */
function angleToArc(point: Vector, from: Vector, to: Vector): number {
  const pole = cross(from, to);
  const length = Math.hypot(...pole);
  const ends = Math.min(angle(point, from), angle(point, to));
  if (length < 1e-15) return ends;
  const isBeside = dot(cross(pole, from), point) >= 0 && dot(cross(to, pole), point) >= 0;
  return isBeside ? Math.min(ends, Math.abs(Math.asin(clamp(dot(point, pole) / length)))) : ends;
}

function onSphere(longitude: number, latitude: number): Vector {
  const [lambda, phi] = [(longitude * Math.PI) / 180, (latitude * Math.PI) / 180];
  return [Math.cos(phi) * Math.cos(lambda), Math.cos(phi) * Math.sin(lambda), Math.sin(phi)];
}

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const angle = (a: Vector, b: Vector): number => Math.atan2(Math.hypot(...cross(a, b)), dot(a, b));
const clamp = (value: number): number => Math.max(-1, Math.min(1, value));
