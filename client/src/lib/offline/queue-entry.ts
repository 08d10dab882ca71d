/** What a change was refused with. */
export interface Refusal {
  readonly status: number;
  readonly detail: string;
  /** Single places: a field (JSON pointer) and what is wrong there. */
  readonly errors: readonly { readonly pointer?: string; readonly detail: string }[];
  /** The record as the register has it now, where somebody changed it meanwhile. */
  readonly current: Readonly<Record<string, unknown>> | null;
}

/**
 * How far an entry is. `waiting`: it will be sent. `changed`: the record was changed meanwhile. `refused`: the register cannot take it so.
 * `unsure`: it was sent, and nobody can tell any more whether it was taken. These three stop until the keeper decides. `done`: it is in the
 * register; it stays for a day, so that what was thrown away can still be put back behind it.
 */
export type EntryState = 'waiting' | 'changed' | 'refused' | 'unsure' | 'done';

/** What is written: a new clutch, counts and corrections of one, a remark. */
export type EntryKind = 'clutch' | 'counts' | 'note';

/** One thing that a keeper wrote down while nobody answered. */
export interface QueueEntry {
  readonly id: string;
  readonly keeperId: string;
  /** What the club calls its keeper, for whoever signs in on this device; not kept by older versions. */
  readonly keeperName?: string;
  /** Its place in the order of writing on this device. */
  readonly place: number;
  /** When it was written, ISO 8601. */
  readonly writtenAt: string;
  readonly kind: EntryKind;
  readonly method: 'POST' | 'PATCH';
  /** Below `/api/v1`; `{record}` stands for the id of a record that is not written yet. */
  readonly path: string;
  readonly body: Readonly<Record<string, unknown>>;
  /** The version of the record that it was based on; null for something new, or until what it waits for is written. */
  readonly version: number | null;
  /** The fields that it changes as they were when it was written. */
  readonly base: Readonly<Record<string, unknown>> | null;
  /** Repeats of this entry share a key, so that it is never done twice. */
  readonly key: string;
  /** The entry that must be written first: it makes the record, or changes it before. */
  readonly after: string | null;
  /** The record that it changes or is about, as `clutches/<id>`; null while that record waits itself, or it makes it. */
  readonly record: string | null;
  /** What the keeper calls the record. */
  readonly name: string;
  /** What it says, as a sentence or in words. */
  readonly words: string;
  /** The form as it was filled in, to fill it in again. */
  readonly draft: unknown;
  readonly state: EntryState;
  readonly refusal: Refusal | null;
  /** When it was first sent without an answer, ISO 8601; null while it certainly never reached the register. */
  readonly triedAt: string | null;
  /** When the register took it, ISO 8601. */
  readonly doneAt: string | null;
}

/** Stands in a path, and in a body, for the id of the record that the entry before it makes. */
export const recordToCome = '{record}';

/**
 * How long an answer to what is noted at the tank is waited for, ms: it takes well under a second, so after ten the network only holds the line,
 * and it waits on the device instead.
 */
export const answersWithin = 10_000;
