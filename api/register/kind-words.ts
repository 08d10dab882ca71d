import type { RecordKind } from './kept/kept-form.queries.ts';

/** What people call the kinds of record. */
export type KindWord =
  | 'species'
  | 'line'
  | 'source'
  | 'animal'
  | 'pairing'
  | 'clutch'
  | 'observation'
  | 'claim'
  | 'evidence'
  | 'photograph'
  | 'acknowledgement'
  | 'plan';

/** The name of the table that holds a kind of record. */
export function tableOf(word: KindWord): RecordKind {
  if (word === 'animal') return 'individual';
  if (word === 'plan') return 'kept_plan';
  return word === 'acknowledgement' ? 'flag_acknowledgement' : word;
}
