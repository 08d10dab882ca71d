import type { Sex, Status } from '$shared/vocabulary.ts';
import type { StandingShare } from '../ancestors/pedigree-view.ts';

/** An animal as a chart of descendants needs it. */
export interface ChartDescendant {
  id: string;
  number: string | null;
  code: string | null;
  sex: Sex;
  status: Status;
  isPrivate: boolean;
  hasYoung: boolean;
  /** Empty or left out where nothing is told of them. */
  standings?: readonly StandingShare[];
  /** Bounds of its hatching as calendar days, of the first animal only; either may be open. */
  earliest?: string | null;
  latest?: string | null;
}

/** A clutch under one of its parents, with whom, and its young. */
export interface Family {
  clutch: {
    id: string;
    title: string;
    laid: string | null;
    /** Probability that the animal above is a parent of it. */
    probability: number;
    /** Bounds of its date as calendar days; either may be open or not told. */
    earliest?: string | null;
    latest?: string | null;
  };
  mates: readonly { code: string | null; number: string | null }[];
  animals: readonly ChartDescendant[];
}

/** What was read of an animal's clutches, by the animal's id. */
export type YoungOf = ReadonlyMap<string, readonly Family[]>;
