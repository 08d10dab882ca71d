import {
  bearings,
  evidenceKindNames,
  evidenceNames,
  reviews,
  type Bearing,
  type EvidenceKind,
  type EvidenceNames,
  type EvidenceRank,
  type Review,
} from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { RecordView } from '../../register/record.view.ts';

const text = (description: string): PropertyDecorator => Shown({ description, type: String, nullable: true });

/** The file of a document. */
export class EvidenceFileView {
  @Shown({ description: 'SHA-256 of its bytes, hexadecimal.' })
  hash: string;

  @Shown({ description: 'Media type, found by its content.' })
  mediaType: string;

  @Shown({ description: 'Size in bytes.', type: 'integer', minimum: 1 })
  bytes: number;
}

/** Who decided about evidence, when and why. */
export class ReviewView {
  @Shown({ description: 'Name of the registrar.' })
  reviewer: string;

  @Shown({ description: 'When, RFC 3339 in UTC.', format: 'date-time' })
  at: string;

  @Shown({ description: 'Why.' })
  reason: string;
}

/** A document, or how the animals look, that bears on a claim. */
export class EvidenceView extends RecordView {
  @Shown({ description: 'Name of the keeper who brought it.' })
  keeper: string;

  @Shown({ description: 'Id of that keeper.', format: 'uuid' })
  keeperId: string;

  @Shown({ description: 'The claim that it bears on.', format: 'uuid' })
  claimId: string;

  @Shown({ description: 'What that claim says.' })
  claim: string;

  @Shown({ description: 'Whether it supports the claim or contradicts it.', enum: bearings })
  bearing: Bearing;

  @Shown({ description: 'Kind of evidence.', enum: evidenceKindNames })
  kind: EvidenceKind;

  @Shown({ description: 'How near it stands to what it tells of.', enum: ['primary', 'secondary', 'appearance'] })
  rank: EvidenceRank;

  @Shown({ description: 'Whether it names what the claim says, or only the country of export.', enum: evidenceNames })
  names: EvidenceNames;

  @Shown({ description: 'Number, title or first words by which the document is found again.' })
  reference: string;

  @text('Who issued it.')
  issuedBy: string | null;

  @text('When it was issued, EDTF.')
  dated: string | null;

  @Shown({ description: 'Evidence that it only repeats.', type: String, format: 'uuid', nullable: true })
  repeatsId: string | null;

  @Shown({ description: 'Its file; null where none was given.', type: EvidenceFileView, nullable: true })
  file: EvidenceFileView | null;

  @text('Notes.')
  notes: string | null;

  @Shown({ description: 'Whether it was reviewed, and how: only what is accepted counts.', enum: reviews })
  review: Review;

  @Shown({ description: 'The review; null while it waits for one.', type: ReviewView, nullable: true })
  reviewed: ReviewView | null;
}
