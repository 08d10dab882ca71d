import type { SourceKind } from '../../shared/vocabulary.ts';
import { sayDate } from '../platform/date-words.ts';
import { say, sayAgain } from '../platform/say.ts';

/** What people call a clutch: by its laying date, else by its code. */
export function clutchTitle(clutch: { readonly laid: string | null; readonly code: string | null }): string {
  if (clutch.laid !== null) return say`clutch of ${sayDate(clutch.laid)}`;
  return clutch.code === null ? say`clutch without a date` : say`clutch ${clutch.code}`;
}

const sourceWords: Record<SourceKind, string> = {
  import: say`Import`,
  'wild-collection': say`Wild collection`,
  purchase: say`Purchase`,
  unknown: say`Source of unknown kind`,
};

/** What people call a source: "Import, about 1994". */
export function sourceTitle(source: { readonly kind: SourceKind; readonly date: string | null }): string {
  const word = sourceWords[source.kind];
  return source.date === null ? sayAgain(word) : say`${word}, ${sayDate(source.date)}`;
}
