import type { LabelKind } from '../../shared/vocabulary.ts';

/** A record that a flag points to, with a name that a reader knows it by; one without an id is only counted. */
export interface NamedRecord {
  readonly kind: 'individual' | 'clutch' | 'source';
  readonly id: string;
  readonly name: string;
  /** Whether whoever asks may not see it: then it has no other name. */
  readonly isPrivate: boolean;
}

/** A record through which a share of the animal's expected genome comes. */
export interface SharedRecord extends NamedRecord {
  /** 0 to 1. */
  readonly share: number;
}

/** What the lineage of one animal says about its label: everything that the flags are judged by. */
export interface LabelFindings {
  /** The animal's own label; null where it belongs to no line. */
  readonly label: { readonly name: string; readonly kind: LabelKind } | null;
  /** Share from founders whose own label is the same and stands corroborated or better; 0 to 1. */
  readonly tracedShare: { readonly expected: number; readonly least: number };
  /** The founders and sources that the rest of the label comes from, the largest share first. */
  readonly untraced: readonly SharedRecord[];
  /** How many different labels founders carry. */
  readonly labelCount: number;
  /** These labels, the largest share first; those of private sources together, last, under null. */
  readonly founderLabels: readonly {
    readonly label: string | null;
    readonly share: number;
    readonly sources: readonly SharedRecord[];
  }[];
  /** Ancestors without a recorded origin, and clutches of which a parent is unknown. */
  readonly gaps: readonly SharedRecord[];
  /** Ancestors of another line through which its blood came in. */
  readonly outsiders: readonly (SharedRecord & { readonly line: string })[];
  /** Lines of the proposed parents, where young are only planned and their parents belong to several. */
  readonly crossedLines: readonly string[];
  /** Clutches of which more than one pair may be the parents. */
  readonly uncertainClutches: readonly NamedRecord[];
  /** Whether the animal's own parents are only proposed and there is more than one pair. */
  readonly isProposalUncertain: boolean;
}
