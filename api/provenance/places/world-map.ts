import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { feature } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';

/** Points of [longitude, latitude] in degrees; the last is the first. */
export type Ring = number[][];

/** Degrees; it reaches so far east from its western side, up to 360. */
export interface Box {
  readonly west: number;
  readonly width: number;
  readonly south: number;
  readonly north: number;
}

/** One piece of land of a country on the map: its rings of [longitude, latitude] in degrees, the outer one first. */
export interface Land {
  /** ISO 3166-1 code of two letters. */
  readonly country: string;
  /** The country that the map draws it with, where that has another code: French Guiana (GF) with France (FR). */
  readonly drawnWith: string;
  readonly rings: Ring[];
  readonly box: Box;
}

/** Parts of countries that have codes of their own, by a box (west, south, east, north) that holds them and nothing else of the country. */
const parts: readonly { of: string; code: string; within: readonly [number, number, number, number] }[] = [
  { of: 'FR', code: 'GF', within: [-55, 2, -51, 6] },
  { of: 'FR', code: 'GP', within: [-62, 15.7, -60.9, 16.6] },
  { of: 'FR', code: 'MQ', within: [-61.4, 14.3, -60.7, 15] },
  { of: 'FR', code: 'RE', within: [55, -21.6, 56, -20.7] },
  { of: 'FR', code: 'YT', within: [44.8, -13.2, 45.5, -12.5] },
  { of: 'NO', code: 'SJ', within: [-10, 70.5, 35, 81] },
  { of: 'NO', code: 'BV', within: [3, -55, 4, -54] },
  { of: 'NL', code: 'BQ', within: [-69, 11.9, -62.9, 17.8] },
];

let lands: readonly Land[] | null = null;

/**
 * The land of every country, by Natural Earth 1:50 million (package world-atlas). Read at the first question, since most of the work of
 * the service does without it. Land that no single country's code stands for is left out.
 */
export function landOfCountries(): readonly Land[] {
  lands ??= readLands();
  return lands;
}

type Countries = Topology<{ countries: GeometryCollection<{ name: string }> }>;

function readLands(): Land[] {
  const file = createRequire(import.meta.url).resolve('world-atlas/countries-50m.json');
  const map = JSON.parse(readFileSync(file, 'utf8')) as Countries;
  return feature(map, map.objects.countries).features.flatMap(({ id, properties, geometry }) => {
    const code = codeOf(id, properties.name);
    if (code === null) return [];
    const polygons =
      geometry.type === 'MultiPolygon'
        ? geometry.coordinates
        : geometry.type === 'Polygon'
          ? [geometry.coordinates]
          : [];
    return polygons.map((rings) => {
      const box = boxOf(rings.flat());
      const country = parts.find(({ of, within }) => of === code && isInside(box, within))?.code ?? code;
      return { country, drawnWith: code, rings, box };
    });
  });
}

/** The code of two letters for the numeric one of ISO 3166-1 that the map has: Unicode's locale data hold the one as an alias of the other. */
function codeOf(numeric: string | number | undefined, name: string): string | null {
  if (name === 'Kosovo') return 'XK';
  if (numeric === undefined) return null;
  return new Intl.Locale(`und-${String(numeric).padStart(3, '0')}`).region ?? null;
}

/** How far an arc between two points of a ring may bend beyond them, degrees. */
const BEND = 1;

/** A box that holds the points of rings, also of those that cross the meridian of 180 degrees or go around a pole. */
function boxOf(points: Ring): Box {
  let [west, east, south, north] = [Infinity, -Infinity, 90, -90];
  let along: number | null = null;
  for (const [longitude = 0, latitude = 0] of points) {
    // each step goes the shorter way around
    along = along === null ? longitude : along + ((((longitude - along) % 360) + 540) % 360) - 180;
    [west, east] = [Math.min(west, along), Math.max(east, along)];
    [south, north] = [Math.min(south, latitude), Math.max(north, latitude)];
  }
  if (east - west < 359) return { west, width: east - west, south: south - BEND, north: north + BEND };
  return { west: -180, width: 360, south: south < 0 ? -90 : south - BEND, north: north > 0 ? 90 : north + BEND };
}

function isInside(box: Box, [west, south, east, north]: readonly [number, number, number, number]): boolean {
  return box.west >= west && box.west + box.width <= east && box.south + BEND >= south && box.north - BEND <= north;
}
