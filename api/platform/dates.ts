import { dateBounds } from '../../shared/edtf.ts';

/** A vague date as the database holds it: the text and the calendar days it may mean ('infinity' where it is open). */
export interface StoredDate {
  readonly text: string | null;
  readonly earliest: string | null;
  readonly latest: string | null;
}

/** What the database stores for an EDTF text. Throws RangeError for a text that is no such date: validate before. */
export function storedDate(text: string | null): StoredDate {
  if (text === null) return { text: null, earliest: null, latest: null };
  const bounds = dateBounds(text);
  if (!bounds) throw new RangeError(`not an EDTF date: ${text}`);
  return { text, earliest: bounds.earliest ?? '-infinity', latest: bounds.latest ?? 'infinity' };
}

/**
 * The three properties of an entity that hold one date: `dateColumns('hatched', '1994~')` gives hatched, hatchedEarliest and
 * hatchedLatest.
 */
export function dateColumns<Name extends string>(
  name: Name,
  text: string | null,
): Record<Name | `${Name}Earliest` | `${Name}Latest`, string | null> {
  const stored = storedDate(text);
  return { [name]: stored.text, [`${name}Earliest`]: stored.earliest, [`${name}Latest`]: stored.latest } as Record<
    Name | `${Name}Earliest` | `${Name}Latest`,
    string | null
  >;
}
