import { countryOfPoint, isInCountry } from './country-of-point.ts';
import type { ExactPlace } from './generalised-place.ts';
import { say } from '../../platform/say.ts';

/** Codes of Darwin Core for the high seas and for a country that is not known. */
const NO_COUNTRY = ['XZ', 'ZZ'];

/**
 * What looks wrong with a claimed place and may yet be right, in sentences with a remedy; empty where nothing does. Coordinates count as within
 * the claimed country where that lies within their uncertainty, and within what borders on the map may be off.
 */
export function placeWarnings(place: ExactPlace): string[] {
  const { decimalLatitude: latitude, decimalLongitude: longitude, countryCode: country } = place;
  if (latitude === null || longitude === null || country === null || NO_COUNTRY.includes(country)) return [];
  if (isInCountry(latitude, longitude, country, place.coordinateUncertaintyM ?? 0) !== false) return [];
  const there = countryOfPoint(latitude, longitude);
  const where = there === null ? say`at sea, or on land of no country` : say`in ${nameOf(there)}`;
  return [
    say`The coordinates lie ${where}, not in ${nameOf(country)}. Check their signs, that latitude comes first, and the country.`,
  ];
}

const names = new Intl.DisplayNames('en', { type: 'region' });

function nameOf(country: string): string {
  return `${names.of(country) ?? country} (${country})`;
}
