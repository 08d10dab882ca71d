import type { Sex, SourceKind, Status } from '../../shared/vocabulary.ts';
import { sexes, sourceKinds, statuses } from '../../shared/vocabulary.ts';
import { headerKey } from '../../shared/register-sheet.ts';

const sexWords = new Map<string, Sex>([
  ...sexes.map((sex): [string, Sex] => [sex, sex]),
  ['m', 'male'],
  ['f', 'female'],
  ['u', 'unsexed'],
  ['', 'unsexed'],
  ['?', 'unsexed'],
  ['unknown', 'unsexed'],
]);

/** The sex that a cell says, `unsexed` where it is empty; null where the word is none. */
export function readSex(text: string): Sex | null {
  return sexWords.get(text.toLowerCase()) ?? null;
}

/** The status that a cell says; null where the word is none. */
export function readStatus(text: string): Status | null {
  return statuses.find((status) => status === text.toLowerCase()) ?? null;
}

/** The kind of source that a cell says, `unknown` where it is empty; null where the word is none. */
export function readSourceKind(text: string): SourceKind | null {
  const key = headerKey(text);
  return key === '' ? 'unknown' : (sourceKinds.find((kind) => headerKey(kind) === key) ?? null);
}

/** A number as people write it, with a point or a comma; null where the text is none. */
export function readNumber(text: string): number | null {
  return /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d{1,3})?$/i.test(text) ? Number(text.replace(',', '.')) : null;
}

/** A country code of ISO 3166-1 alpha-2 in capitals; null where the text is none that is assigned. */
export function readCountry(text: string): string | null {
  const code = text.toUpperCase();
  return /^[A-Z]{2}$/.test(code) && codeOfCountry().has(code) ? code : null;
}

/** The code of a country that a cell names in English, or null. */
export function countryNamed(text: string): string | null {
  return codeOfCountry().get(text.toLowerCase()) ?? null;
}

let countries: Map<string, string> | null = null;

/** From each assigned code, and from each English name in small letters, to the code; built on first use, then constant. */
function codeOfCountry(): Map<string, string> {
  if (countries !== null) return countries;
  countries = new Map();
  const names = new Intl.DisplayNames(['en'], { type: 'region', fallback: 'none' });
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
  for (const first of letters)
    for (const second of letters) {
      const code = first + second;
      const name = code === 'ZZ' ? undefined : names.of(code);
      if (name !== undefined) countries.set(code, code).set(name.toLowerCase(), code);
    }
  return countries;
}
