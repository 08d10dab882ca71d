import type { DateBounds } from '../../../shared/edtf.ts';
import type { Sex, SexBasis, Status, Trait } from '../../../shared/vocabulary.ts';

/** A life-history range in the unit of its trait; null where nothing is said. */
export interface RangeFacts {
  readonly usualLeast: number | null;
  readonly usualMost: number | null;
  readonly extremeLeast: number | null;
  readonly extremeMost: number | null;
}

/** What a species profile says. Animals of one species may share one object. */
export type RangesFacts = Partial<Readonly<Record<Trait, RangeFacts>>>;

/** What a warning needs to know of an animal as a parent. */
export interface ParentFacts {
  /** How to call it: its registry number or its code. */
  readonly name: string;
  readonly role: 'sire' | 'dam' | 'either';
  /** Null where it may not be seen: then nothing else of it is known either. */
  readonly speciesId: string | null;
  readonly lineId: string | null;
  /** Name of the line, for words. */
  readonly line: string | null;
  readonly hatched: DateBounds | null;
  readonly died: DateBounds | null;
  readonly ranges: RangesFacts;
}

/** Another clutch of the same certain dam. */
export interface SiblingClutchFacts {
  readonly title: string;
  readonly laid: DateBounds;
}

/** Two candidate parents of one sex, by their names. */
export interface PairOfOneSex {
  readonly a: string;
  readonly b: string;
  readonly sex: Sex;
}

/** What the warnings of a clutch are computed from. */
export interface ClutchFacts {
  readonly laid: DateBounds | null;
  readonly eggs: number | null;
  readonly hatched: number | null;
  /** Sum of the recorded losses. */
  readonly lost: number;
  /** How many young stand in the register. */
  readonly young: number;
  readonly parents: readonly ParentFacts[];
  /** Clutches of the same certain dam laid near this one; empty where the dam is not certain. */
  readonly nearbyOfDam: readonly SiblingClutchFacts[];
  /** Candidate pairs whose animals turned out to be of one sex; left out where there are none. */
  readonly pairsOfOneSex?: readonly PairOfOneSex[];
}

/** A measured length. */
export interface MeasurementFacts {
  readonly svlMm: number;
  readonly observedOn: DateBounds | null;
}

/** What the warnings of an animal are computed from. */
export interface IndividualFacts {
  readonly sex: Sex;
  readonly sexBasis: SexBasis | null;
  readonly sexedOn: DateBounds | null;
  readonly status: Status;
  readonly hatched: DateBounds | null;
  /** The hatching date as it is written, for words. */
  readonly hatchedText: string | null;
  readonly outOfWater: DateBounds | null;
  readonly died: DateBounds | null;
  readonly speciesId: string;
  readonly lineId: string | null;
  readonly line: string | null;
  readonly ranges: RangesFacts;
  /** When its clutch was laid. */
  readonly laid: DateBounds | null;
  readonly parents: readonly ParentFacts[];
  readonly measurements: readonly MeasurementFacts[];
  /** The calendar day on which this is looked at, `YYYY-MM-DD`. */
  readonly today: string;
}

/** Something that looks implausible; a record has each code at most once. */
export interface Warning {
  readonly code: WarningCode;
  readonly detail: string;
  readonly fields: readonly string[];
}

export const warningCodes = [
  'young-dam',
  'young-sire',
  'young-parent',
  'old-dam',
  'old-sire',
  'old-parent',
  'dead-parent',
  'many-eggs',
  'no-eggs',
  'more-lost-than-laid',
  'more-young-than-eggs',
  'close-clutches',
  'pair-of-one-sex',
  'cross',
  'hatching-interval',
  'water-interval',
  'sexed-early',
  'size',
  'beyond-lifespan',
] as const;
export type WarningCode = (typeof warningCodes)[number];
