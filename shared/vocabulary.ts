/** The closed vocabularies of the register: one word, one meaning, in the database, the API and on the screen. */

/** What a keeper may do besides keeping animals; every member is a keeper. */
export const roles = ['registrar', 'administrator'] as const;
export type Role = (typeof roles)[number];

/** Who may see a record: its keeper and the registrars (of a remark its keeper alone), every member, or anyone. */
export const visibilities = ['private', 'club', 'public'] as const;
export type Visibility = (typeof visibilities)[number];

export const sexes = ['male', 'female', 'unsexed'] as const;
export type Sex = (typeof sexes)[number];

/** How the sex of an animal came to be known. */
export const sexBases = ['looks', 'calling', 'eggs', 'courtship', 'genetic', 'other'] as const;
export type SexBasis = (typeof sexBases)[number];

export const statuses = ['alive', 'died', 'gone', 'unknown'] as const;
export type Status = (typeof statuses)[number];

export const labelKinds = ['locality', 'trade-name', 'cross', 'unlabelled'] as const;
export type LabelKind = (typeof labelKinds)[number];

export const sourceKinds = ['import', 'wild-collection', 'purchase', 'unknown'] as const;
export type SourceKind = (typeof sourceKinds)[number];

/** How well a label stands, from best to nothing; the order is the order of every share bar. */
export const standings = ['documented', 'corroborated', 'stated', 'by-looks', 'disputed', 'unknown'] as const;
export type Standing = (typeof standings)[number];

/** What a claim says of where an animal comes from. */
export const claimAspects = ['locality', 'trade-name'] as const;
export type ClaimAspect = (typeof claimAspects)[number];

/** Kinds of evidence, and how near each stands to what it tells of. */
export const evidenceKinds = {
  'collecting-permit': 'primary',
  'export-permit': 'primary',
  'field-note': 'primary',
  publication: 'primary',
  'importers-list': 'secondary',
  invoice: 'secondary',
  letter: 'secondary',
  'other-document': 'secondary',
  appearance: 'appearance',
} as const;
export type EvidenceKind = keyof typeof evidenceKinds;
export type EvidenceRank = (typeof evidenceKinds)[EvidenceKind];
export const evidenceKindNames = Object.keys(evidenceKinds) as EvidenceKind[];

export const bearings = ['supports', 'contradicts'] as const;
export type Bearing = (typeof bearings)[number];

/** What a document names: what the claim says, or only the country of export. */
export const evidenceNames = ['claim', 'country'] as const;
export type EvidenceNames = (typeof evidenceNames)[number];

export const reviews = ['pending', 'accepted', 'rejected'] as const;
export type Review = (typeof reviews)[number];

/** The side of the animal that a photograph shows. */
export const photographViews = ['back', 'side', 'belly', 'other'] as const;
export type PhotographView = (typeof photographViews)[number];

export const parentRoles = ['sire', 'dam'] as const;
export type ParentRole = (typeof parentRoles)[number];

export const lossCauses = ['infertile', 'mould', 'eaten', 'dried-out', 'deformed', 'unknown'] as const;
export type LossCause = (typeof lossCauses)[number];

/** How far a clutch is: in the egg, in the water, out of it, or that nothing came of it. */
export const clutchStages = ['egg', 'water', 'out', 'ended'] as const;
export type ClutchStage = (typeof clutchStages)[number];

/** What is expected of a clutch next. */
export const expectedEvents = ['hatching', 'leaving-water'] as const;
export type ExpectedEvent = (typeof expectedEvents)[number];

export const observationKinds = ['note', 'measurement', 'health', 'behaviour'] as const;
export type ObservationKind = (typeof observationKinds)[number];

export const citesAppendices = ['I', 'II', 'III'] as const;
export type CitesAppendix = (typeof citesAppendices)[number];

/** The life-history ranges of a species profile, each with its unit. */
export const traits = {
  'laying-to-hatching': 'days',
  'hatching-to-leaving-water': 'days',
  maturity: 'months',
  'sexable-by-looks': 'months',
  'eggs-per-clutch': 'eggs',
  'between-clutches': 'days',
  'snout-vent-male': 'mm',
  'snout-vent-female': 'mm',
  lifespan: 'years',
} as const;
export type Trait = keyof typeof traits;
export const traitNames = Object.keys(traits) as Trait[];

/** What becomes of animals: another keeper of the club gets them, or they leave the club. */
export const transferKinds = ['handover', 'departure'] as const;
export type TransferKind = (typeof transferKinds)[number];

/** How far a transfer is. A departure is accepted from the start: nobody has to answer it. */
export const transferStates = ['offered', 'accepted', 'declined', 'withdrawn'] as const;
export type TransferState = (typeof transferStates)[number];

/** What a flag of the line audit does to a label. */
export const flagSeverities = ['breaks', 'weakens', 'worth-knowing'] as const;
export type FlagSeverity = (typeof flagSeverities)[number];

/** The flags of the audit of a label. */
export const flagCodes = [
  'disputed-claim',
  'mixed-labels',
  'outside-line',
  'label-changed',
  'label-beyond-evidence',
  'outside-range',
  'export-route',
  'date-conflict',
  'origin-gap',
  'country-only',
  'parents-uncertain',
] as const;
export type FlagCode = (typeof flagCodes)[number];

/** What an entry of the journal tells of. */
export const journalActions = [
  'added',
  'changed',
  'withdrawn',
  'restored',
  'raised',
  'raising-undone',
  'raising-restored',
  'imported',
  'import-undone',
  'import-restored',
  'reviewed',
  'changed-together',
  'together-undone',
  'together-restored',
  'merged',
  'unmerged',
  'confirmed',
  'unconfirmed',
  'offered',
  'offer-withdrawn',
  'declined',
  'accepted',
  'acceptance-undone',
  'departed',
  'departure-withdrawn',
  'came-back',
  'return-undone',
  'paired',
  'pairing-undone',
  'pairing-restored',
  'joined',
  'roles-changed',
  'left',
  'returned',
  'password-changed',
  'password-reset',
  'signed-out-everywhere',
  'token-made',
  'token-revoked',
  'link-made',
  'link-revoked',
  'revoked',
  'key-made',
  'key-retired',
  'club-changed',
  'set-up',
  'seeded',
] as const;
export type JournalAction = (typeof journalActions)[number];
