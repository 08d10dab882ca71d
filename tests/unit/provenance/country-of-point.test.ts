import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countryOfPoint, isInCountry } from '../../../api/provenance/places/country-of-point.ts';
import { landOfCountries } from '../../../api/provenance/places/world-map.ts';

describe('the country of a point', () => {
  it.each([
    ['Quito', -0.22, -78.51, 'EC'],
    ['Santa Cruz, Galápagos', -0.62, -90.36, 'EC'],
    ['Iquitos', -3.75, -73.25, 'PE'],
    ['Leticia', -4.2, -69.95, 'CO'],
    ['Bocas del Toro (mainland)', 8.9, -82.3, 'PA'],
    ['San José', 9.93, -84.08, 'CR'],
    ['Saül, French Guiana', 3.62, -53.2, 'GF'],
    ['Paramaribo', 5.85, -55.17, 'SR'],
    ['Manaus', -3.1, -60.02, 'BR'],
    ['Antananarivo', -18.88, 47.51, 'MG'],
    ['Paris', 48.86, 2.35, 'FR'],
    ['Longyearbyen', 78.2, 15.6, 'SJ'],
    ['Taveuni side of the meridian of 180 degrees, Fiji', -17.8, 178.1, 'FJ'],
    ['Chukotka, east of 180 degrees', 66.5, -172, 'RU'],
    ['the station Vostok', -78.46, 106.84, 'AQ'],
    ['Pristina', 42.66, 21.16, 'XK'],
    ['the Pacific', -5, -120, null],
    ['the North Pole', 90, 0, null],
  ])('of %s', (_, latitude, longitude, country) => {
    expect(countryOfPoint(latitude, longitude)).toBe(country);
  });

  it('has a code of ISO 3166-1 for all land, each with a name', () => {
    const names = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });
    const codes = [...new Set(landOfCountries().flatMap(({ country, drawnWith }) => [country, drawnWith]))];
    expect(codes.length).toBeGreaterThan(235);
    expect(codes.filter((code) => !/^[A-Z]{2}$/.test(code) || names.of(code) === undefined)).toEqual([]);
    expect(codes).toEqual(expect.arrayContaining(['GF', 'GP', 'MQ', 'RE', 'YT', 'SJ', 'BQ']));
  });
});

describe('whether a place may lie in a country', () => {
  it('holds for the country of its point, and for the country that a part of it belongs to', () => {
    expect(isInCountry(-0.22, -78.51, 'EC', 0)).toBe(true);
    expect(isInCountry(3.62, -53.2, 'GF', 0)).toBe(true);
    expect(isInCountry(3.62, -53.2, 'FR', 0)).toBe(true);
    expect(isInCountry(48.86, 2.35, 'GF', 0)).toBe(false);
  });

  it('holds within the uncertainty of a border, and no further', () => {
    // Iquitos lies in Peru, some 200 km from Brazil and 170 km from Colombia
    expect(isInCountry(-3.75, -73.25, 'EC', 1_000)).toBe(false);
    expect(isInCountry(-3.75, -73.25, 'BR', 100_000)).toBe(false);
    expect(isInCountry(-3.75, -73.25, 'BR', 300_000)).toBe(true);
    // Leticia and Tabatinga are one town on two sides of a border
    expect(isInCountry(-4.22, -69.94, 'BR', 0)).toBe(true);
    expect(isInCountry(-4.22, -69.94, 'CO', 0)).toBe(true);
  });

  it('says nothing of a country that the map does not have', () => {
    expect(isInCountry(0, 0, 'ZZ', 0)).toBeNull();
    expect(isInCountry(0, 0, 'TK', 0)).toBeNull();
  });

  it('agrees with the country of the point, and holds for it at any uncertainty', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (latitude, longitude, uncertainty) => {
          const country = countryOfPoint(latitude, longitude);
          if (country !== null) expect(isInCountry(latitude, longitude, country, uncertainty)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('holds across the meridian of 180 degrees and about a pole', () => {
    expect(isInCountry(66.5, -172, 'RU', 0)).toBe(true);
    expect(isInCountry(-17, -179.9, 'FJ', 50_000)).toBe(true);
    expect(isInCountry(90, 12, 'GL', 900_000)).toBe(true);
    expect(isInCountry(90, -150, 'GL', 900_000)).toBe(true);
    expect(isInCountry(90, -150, 'GL', 500_000)).toBe(false);
  });
});
