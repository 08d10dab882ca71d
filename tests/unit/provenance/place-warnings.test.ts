import { describe, expect, it } from 'vitest';
import { placeWarnings } from '../../../api/provenance/places/place-warnings.ts';

const at = (
  decimalLatitude: number | null,
  decimalLongitude: number | null,
  countryCode: string | null,
  uncertainty = 100,
) => ({
  verbatimLocality: null,
  locality: null,
  stateProvince: null,
  countryCode,
  decimalLatitude,
  decimalLongitude,
  geodeticDatum: 'EPSG:4326',
  coordinateUncertaintyM: uncertainty,
  georeferencedBy: null,
  georeferenceSources: null,
});

describe('a claimed place', () => {
  it('in another country than it names is told, with both names', () => {
    expect(placeWarnings(at(-3.75, -73.25, 'EC'))).toEqual([
      'The coordinates lie in Peru (PE), not in Ecuador (EC). Check their signs, that latitude comes first, and the country.',
    ]);
  });

  it('with a lost sign is told to lie at sea, or wherever it falls', () => {
    expect(placeWarnings(at(-0.22, -120, 'EC'))[0]).toMatch(/at sea/);
    expect(placeWarnings(at(-0.22, 78.51, 'EC'))[0]).toMatch(/not in Ecuador/);
  });

  it('near a border is not told where its uncertainty reaches over it', () => {
    expect(placeWarnings(at(-3.75, -73.25, 'BR', 300_000))).toEqual([]);
    expect(placeWarnings(at(-4.22, -69.94, 'BR'))).toEqual([]);
  });

  it.each([
    ['its own country', -0.22, -78.51, 'EC'],
    ['no country', -0.22, -78.51, null],
    ['an unknown country', -0.22, -78.51, 'ZZ'],
    ['a country that the map does not have', -0.22, -78.51, 'TK'],
    ['no coordinates', null, null, 'EC'],
  ])('with %s has nothing told', (_, latitude, longitude, country) => {
    expect(placeWarnings(at(latitude, longitude, country))).toEqual([]);
  });
});
