import { OmitType, PartialType } from '@nestjs/swagger';
import {
  bearings,
  evidenceKindNames,
  evidenceNames,
  reviews,
  type Bearing,
  type EvidenceKind,
  type EvidenceNames,
  type Review,
} from '../../../shared/vocabulary.ts';
import { ChoiceField, DateField, IdField, TextField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

const optional = { optional: true, nullable: true } as const;

/** New evidence: a document, or how the animals look, that bears on a claim. */
export class NewEvidenceRequest {
  @IdField({ description: 'The claim that it bears on.' })
  claimId: string;

  @ChoiceField(bearings, { description: 'Whether it supports the claim or contradicts it.' })
  bearing: Bearing;

  @ChoiceField(evidenceKindNames, {
    description:
      'Kind of evidence. Primary: collecting-permit, export-permit, field-note, publication; secondary: importers-list, invoice, letter, other-document; appearance: a look at the animals.',
  })
  kind: EvidenceKind;

  @ChoiceField(evidenceNames, {
    optional: true,
    description:
      'What it names: claim (what the claim says; if left out) or country (only the country of export, which carries no place).',
  })
  names?: EvidenceNames;

  @TextField({ max: 500, description: 'Number, title or first words by which the document is found again.' })
  reference: string;

  @TextField({
    max: 200,
    ...optional,
    description: 'Who issued it. Two secondary documents are independent only if different people issued them.',
  })
  issuedBy?: string | null;

  @DateField({ ...optional, description: 'When it was issued.' })
  dated?: string | null;

  @IdField({ ...optional, description: 'Evidence of the same claim that it only repeats: together they count once.' })
  repeatsId?: string | null;

  @TextField({ max: 10_000, ...optional, description: 'Notes.' })
  notes?: string | null;
}

/** Changes of evidence that nobody has reviewed yet; the claim stays. */
export class EvidenceChangeRequest extends PartialType(OmitType(NewEvidenceRequest, ['claimId']), {
  skipNullProperties: false,
}) {}

/** What a registrar decides about evidence of another keeper. */
export class ReviewRequest {
  @ChoiceField(reviews.slice(1), { description: 'accepted: it counts; rejected: it does not.' })
  verdict: Exclude<Review, 'pending'>;

  @TextField({ max: 500, description: 'Why, for everybody to read.' })
  reason: string;
}

/** Which evidence to list. */
export class EvidenceQuery extends PageQuery {
  @IdField({ optional: true, description: 'Evidence of this claim.' })
  claimId?: string;

  @ChoiceField(reviews, { optional: true, description: 'Whether it was reviewed, and how.' })
  review?: Review;
}
