import type { JournalAction } from '$shared/vocabulary.ts';
import type { JournalChange, JournalEntry } from '../api/types.ts';
import { aspectChoices, bearingChoices, kindWords as evidenceKindWords, namesChoices } from '../claims/claim-words.ts';
import { roleNames } from '../people/role-words.ts';
import { viewOptions } from '../photographs/photograph-words.ts';
import { flagWords } from '../records/flag-words.ts';
import {
  labelKindChoices,
  noteKindWords,
  sexBasisChoices,
  sexWords,
  sourceKindChoices,
  statusWords,
} from '../records/vocabulary-words.ts';
import { word } from '../words/word.ts';

/** What was done, with the record's name where the sentence wants it. */
const deeds: Record<JournalAction, string> = {
  added: 'wrote down {}',
  changed: 'changed {}',
  withdrawn: 'withdrew {}',
  restored: 'brought back {}',
  raised: 'raised young from {}',
  'raising-undone': 'took back young raised from {}',
  'raising-restored': 'brought back young raised from {}',
  imported: 'imported {}',
  'import-undone': 'took back the import {}',
  'import-restored': 'brought back the import {}',
  reviewed: 'reviewed {}',
  'changed-together': 'changed {} together',
  'together-undone': 'took back a change of {} together',
  'together-restored': 'made a change of {} together again',
  merged: 'merged a duplicate into {}',
  unmerged: 'took apart the merged {}',
  confirmed: 'confirmed something unusual about {}',
  unconfirmed: 'took back a confirmation about {}',
  paired: 'turned pairs of {} into pairings',
  'pairing-undone': 'took back pairings made from {}',
  'pairing-restored': 'brought back pairings made from {}',
  offered: 'offered animals: {}',
  'offer-withdrawn': 'withdrew the offer: {}',
  declined: 'declined the offer: {}',
  accepted: 'accepted the offer: {}',
  'acceptance-undone': 'gave back what was accepted: {}',
  departed: 'noted that animals left the club: {}',
  'departure-withdrawn': 'put back animals that had not left: {}',
  'came-back': 'noted that animals came back: {}',
  'return-undone': 'took back that animals came back: {}',
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
  revoked: 'revoked {}',
  'key-made': 'began to sign with the key {}',
  'key-retired': 'retired the key {}',
  'club-changed': 'changed the settings of the club',
  'set-up': 'set up the club',
  seeded: 'filled the register with an invented club',
};

export const actionNames = Object.keys(deeds) as readonly JournalAction[];

/** An action as a filter offers it: "raised young from", "signed out everywhere". */
export const actionInWords = (action: JournalAction): string => deeds[action].replace(/:? ?\{\}/, '').trim();

/** Kinds of records that the journal tells of, in the words of a filter. */
export const kindWords: Readonly<Record<string, string>> = {
  individual: word('animals'),
  clutch: word('clutches'),
  pairing: word('pairings'),
  observation: word('remarks'),
  source: word('sources'),
  line: word('lines'),
  species: word('species'),
  claim: word('claims'),
  evidence: word('evidence'),
  photograph: word('photographs'),
  flag_acknowledgement: 'acknowledged flags',
  kept_plan: 'kept plans',
  other_register: 'registers of other clubs',
  change_together: 'animals changed together',
  import: word('imports'),
  transfer: word('transfers'),
  provenance_sheet: 'provenance sheets',
  signing_key: 'signing keys',
  keeper: word('people'),
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
  const deed = deeds[entry.action];
  const [before = '', after] = deed.split('{}');
  return {
    who: entry.keeper?.name ?? (entry.via === 'service' ? 'the service' : 'a member'),
    before: entry.reverses ? `undid a change: ${before.trim()}` : before.trim(),
    after: (after ?? '').trim(),
    title: after === undefined ? '' : (entry.record?.title ?? 'a record'),
    href: entry.record && after !== undefined ? recordAddress(entry.record) : null,
  };
}

const folders: Record<string, string> = {
  individual: '/animals/',
  clutch: '/clutches/',
  pairing: '/pairings/',
  source: '/sources/',
  line: '/lines/',
  kept_plan: '/plans/',
  transfer: '/transfers/',
};

/** The page of a record, or null where its kind has none. */
export function recordAddress(record: { kind: string; id: string }): string | null {
  const folder = folders[record.kind];
  if (folder !== undefined) return folder + record.id;
  if (record.kind === 'import') return '/import';
  return record.kind === 'keeper' ? '/club' : null;
}

