import { dateInWords } from '../../shared/date-words.ts';
import type { SourceKind } from '../../shared/vocabulary.ts';

/** What people call a clutch: by its laying date, else by its code. */
export function clutchTitle(clutch: { readonly laid: string | null; readonly code: string | null }): string {
  if (clutch.laid !== null) return `clutch of ${dateInWords(clutch.laid)}`;
  return clutch.code === null ? 'clutch without a date' : `clutch ${clutch.code}`;
}

const sourceWords: Record<SourceKind, string> = {
  import: 'Import',
  'wild-collection': 'Wild collection',
  purchase: 'Purchase',
  unknown: 'Source of unknown kind',
};

/** What people call a source: "Import, about 1994". */
export function sourceTitle(source: { readonly kind: SourceKind; readonly date: string | null }): string {
  const word = sourceWords[source.kind];
  return source.date === null ? word : `${word}, ${dateInWords(source.date)}`;
}
