/** The words in which the scenario is told. Everything that a scenario tells is invented. */
import type {
  Bearing,
  CitesAppendix,
  ClaimAspect,
  EvidenceKind,
  EvidenceNames,
  LabelKind,
  ObservationKind,
  Review,
  SourceKind,
  Trait,
} from '../../shared/vocabulary.ts';

/** Least and most of one life-history trait; the unit is that of `traits` in shared/vocabulary.ts. */
export interface RangePlan {
  readonly usual: readonly [number | null, number | null];
  readonly extreme?: readonly [number | null, number | null];
  readonly source: string;
}

export interface SpeciesPlan {
  readonly scientificName: string;
  readonly commonName: string;
  readonly citesAppendix: CitesAppendix | null;
  readonly nativeRange: readonly string[];
  readonly ranges: Readonly<Record<Trait, RangePlan>>;
}

/**
 * Animals by the keeper's code, with `m` or `f` where the sex is known: `ZV-21m ZV-22f ZV-23`.
 * The code itself is what stands before that letter.
 */
type Animals = string;

/** A paper, or the animals' looks, for or against a claim; reviewed on a day by another keeper, or waiting for that. */
export interface EvidencePlan {
  readonly keeper: string;
  readonly kind: EvidenceKind;
  /** Left out, it supports the claim. */
  readonly bearing?: Bearing;
  /** Left out, it names what the claim says; else only the country. */
  readonly names?: EvidenceNames;
  readonly reference: string;
  readonly issuedBy?: string;
  readonly dated?: string;
  readonly notes?: string;
  readonly reviewed?: { readonly by: string; readonly on: string; readonly as: Review; readonly reason: string };
}

/** What somebody says of where a source comes from. */
export interface ClaimPlan {
  readonly keeper: string;
  readonly aspect: ClaimAspect;
  readonly value: string;
  readonly statedBy?: string;
  readonly statedOn?: string;
  readonly locality?: string;
  readonly countryCode?: string;
  /** Latitude and longitude in degrees, and how far the place may lie from there, metres. */
  readonly at?: readonly [latitude: number, longitude: number, uncertaintyM: number];
  readonly notes?: string;
  readonly evidence?: readonly EvidencePlan[];
}

/** A source with the founders that came from it; they carry the line in whose file they stand. */
export interface SourcePlan {
  readonly code: string;
  readonly keeper: string;
  readonly kind: SourceKind;
  readonly date?: string;
  readonly receivedFrom?: string;
  readonly receivedBy?: string;
  readonly countryOfExport?: string;
  readonly permitReferences?: readonly string[];
  readonly labelAsReceived?: string;
  readonly labelNote?: string;
  readonly baseKinship?: number;
  readonly notes?: string;
  readonly claims?: readonly ClaimPlan[];
  readonly founders: Animals;
}

/** An animal of which nobody knows where it came from. */
interface StrayPlan {
  readonly animal: Animals;
  readonly keeper: string;
  readonly hatched?: string;
  readonly notes: string;
}

/** A candidate parent: its code (`?` for a frog nobody knows), its weight, and why. */
export type Odds = readonly [code: string, weight: number, reason?: string];
/** A candidate pair of an unsexed group: both codes, weight, and why. */
export type PairOdds = readonly [a: string, b: string, weight: number, reason?: string];

/** A warning that a keeper has looked at and confirmed. */
export interface Confirmation {
  readonly code: string;
  /** The words of the warning, to the letter; keepers' codes in it are written as registry numbers. */
  readonly detail: string;
  readonly reason: string;
  readonly keeper: string;
  readonly at: string;
}

/** A clutch with something to tell. Parents that are not told are those housed together on the laying date. */
export interface ToldClutch {
  readonly laid: string;
  readonly young?: Animals;
  readonly eggs?: number;
  readonly sires?: readonly Odds[];
  readonly dams?: readonly Odds[];
  readonly pairs?: readonly PairOdds[];
  readonly site?: string;
  readonly notes?: string;
  /** The day on which the eggs were truly laid, where the record has a slip of the pen: the young hatch after this. */
  readonly trulyLaid?: string;
  readonly confirmed?: Confirmation;
}

/** Usually one line of text: the laying date, then the young that were kept: `2004-06-19 ZV-34m ZV-35f`. */
export type ClutchPlan = string | ToldClutch;

/** A member from the beginning to the end of its group, or `code joined` or `code joined left`. */
type MemberPlan = string;

export interface GroupPlan {
  readonly name: string;
  readonly keeper: string;
  readonly since: string;
  readonly until?: string;
  readonly members: readonly MemberPlan[];
  readonly notes?: string;
  readonly clutches: readonly ClutchPlan[];
}

/** What became of an animal, where the story wants it; the others draw their lot. */
type Fate =
  | { readonly status: 'alive' | 'unknown'; readonly notes?: string }
  | { readonly status: 'gone'; readonly notes: string }
  | { readonly status: 'died'; readonly died: string; readonly notes?: string };

export interface Remark {
  /** Code of an animal or of a source, or name of a group. */
  readonly about: string;
  readonly on: string;
  readonly kind: ObservationKind;
  readonly text?: string;
  readonly svlMm?: number;
  readonly massG?: number;
  readonly keeper: string;
}

/** One line with all that happened to it. Clutch codes begin with its prefix. */
export interface LinePlan {
  readonly species: string;
  readonly name: string;
  readonly prefix: string;
  readonly labelKind: LabelKind;
  readonly policy?: string;
  readonly sources: readonly SourcePlan[];
  readonly strays: readonly StrayPlan[];
  readonly groups: readonly GroupPlan[];
  readonly fates: Readonly<Record<string, Fate>>;
  readonly remarks: readonly Remark[];
}

export interface ClubPlan {
  readonly name: string;
  /** The day on which the story is told. */
  readonly today: string;
  readonly keepers: readonly string[];
  readonly species: readonly SpeciesPlan[];
  readonly lines: readonly LinePlan[];
}
