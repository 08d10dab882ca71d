import { geoCircle, geoMercator, geoPath, type GeoPermissibleObjects } from 'd3-geo';
import type { ClaimedPlace } from '../api/types.ts';

/** The outlines of countries, as Natural Earth has them. */
export type Countries = readonly GeoPermissibleObjects[];

/** A place on the map: where, how large its mark is, and the circle that it may lie in. */
export interface PlaceMark {
  readonly claimId: string;
  readonly standing: ClaimedPlace['standing'];
  readonly x: number;
  readonly y: number;
  /** Pixels; its area grows with the founders. */
  readonly radius: number;
  /** Outline of the circle of its uncertainty; null where that is not known, or smaller than the mark. */
  readonly within: string | null;
  readonly words: string;
}

export interface MapLayout {
  readonly land: readonly string[];
  readonly marks: readonly PlaceMark[];
}

/** One degree of a great circle, metres (mean radius of the earth 6 371 009 m, IUGG). */
const DEGREE = 111_195;
/** The map shows at least so many degrees about every place, so that one sees in which country it lies. */
const AROUND = 4;

/** Lays a map out so that it shows all places that have coordinates, and the countries about them; without any, the whole world. */
export function layoutMap(
  countries: Countries,
  places: readonly ClaimedPlace[],
  width: number,
  height: number,
): MapLayout {
  const located = places.flatMap((claimed) => {
    const { decimalLatitude: latitude, decimalLongitude: longitude, coordinateUncertaintyM } = claimed.place;
    if (latitude === null || longitude === null) return [];
    const degrees = Math.min((coordinateUncertaintyM ?? 0) / DEGREE, 90);
    return [{ claimed, at: [longitude, latitude] as [number, number], degrees }];
  });
  const around = located.map(({ at, degrees }) =>
    geoCircle()
      .center(at)
      .radius(Math.max(AROUND, degrees * 1.1))(),
  );
  const shown: GeoPermissibleObjects =
    around.length === 0 ? { type: 'Sphere' } : { type: 'GeometryCollection', geometries: around };
  const box: [[number, number], [number, number]] = [
    [8, 8],
    [width - 8, height - 8],
  ];
  const projection = geoMercator()
    .fitExtent(box, shown)
    .clipExtent([
      [0, 0],
      [width, height],
    ]);
  const path = geoPath(projection).digits(1);
  const marks = located.flatMap(({ claimed, at, degrees }): PlaceMark[] => {
    const point = projection(at);
    if (point === null) return [];
    const radius = Math.min(20, 7 + Math.sqrt(claimed.founders));
    const circle = degrees > 0 ? geoCircle().center(at).radius(degrees)() : null;
    const isVisible = degrees > 0 && (degrees * Math.PI * projection.scale()) / 180 > radius;
    const within = circle && isVisible ? path(circle) : null;
    const words = `${claimed.value}, ${claimed.standing}`;
    return [{ claimId: claimed.claimId, standing: claimed.standing, x: point[0], y: point[1], radius, within, words }];
  });
  return { land: countries.map((country) => path(country) ?? '').filter((outline) => outline !== ''), marks };
}
