import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellRadius } from '../../../api/provenance/places/cell-radius.ts';
import { generalisedPlace, type ExactPlace } from '../../../api/provenance/places/generalised-place.ts';
import { withoutPositions } from '../../../api/provenance/places/words-of-place.ts';

const nothing: ExactPlace = {
  verbatimLocality: null,
  locality: null,
  countryCode: null,
  stateProvince: null,
  decimalLatitude: null,
  decimalLongitude: null,
  geodeticDatum: null,
  coordinateUncertaintyM: null,
  georeferencedBy: null,
  georeferenceSources: null,
};

const at = (latitude: number, longitude: number, uncertainty: number | null = 30): ExactPlace => ({
  ...nothing,
  decimalLatitude: latitude,
  decimalLongitude: longitude,
  geodeticDatum: 'EPSG:4326',
  coordinateUncertaintyM: uncertainty,
});

const shown = (place: ExactPlace): [number | null, number | null] => {
  const { decimalLatitude, decimalLongitude } = generalisedPlace(place);
  return [decimalLatitude, decimalLongitude];
};

const edges = [-180, -179.95, -90, -89.95, -0.1, 0, 0.05, 0.1, 0.3, 89.95, 90, 179.95, 180];
const latitudes = fc.oneof(
  fc.double({ min: -90, max: 90, noNaN: true }),
  fc.constantFrom(...edges.filter((edge) => Math.abs(edge) <= 90)),
);
const longitudes = fc.oneof(fc.double({ min: -180, max: 180, noNaN: true }), fc.constantFrom(...edges));
const uncertainties = fc.oneof(
  fc.constant(null),
  fc.double({ min: 0.1, max: 10_000, noNaN: true }),
  fc.double({ min: 0.1, max: 20_037_509, noNaN: true }),
);
const words = fc.option(fc.string({ minLength: 1 }), { nil: null });
const places = fc.oneof(
  fc.record({
    verbatimLocality: words,
    locality: words,
    countryCode: fc.constantFrom(null, 'EC', 'PA'),
    stateProvince: words,
    decimalLatitude: latitudes,
    decimalLongitude: longitudes,
    geodeticDatum: fc.oneof(fc.constantFrom('EPSG:4326', 'WGS84', 'not recorded'), fc.string({ minLength: 1 })),
    coordinateUncertaintyM: uncertainties,
    georeferencedBy: words,
    georeferenceSources: words,
  }),
  fc.record({ verbatimLocality: words, locality: words }).map((only) => ({ ...nothing, ...only })),
);

/** A point of the WGS 84 ellipsoid in space, metres. */
function inSpace(latitude: number, longitude: number): [number, number, number] {
  const [phi, lambda] = [(latitude * Math.PI) / 180, (longitude * Math.PI) / 180];
  const squared = 0.00669437999014; // first eccentricity squared, NIMA TR8350.2
  const normal = 6_378_137 / Math.sqrt(1 - squared * Math.sin(phi) ** 2);
  return [
    normal * Math.cos(phi) * Math.cos(lambda),
    normal * Math.cos(phi) * Math.sin(lambda),
    normal * (1 - squared) * Math.sin(phi),
  ];
}

