import type { DateBounds } from '../../shared/edtf.ts';
import type { LabelKind, SourceKind } from '../../shared/vocabulary.ts';
import type { ClaimFacts } from './claim-facts.ts';

/** A record that a flag points to, with a name that a reader knows it by; one without an id is only counted. */
export interface NamedRecord {
  readonly kind: 'individual' | 'clutch' | 'source' | 'line';
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

/** What is known of a source beside its claims. */
export interface SourceFacts {
  readonly kind: SourceKind;
  /** ISO 3166-1 code. */
  readonly countryOfExport: string | null;
  readonly date: DateBounds | null;
}

/** A source or founder through which a share comes, the animal itself or its line, and what is claimed of it. */
export interface Claimant {
  readonly record: NamedRecord;
  readonly claims: readonly ClaimFacts[];
  /** The source, or that of the founder; null without one. */
  readonly source: SourceFacts | null;
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
  /** All of which something is claimed. */
  readonly claimants: readonly Claimant[];
  /** Where its label took the place of another without a document that names it: sources, or the animal itself. */
  readonly relabelled: readonly (NamedRecord & {
    /** The old label; null where whoever asks may not know it. */
    readonly from: string | null;
  })[];
  /** ISO 3166-1 codes of the countries where its species lives; empty where the profile names none. */
  readonly nativeRange: readonly string[];
}
