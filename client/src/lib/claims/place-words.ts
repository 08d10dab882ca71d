import type { Claim } from '../api/types.ts';
import { written } from '../ui/figures.ts';

/** A claimed place in a line, from the words to the country and the coordinates; empty where nothing is said of it. */
export function placeInWords(place: Claim['place']): string {
  const { locality, stateProvince, countryCode, decimalLatitude, decimalLongitude } = place;
  const words = [locality, stateProvince, countryCode].filter((part) => part !== null).join(', ');
  if (decimalLatitude === null || decimalLongitude === null) return words;
  const radius = place.coordinateUncertaintyM;
  const point = `${degrees(decimalLatitude, 'N', 'S')} ${degrees(decimalLongitude, 'E', 'W')}`;
  const area = radius === null ? point : `${point} within ${distance(radius)}`;
  const datum = place.geodeticDatum === null ? '' : ` (${place.geodeticDatum})`;
  return [words, `${area}${datum}`].filter((part) => part !== '').join('; ');
}

const degrees = (value: number, positive: string, negative: string): string =>
  `${Math.abs(value)}° ${value < 0 ? negative : positive}`;

const distance = (metres: number): string =>
  metres < 1000 ? `${Math.round(metres)} m` : `${written(String(Number((metres / 1000).toPrecision(3))))} km`;
