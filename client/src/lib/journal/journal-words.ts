import type { JournalChange, JournalEntry } from '../api/types.ts';

/** What was done, with the record's name where the sentence wants it. */
const deeds: Record<string, string> = {
  added: 'wrote down {}',
  changed: 'changed {}',
  withdrawn: 'withdrew {}',
  restored: 'brought back {}',
  raised: 'raised young from {}',
  imported: 'imported {}',
  'import-undone': 'took back the import {}',
  'import-restored': 'brought back the import {}',
  merged: 'merged a duplicate into {}',
  unmerged: 'took apart the merged {}',
  confirmed: 'confirmed something unusual about {}',
  unconfirmed: 'took back a confirmation about {}',
  joined: 'joined the club',
  'roles-changed': 'changed the roles of {}',
  left: 'noted that {} left the club',
  returned: 'noted that {} came back to the club',
  'password-changed': 'changed the passphrase of {}',
  'password-reset': 'set a new passphrase for {} by a link',
  'signed-out-everywhere': 'signed out everywhere',
  'token-made': 'made the token {}',
  'token-revoked': 'revoked the token {}',
  'link-made': 'made a link: {}',
  'link-revoked': 'revoked a link: {}',
  'club-changed': 'changed the settings of the club',
  'set-up': 'set up the club',
  seeded: 'filled the register with an invented club',
};

export const actionNames: readonly string[] = Object.keys(deeds);

/** An action as a filter offers it: "raised young from", "signed out everywhere". */
export const actionInWords = (action: string): string => (deeds[action] ?? action).replace(/:? ?\{\}/, '').trim();

/** Kinds of records that the journal tells of, in the words of a filter. */
export const kindWords: Readonly<Record<string, string>> = {
  individual: 'animals',
  clutch: 'clutches',
  pairing: 'pairings',
  observation: 'remarks',
  source: 'sources',
  line: 'lines',
  species: 'species',
  import: 'imports',
  keeper: 'people',
  link: 'links',
  token: 'tokens',
  club: 'the club',
};

/** One entry as a sentence: who, then what before and after the record's name. */
export interface EntryWords {
  who: string;
  before: string;
  after: string;
  /** The record's name, to be written between the two; empty where the sentence names none. */
  title: string;
  /** Where the record stands, if it has a page. */
  href: string | null;
}

/** Puts an entry into a sentence. */
export function sentenceOf(entry: JournalEntry): EntryWords {
  const deed = deeds[entry.action] ?? `${entry.action} {}`;
  const [before = '', after] = deed.split('{}');
  return {
    who: entry.keeper?.name ?? (entry.via === 'service' ? 'the service' : 'a member'),
    before: (entry.reverses ? 'undid a change: ' : '') + before.trim(),
    after: (after ?? '').trim(),
    title: after === undefined ? '' : (entry.record?.title ?? 'a record'),
    href: entry.record && after !== undefined ? recordAddress(entry.record) : null,
  };
}

const folders: Record<string, string> = {
  individual: '/animals/',
  clutch: '/clutches/',
  pairing: '/pairings/',
};

/** The page of a record, or null where its kind has none. */
export function recordAddress(record: { kind: string; id: string | null }): string | null {
  const folder = folders[record.kind];
  if (folder !== undefined && record.id) return folder + record.id;
  if (record.kind === 'import') return '/import';
  return record.kind === 'keeper' ? '/club' : null;
}

const fieldNames: Record<string, string> = {
  sexBasis: 'how the sex is known',
  sexedOn: 'when it was sexed',
  speciesId: 'species',
  lineId: 'line',
  sourceId: 'source',
  clutchId: 'clutch',
  keeperId: 'keeper',
  pairingId: 'pairing',
  mergedIntoId: 'merged into',
  publicReading: 'open to everybody',
  countryOfExport: 'country of export',
  svlMm: 'length, mm',
  massG: 'mass, g',
};

/** A field as the screens name it: `sexBasis` becomes "sex basis". */
export function fieldInWords(field: string): string {
  const known = fieldNames[field];
  if (known !== undefined) return known;
  return field.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`).replace(/_/g, ' ');
}

/** A value before or after a change, in words. */
export function valueInWords(value: unknown): string {
  if (value === null || value === undefined || value === '') return 'nothing';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(valueInWords).join('; ');
  return Object.entries(value)
    .filter(([, part]) => part !== null && part !== undefined)
    .map(([name, part]) => `${fieldInWords(name)} ${valueInWords(part)}`)
    .join(', ');
}

/** Whether a change only fills in a new record: then what was before says nothing. */
export const isFilling = (changes: readonly JournalChange[]): boolean =>
  changes.length > 0 && changes.every((change) => change.before === null || change.before === undefined);

/** An instant as this device's clock reads it: `2026-11-25 13:20`. */
export function instantInWords(at: string): string {
  const day = new Date(at);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())} ${two(day.getHours())}:${two(day.getMinutes())}`;
}

const registerActions = ['added', 'changed', 'withdrawn', 'restored', 'raised', 'confirmed', 'unconfirmed'];
const wholeActions = [
  'imported',
  'import-undone',
  'import-restored',
  'merged',
  'unmerged',
  'club-changed',
  'roles-changed',
];

/** Whether an entry tells of something that can be taken back and has not been. */
export const isUndoable = (entry: JournalEntry): boolean =>
  entry.reversedBy === null && [...registerActions, ...wholeActions].includes(entry.action);

/** By which way a change came in. */
export const viaWords = (via: JournalEntry['via']): string =>
  ({ session: 'on this site', token: 'by a program', service: 'by the service' })[via];
