import type { Sex, SourceKind, Standing, Status } from '$shared/vocabulary.ts';

/** A part of the expected genome and how well its label stands; `share` runs from 0 to 1. */
export interface StandingShare {
  standing: Standing;
  share: number;
}

export interface IndividualNode {
  kind: 'individual';
  id: string;
  /** Null of a private animal: of it nothing but its place in the graph is told. */
  number: string | null;
  isPrivate?: boolean;
  code?: string | null;
  sex: Sex;
  status: Status;
  hatched?: string | null;
  /** Bounds of hatching as calendar dates; either may be open. */
  earliest?: string | null;
  latest?: string | null;
  line?: string | null;
  species?: string | null;
  unknownOrigin: boolean;
  withdrawn?: boolean;
  hasMoreAncestors: boolean;
  standings: StandingShare[];
  /** Expected inbreeding, 0 to 1. */
  inbreeding?: number | null;
}

/** One possible couple of a clutch whose parents are recorded as joint pairs. */
export interface CandidatePair {
  a: string;
  b: string;
  probability: number;
}

export interface ClutchNode {
  kind: 'clutch';
  id: string;
  title: string;
  laid?: string | null;
  earliest?: string | null;
  latest?: string | null;
  pairs?: CandidatePair[] | null;
  /** Probabilities that a parent is a frog nobody knows. */
  unknownSire?: number;
  unknownDam?: number;
}

export interface SourceNode {
  kind: 'source';
  id: string;
  title: string;
  sourceKind: SourceKind;
  label?: string | null;
  date?: string | null;
  earliest?: string | null;
  latest?: string | null;
  standing: Standing;
  baseKinship: number;
}

export type PedigreeNode = IndividualNode | ClutchNode | SourceNode;

export interface PedigreeEdge {
  from: string;
  to: string;
  kind: 'parent' | 'young' | 'founder';
  role?: 'sire' | 'dam' | 'either' | null;
  probability?: number | null;
}

/** What `GET /individuals/{id}/pedigree` answers: one animal and what stands above it. */
export interface PedigreeView {
  root: string;
  nodes: PedigreeNode[];
  edges: PedigreeEdge[];
  truncated: boolean;
}
