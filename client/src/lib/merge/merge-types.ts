import type { Individual } from '../api/types.ts';

/** A field of both records, in words. */
export interface ComparedField {
  field: string;
  kept: string | null;
  duplicate: string | null;
  isDifferent: boolean;
}

/** How much moves from the duplicate to the kept record. */
export interface MovedCounts {
  clutches: number;
  stays: number;
  remarks: number;
  confirmations: number;
  records: number;
}

/** Something that says that the two may not be one animal, and what to do about it. */
export interface Obstacle {
  code: string;
  blocks: boolean;
  detail: string;
  records: { kind: 'clutch' | 'pairing'; id: string; name: string }[];
}

/** Two records side by side. */
export interface MergeComparison {
  kept: Individual;
  duplicate: Individual;
  fields: ComparedField[];
  moves: MovedCounts;
  obstacles: Obstacle[];
}

/** That two records of one animal were merged. */
export interface Merge {
  id: string;
}