/** Metres between two points, through the earth: a way over ground is longer by less than 1 in 1000 below 900 km. */
function apart(one: readonly [number, number], other: readonly [number, number]): number {
  const [a, b] = [inSpace(...one), inSpace(...other)];
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

describe('a place that strangers see', () => {
  it('is the centre of its cell of 0.1 degree', () => {
    expect(shown(at(-3.41873, -79.96142))).toEqual([-3.45, -79.95]);
    expect(shown(at(-3.48901, -79.90015))).toEqual([-3.45, -79.95]);
    expect(shown(at(8.00001, -82.1))).toEqual([8.05, -82.05]);
  });

  it('is coarser where it is more uncertain than the cell is wide', () => {
    expect(shown(at(-3.41873, -79.96142, 11_000))).toEqual([-3.45, -79.95]);
    expect(shown(at(-3.41873, -79.96142, 12_000))).toEqual([-3.25, -79.75]);
    expect(shown(at(-3.41873, -79.96142, 100_000))).toEqual([-3.5, -79.5]);
    expect(shown(at(-3.41873, -79.96142, 20_037_509))).toEqual([-5, -75]);
  });

  it('grows its uncertainty by the way from the centre to the corner of the cell', () => {
    // at the equator half a tenth of a degree is 5529 m north and 5566 m east, 7845 m in the diagonal (WGS 84)
    expect(generalisedPlace(at(0.02, 10.02, 30)).coordinateUncertaintyM).toBe(7845 + 1 + 30);
    expect(generalisedPlace(at(0.02, 10.02, null)).coordinateUncertaintyM).toBe(7846);
  });

  it('has one cell on either side of the meridian of 180 degrees, and none beyond a pole', () => {
    expect(shown(at(1.02, 180))).toEqual([1.05, -179.95]);
    expect(shown(at(1.02, -180))).toEqual([1.05, -179.95]);
    expect(shown(at(1.02, 179.99))).toEqual([1.05, 179.95]);
    expect(shown(at(90, 0.02))).toEqual([89.95, 0.05]);
    expect(shown(at(-90, 0.02))).toEqual([-89.95, 0.05]);
  });

  it('keeps country and province, withholds every other word, and says so', () => {
    const place = generalisedPlace({
      ...at(-3.41873, -79.96142),
      verbatimLocality: 'below the bridge, 2 km N of the village',
      locality: 'Quebrada Sonora',
      countryCode: 'EC',
      stateProvince: 'El Oro',
      georeferencedBy: 'A. Collector',
      georeferenceSources: 'GPS of the field trip',
    });
    expect(place).toEqual({
      verbatimLocality: null,
      locality: null,
      countryCode: 'EC',
      stateProvince: 'El Oro',
      decimalLatitude: -3.45,
      decimalLongitude: -79.95,
      geodeticDatum: 'EPSG:4326',
      coordinateUncertaintyM: 7869,
      georeferencedBy: null,
      georeferenceSources: null,
      dataGeneralizations: expect.stringContaining('cell of 0.1 degree') as string,
      informationWithheld: expect.stringContaining('withheld to protect wild animals') as string,
    });
  });

  it('says nothing of coarser or withheld things where nothing is known', () => {
    expect(generalisedPlace({ ...nothing, countryCode: 'EC' })).toMatchObject({
      countryCode: 'EC',
      dataGeneralizations: null,
      informationWithheld: null,
    });
  });

  it('passes on no words in the place of a datum', () => {
    expect(generalisedPlace({ ...at(1, 1), geodeticDatum: 'map at 1.23456, -80.1' }).geodeticDatum).toBe(
      'not recorded',
    );
    expect(generalisedPlace({ ...at(1, 1), geodeticDatum: 'PSAD56' }).geodeticDatum).toBe('PSAD56');
  });

  it('is the same when it is generalised again', () => {
    fc.assert(
      fc.property(places, (place) => {
        const once = generalisedPlace(place);
        expect(generalisedPlace(once)).toEqual(once);
      }),
      { numRuns: 2000 },
    );
  });

  it('tells nothing of where in its cell it lies', () => {
    const within = fc.double({ min: 0, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(
        fc.integer({ min: -900, max: 899 }),
        fc.integer({ min: -1800, max: 1799 }),
        fc.tuple(within, within, within, within),
        uncertainties,
        (south, west, [a, b, c, d], uncertainty) => {
          const [one, other] = [
            at((south + a) / 10, (west + b) / 10, uncertainty),
            at((south + c) / 10, (west + d) / 10, uncertainty),
          ];
          const [first, second] = [generalisedPlace(one), generalisedPlace(other)];
          // a place in the very centre of a cell, and as uncertain as that is large, is not made coarser and says so
          fc.pre(first.dataGeneralizations !== null && second.dataGeneralizations !== null);
          expect(first).toEqual(second);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('still lies, with all that it may be, inside the circle that is shown', () => {
    fc.assert(
      fc.property(latitudes, longitudes, uncertainties, (latitude, longitude, uncertainty) => {
        const { decimalLatitude, decimalLongitude, coordinateUncertaintyM } = generalisedPlace(
          at(latitude, longitude, uncertainty),
        );
        const moved = apart([latitude, longitude], [decimalLatitude ?? NaN, decimalLongitude ?? NaN]);
        const radius = coordinateUncertaintyM ?? 0;
        expect(radius).toBeGreaterThan(0);
        expect(Math.min(moved + (uncertainty ?? 0), 20_037_508)).toBeLessThanOrEqual(radius);
        // what was not that coarse before is nowhere nearer than its cell
        const isUntouched = decimalLatitude === latitude && decimalLongitude === longitude;
        expect(radius).toBeGreaterThanOrEqual(isUntouched ? 0 : cellRadius(decimalLatitude ?? NaN, 0.1));
        expect(moved).toBeLessThanOrEqual(cellRadius(decimalLatitude ?? NaN, 10));
      }),
      { numRuns: 3000 },
    );
  });

  it('holds its cell closely: no corner lies outside, and the circle is hardly larger', () => {
    for (const latitude of [-89.95, -60.05, -3.45, 0.05, 8.55, 45.05, 59.95, 89.95]) {
      const corners = [-0.05, 0.05].flatMap((north) =>
        [-0.05, 0.05].map((east) => apart([latitude, 10.05], [latitude + north, 10.05 + east])),
      );
      const radius = cellRadius(latitude, 0.1);
      expect(Math.max(...corners)).toBeLessThanOrEqual(radius);
      if (Math.abs(latitude) <= 60.05) expect(radius).toBeLessThan(Math.max(...corners) * 1.01);
    }
  });
});

describe('a name that strangers read', () => {
  it.each([
    ['Río 3.41873, -79.96142', 'Río [position withheld], [position withheld]'],
    ['stream at 3°25′07″ S 79°57.7′ W', 'stream at [position withheld] [position withheld]'],
    ['3.42 S 79.96 W', '[position withheld] [position withheld]'],
    ['17M 612345 9612345', '[position withheld]'],
    ['camp, 612345 m E, 9612345 m N', 'camp, [position withheld], [position withheld]'],
  ])('%s has no coordinates in it: %s', (words, told) => {
    expect(withoutPositions(words)).toBe(told);
  });

  it.each([
    'Quebrada Sonora',
    'km 12 on the road',
    'Isla 2',
    'import 1994',
    'about 1,200 m high',
    'El Oro',
    '2019-03-14',
  ])('%s stays as it is', (words) => {
    expect(withoutPositions(words)).toBe(words);
  });
});
