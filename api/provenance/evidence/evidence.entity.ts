import { Check, Column, Entity, ForeignKey, Index } from 'typeorm';
import type { Bearing, EvidenceKind, EvidenceNames, Review } from '../../../shared/vocabulary.ts';
import { Keeper } from '../../people/keeper.entity.ts';
import { WithdrawableRecord, dateBoundsRule } from '../../register/record.ts';
import { Claim } from '../claims/claim.entity.ts';
import { StoredFile } from '../files/stored-file.entity.ts';

/** A document, or the animals' looks, that supports or contradicts a claim. It counts once another keeper has accepted it. */
@Entity('evidence')
@Check('evidence_bearing', `bearing in ('supports', 'contradicts')`)
@Check(
  'evidence_kind',
  `kind in ('collecting-permit', 'export-permit', 'field-note', 'publication', 'importers-list', 'invoice', 'letter', 'other-document', 'appearance')`,
)
@Check('evidence_names', `names in ('claim', 'country')`)
@Check('evidence_reference_length', 'length(reference) between 1 and 500')
@Check('evidence_issued_by_length', 'length(issued_by) between 1 and 200')
@Check('evidence_review', `review in ('pending', 'accepted', 'rejected')`)
@Check('evidence_review_reason_length', 'length(review_reason) between 1 and 500')
@Check('evidence_repeats_another', 'repeats_id <> id')
@Check(
  'evidence_reviewed_whole',
  `num_nonnulls(reviewer_id, reviewed_at, review_reason) = case review when 'pending' then 0 else 3 end`,
)
@Check('evidence_not_reviewed_by_its_keeper', 'reviewer_id <> keeper_id')
@Check('evidence_dated_bounds', dateBoundsRule('dated'))
@Index('evidence_claim_index', ['claimId'])
@Index('evidence_pending_index', { synchronize: false })
@Index('evidence_repeats_index', { synchronize: false })
@Index('evidence_file_index', { synchronize: false })
export class Evidence extends WithdrawableRecord {
  @Column({ name: 'claim_id', type: 'uuid' })
  @ForeignKey(() => Claim, { name: 'evidence_claim' })
  claimId: string;

  @Column({ name: 'keeper_id', type: 'uuid' })
  @ForeignKey(() => Keeper, { name: 'evidence_keeper' })
  keeperId: string;

  @Column('text')
  bearing: Bearing;

  @Column('text')
  kind: EvidenceKind;

  /** Whether it names what the claim says, or only the country of export. */
  @Column({ type: 'text', default: 'claim' })
  names: EvidenceNames;

  /** Number, title or first words by which the document is found again. */
  @Column('text')
  reference: string;

  @Column({ name: 'issued_by', type: 'text', nullable: true })
  issuedBy: string | null;

  @Column({ type: 'text', nullable: true })
  dated: string | null;

  @Column({ name: 'dated_earliest', type: 'date', nullable: true })
  datedEarliest: string | null;

  @Column({ name: 'dated_latest', type: 'date', nullable: true })
  datedLatest: string | null;

  /** The evidence that this one only repeats: together they count once. */
  @Column({ name: 'repeats_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Evidence, { name: 'evidence_repeats' })
  repeatsId: string | null;

  @Column({ name: 'file_hash', type: 'text', nullable: true })
  @ForeignKey(() => StoredFile, { name: 'evidence_file' })
  fileHash: string | null;

  @Column({ type: 'text', nullable: true })
  notes: string | null;

  @Column({ type: 'text', default: 'pending' })
  review: Review;

  @Column({ name: 'reviewer_id', type: 'uuid', nullable: true })
  @ForeignKey(() => Keeper, { name: 'evidence_reviewer' })
  reviewerId: string | null;

  @Column({ name: 'reviewed_at', type: 'timestamptz', precision: 3, nullable: true })
  reviewedAt: Date | null;

  @Column({ name: 'review_reason', type: 'text', nullable: true })
  reviewReason: string | null;
}