const fieldNames: Record<string, string> = {
  name: word('name'),
  code: word('code'),
  sex: word('sex'),
  status: word('status'),
  line: word('line'),
  species: word('species'),
  keeper: word('keeper'),
  notes: word('notes'),
  visibility: word('visibility'),
  kind: word('kind'),
  laid: word('laid'),
  hatched: word('hatched'),
  eggs: word('eggs'),
  fertile: word('fertile'),
  died: word('died'),
  label: word('label'),
  value: word('value'),
  state: word('state'),
  site: word('site'),
  joined: word('joined'),
  title: word('title'),
  text: word('text'),
  date: word('date'),
  source: word('source'),
  clutch: word('clutch'),
  roles: word('roles'),
  scientificName: 'scientific name',
  outOfWater: 'out of water',
  sexBasis: 'how the sex is known',
  sexedOn: 'when it was sexed',
  mergedInto: 'merged into',
  publicReading: 'open to everybody',
  countryOfExport: 'country of export',
  svlMm: 'length, mm',
  massG: 'mass, g',
  recordIds: 'caused by',
  leftTo: 'went to',
  number: word('number'),
  animals: word('animals'),
  from: word('from'),
  to: word('to'),
  key: word('key'),
  kid: word('key'),
  reason: word('reason'),
  sire: word('sire'),
  dam: word('dam'),
  losses: word('losses'),
  parents: word('parents'),
  members: word('members'),
  individual: word('animal'),
  pairing: word('pairing'),
  claim: word('claim'),
  reference: word('reference'),
  region: word('region'),
  review: word('review'),
  hatchedOn: 'hatched on',
  expiresAt: word('ends'),
  validUntil: 'valid until',
  observedOn: 'seen on',
  issuedBy: 'issued by',
  statedBy: 'stated by',
  statedOn: 'stated on',
  receivedFrom: 'received from',
  labelAsReceived: 'label as received',
  labelNote: 'note on the label',
  labelKind: 'kind of label',
  baseKinship: 'base kinship',
  commonName: 'common name',
  nativeRange: 'lives in',
  citesAppendix: 'CITES appendix',
  receivedBy: 'received by',
  permitReferences: word('permits'),
  policy: 'what its keepers agreed on',
  aspect: 'what is claimed',
  bearing: 'what it does to the claim',
  names: 'what it names',
  dated: word('dated'),
  repeats: 'it only repeats',
  reviewer: 'reviewed by',
  reviewReason: 'why it counts, or why not',
  reviewedAt: 'reviewed on',
  verbatimLocality: 'words of the label',
  locality: 'the place in words of today',
  stateProvince: word('province'),
  countryCode: word('country'),
  decimalLatitude: word('latitude'),
  decimalLongitude: word('longitude'),
  geodeticDatum: word('datum'),
  coordinateUncertaintyM: 'uncertainty, m',
  georeferencedBy: 'who found the coordinates',
  georeferenceSources: 'by which maps or papers',
  view: word('side'),
  takenOn: word('taken'),
  file: word('file'),
  fileHash: word('file'),
  young: word('young'),
  moved: 'what moved',
  confirmedWarnings: 'confirmed warnings',
  parentsFromPairing: 'parents as the group was housed',
  pairs: word('pairs'),
  stays: 'stays in pairings',
  note: word('note'),
  remark: word('remark'),
  left: word('left'),
  leftAt: 'left the club on',
  address: word('address'),
  register: word('register'),
  keys: word('keys'),
  provenanceSheet: 'provenance sheet',
  created: 'what it made',
  rows: word('rows'),
  warnings: word('warnings'),
  withdrawn: word('withdrawn'),
  restored: 'brought back',
  withdrawnAt: 'withdrawn on',
  withdrawnReason: 'why it was withdrawn',
  revokedAt: 'revoked on',
  revokedReason: 'why it was revoked',
  issuedAt: 'issued on',
  usedFrom: 'used from',
  usedUntil: 'used until',
  settledAt: 'answered on',
  settledBy: 'answered by',
  ranges: 'what is usual',
  demo: 'invented data',
  kept: 'the record that goes on',
  duplicate: 'the record that becomes part of it',
};

/** A field as the screens name it: `sexBasis` becomes "sex basis". */
export function fieldInWords(field: string): string {
  const known = fieldNames[field.replace(/Id$/, '')];
  if (known !== undefined) return known;
  return field
    .replace(/Id$/, '')
    .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
    .replace(/_/g, ' ');
}

/** Values of closed vocabularies as the screens say them, by field. */
const valueNames: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  sex: sexWords,
  status: statusWords,
  sexBasis: labelsOf(sexBasisChoices),
  kind: {
    ...labelsOf(sourceKindChoices),
    ...noteKindWords,
    ...evidenceKindWords,
    handover: 'to a keeper of the club',
    departure: 'out of the club',
    invitation: word('invitation'),
  },
  labelKind: labelsOf(labelKindChoices),
  visibility: { private: word('private'), club: word('club'), public: word('public') },
  publicReading: yesOrNo(),
  parentsFromPairing: yesOrNo(),
  demo: yesOrNo(),
  aspect: labelsOf(aspectChoices),
  bearing: labelsOf(bearingChoices),
  names: labelsOf(namesChoices),
  review: { pending: 'waits for a review', accepted: word('accepted'), rejected: word('rejected') },
  view: labelsOf(viewOptions),
  state: {
    offered: word('offered'),
    accepted: word('accepted'),
    declined: word('declined'),
    withdrawn: word('withdrawn'),
  },
  code: flagWords,
  roles: roleNames,
  geodeticDatum: { 'not recorded': 'not recorded' },
};

function yesOrNo(): Readonly<Record<string, string>> {
  return { yes: word('yes'), no: word('no') };
}

function labelsOf(choices: readonly { value: string; label: string }[]): Readonly<Record<string, string>> {
  return Object.fromEntries(choices.map(({ value, label }) => [value, label]));
}

/** A value of a field before or after a change, in words. */
export function valueInWords(field: string, value: string | null): string {
  if (value === null || value === '') return word('nothing');
  if (instant.test(value)) return instantInWords(value);
  const names = valueNames[field];
  // of a list each is told
  return names
    ? value
        .split(', ')
        .map((one) => names[one] ?? one)
        .join(', ')
    : value;
}

const instant = /^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/;

/** Whether a change only fills in a new record: then what was before says nothing. */
export const isFilling = (changes: readonly JournalChange[]): boolean =>
  changes.length > 0 && changes.every((change) => change.before === null);

/** An instant as this device's clock reads it: `2026-11-25 13:20`. */
export function instantInWords(at: string): string {
  const day = new Date(at);
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())} ${two(day.getHours())}:${two(day.getMinutes())}`;
}

/** By which way a change came in. */
export const viaWords = (via: JournalEntry['via']): string =>
  ({ session: 'on this site', token: 'by a program', service: 'by the service' })[via];
