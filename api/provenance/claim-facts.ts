import type { DateBounds } from '../../shared/edtf.ts';
import type { Bearing, ClaimAspect, EvidenceKind, EvidenceNames } from '../../shared/vocabulary.ts';
import type { LabelClaim } from './standing.ts';
import { foldedLabel } from './standing.ts';
import { standingOfClaim, type Bears } from './standing-of-claim.ts';

/** Accepted evidence, as far as the flags depend on it. */
export interface EvidenceFacts {
  readonly id: string;
  readonly kind: EvidenceKind;
  readonly bearing: Bearing;
  readonly names: EvidenceNames;
  /** First and last day of its date; null where it has none. */
  readonly dated: DateBounds | null;
}

/** A claim in force, with the evidence that counts. */
export interface ClaimFacts extends LabelClaim {
  readonly id: string;
  readonly aspect: ClaimAspect;
  /** ISO 3166-1 code of the country of the place. */
  readonly countryCode: string | null;
  readonly statedOn: DateBounds | null;
  readonly evidence: readonly EvidenceFacts[];
  /** Ids of the evidence that its standing rests on; none for somebody's word. */
  readonly decidedBy: readonly string[];
}

/** Evidence as the database has it. */
export type EvidenceRow = Bears & Pick<EvidenceFacts, 'dated'>;

/** A claim as the database has it, with all its evidence: its standing follows by rule. */
export function claimFacts(
  claim: Omit<ClaimFacts, 'folded' | 'standing' | 'evidence' | 'decidedBy'>,
  evidence: readonly EvidenceRow[],
): ClaimFacts {
  const counted = evidence.filter(({ review, isWithdrawn }) => review === 'accepted' && !isWithdrawn);
  return {
    ...claim,
    folded: foldedLabel(claim.value),
    ...standingOfClaim(evidence),
    evidence: counted.map(({ id, kind, bearing, names, dated }) => ({ id, kind, bearing, names, dated })),
  };
}
