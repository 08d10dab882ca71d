import type {
  CitesAppendix,
  FlagCode,
  FlagSeverity,
  LabelKind,
  LossCause,
  ObservationKind,
  Sex,
  SexBasis,
  SourceKind,
  Standing,
  Status,
} from '$shared/vocabulary.ts';

/** What the service sends, as its OpenAPI document describes it. Calendar dates are EDTF strings. */

/** An animal named in passing. */
export interface Ref {
  id: string;
  number: string;
  code: string | null;
  sex: Sex;
}

export interface Recorded {
  id: string;
  version: number;
  createdAt: string;
  updatedAt: string;
  withdrawn?: { at: string; reason: string } | null;
}

export interface Page<T> {
  items: T[];
  next: string | null;
  total?: number | null;
}

export interface Warning {
  code: string;
  detail: string;
  fields: string[];
  confirmed?: { reason: string; keeper: string; at: string } | null;
}

export interface IndividualItem extends Ref, Recorded {
  species: string;
  speciesId: string;
  line: string | null;
  lineId: string | null;
  labelKind: LabelKind | null;
  status: Status;
  hatched: string | null;
  outOfWater: string | null;
  keeper: string;
  keeperId: string;
}

export interface Observation extends Recorded {
  kind: ObservationKind;
  observedOn: string | null;
  text: string | null;
  svlMm: number | null;
  massG: number | null;
}

export interface Individual extends IndividualItem {
  sexBasis: SexBasis | null;
  sexedOn: string | null;
  source: { id: string; code: string | null; title: string } | null;
  clutch: { id: string; code: string | null; title: string; laid: string | null } | null;
  died: string | null;
  notes: string | null;
  proven: boolean;
  warnings: Warning[];
  pairings: { id: string; name: string; notation: string; joined: string | null; left: string | null }[];
  young: {
    clutch: {
      id: string;
      title: string;
      laid: string | null;
      eggs: number | null;
      hatched: number | null;
      outOfWater: number | null;
      role: 'sire' | 'dam' | 'either';
      probability: number;
    };
    mates: (Ref & { probability: number })[];
    animals: (Ref & { status: Status })[];
  }[];
  observations: Observation[];
}

export interface Species extends Recorded {
  scientificName: string;
  commonName: string | null;
  citesAppendix: CitesAppendix | null;
  nativeRange: string[];
  ranges: {
    trait: string;
    usualLeast: number | null;
    usualMost: number | null;
    extremeLeast: number | null;
    extremeMost: number | null;
    unit: string;
    source: string;
  }[];
}

export interface Line extends Recorded {
  species: string;
  speciesId: string;
  name: string;
  labelKind: LabelKind;
  policy: string | null;
  counts: { animals: number; alive: number };
}

export interface Source extends Recorded {
  code: string | null;
  keeper: string;
  keeperId: string;
  kind: SourceKind;
  date: string | null;
  receivedFrom: string | null;
  receivedBy: string | null;
  countryOfExport: string | null;
  permitReferences: string[];
  labelAsReceived: string | null;
  labelNote: string | null;
  baseKinship: number;
  notes: string | null;
  title: string;
  founders: number;
}

export interface PairingMember {
  id: string;
  individual: Ref & { status: Status };
  joined: string | null;
  left: string | null;
}

export interface Pairing extends Recorded {
  keeper: string;
  keeperId: string;
  name: string;
  notes: string | null;
  notation: string;
  members: PairingMember[];
  clutches: { id: string; title: string; laid: string | null; eggs: number | null }[];
}

export interface Candidate {
  individual: (Ref & { status: Status }) | null;
  probability: number;
  reason?: string | null;
}

export interface CandidatePair {
  a: Ref;
  b: Ref;
  probability: number;
  reason?: string | null;
}

export type ClutchParents =
  { mode: 'lists'; sires: Candidate[]; dams: Candidate[] } | { mode: 'pairs'; pairs: CandidatePair[] };

/** A clutch as lists show it. */
export interface ClutchItem extends Recorded {
  code: string | null;
  keeper: string;
  keeperId: string;
  pairing: { id: string; name: string } | null;
  laid: string | null;
  eggs: number | null;
  fertile: number | null;
  hatched: number | null;
  outOfWater: number | null;
  losses: { cause: LossCause; count: number }[];
  site: string | null;
  notes: string | null;
  title: string;
  parents: ClutchParents;
}

export interface Clutch extends ClutchItem {
  young: IndividualItem[];
  warnings: Warning[];
}

export interface Club {
  name: string;
  demo: boolean;
  actingKeeper: { id: string; name: string };
}

export interface Inbreeding {
  expected: number;
  least: number;
  greatest: number;
  nothingKnown: boolean;
}

export interface StandingShare {
  standing: Standing;
  share: number;
}

/** The figures of one row of the register. */
export interface Figures {
  id: string;
  inbreeding: Inbreeding;
  standings: StandingShare[];
  tracedShare: { expected: number; least: number };
  flags: FlagCode[];
}

export interface Flag {
  code: FlagCode;
  severity: FlagSeverity;
  detail: string;
  records: { kind: string; id: string; name: string }[];
  clearedBy: string;
}

export interface ImportAnswer {
  id: string | null;
  rows: number;
  created: { individuals: number; clutches: number; sources: number; lines: number; species: number };
  warnings: { row?: number | null; column?: string | null; detail: string }[];
}

/** One candidate pair of parents and how related they are. */
export interface ParentPair {
  a: Ref | null;
  b: Ref | null;
  probability: number;
  kinship: number;
}

/** Where a part of a genome begins: exactly one of source, founder and unknownParentOf. */
export interface OriginShare {
  source?: { id: string; title: string; standing: Standing; label: string | null };
  founder?: Ref;
  unknownParentOf?: { id: string; title: string };
  share: number;
}

/** What the pedigree says about one animal. */
export interface Lineage {
  inbreeding: Inbreeding & { pairs: ParentPair[] };
  depth: number;
  fullDepth: number;
  generationEquivalents: number;
  completeness: { generations: number; index: number } | null;
  filialGeneration: number | null;
  meanKinship: number | null;
  label: {
    name: string | null;
    kind: LabelKind | null;
    standing: Standing;
    shares: StandingShare[];
    tracedShare: { expected: number; least: number };
    otherLabels: { label: string; share: number }[];
    flags: Flag[];
  };
  shares: OriginShare[];
  current: boolean;
  asOf: { revision: number; at: string };
}

/** Kinships of some animals, rows and columns in the order of `individuals`. */
export interface Kinship {
  individuals: Ref[];
  kinship: number[][];
}

/** What young of a pairing not yet made would be. */
export interface Forecast {
  inbreeding: { expected: number; least: number; greatest: number; pairs: ParentPair[] };
  label: {
    shares: StandingShare[];
    otherLabels: { label: string; share: number }[];
    names: string[];
  };
  flags: Flag[];
}
