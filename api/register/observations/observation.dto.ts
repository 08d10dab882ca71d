import { OmitType, PartialType } from '@nestjs/swagger';
import { observationKinds, type ObservationKind, type Visibility } from '../../../shared/vocabulary.ts';
import { ChoiceField, DateField, IdField, NumberField, TextField, VisibilityField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

const subject = (description: string): PropertyDecorator => IdField({ optional: true, description });

/** A new remark; exactly one of the four ids is given, and a text or a measurement. */
export class NewObservationRequest {
  @subject('The animal that it is about.')
  individualId?: string;

  @subject('The pairing that it is about.')
  pairingId?: string;

  @subject('The clutch that it is about.')
  clutchId?: string;

  @subject('The source that it is about.')
  sourceId?: string;

  @ChoiceField(observationKinds, { description: 'Kind of remark.' })
  kind: ObservationKind;

  @DateField({ description: 'When it was observed.' })
  observedOn: string;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'What was observed.' })
  text?: string | null;

  @NumberField({ min: 0.1, max: 500, optional: true, nullable: true, description: 'Snout-vent length in millimetres.' })
  svlMm?: number | null;

  @NumberField({ min: 0.001, max: 5000, optional: true, nullable: true, description: 'Mass in grams.' })
  massG?: number | null;

  @VisibilityField('Who may see it; club if left out. A private remark is seen by its keeper alone.')
  visibility?: Visibility;
}

/** Changes of a remark; what it is about stays. */
export class ObservationChangeRequest extends PartialType(
  OmitType(NewObservationRequest, ['individualId', 'pairingId', 'clutchId', 'sourceId']),
  {
    skipNullProperties: false,
  },
) {}

/** Which remarks to list. */
export class ObservationQuery extends PageQuery {
  @subject('Remarks on this animal.')
  individualId?: string;

  @subject('Remarks on this pairing.')
  pairingId?: string;

  @subject('Remarks on this clutch.')
  clutchId?: string;

  @subject('Remarks on this source.')
  sourceId?: string;

  @ChoiceField(observationKinds, { optional: true, description: 'Kind of remark.' })
  kind?: ObservationKind;

  @VisibilityField('Visibility.')
  visibility?: Visibility;
}

/** What a remark can be about. */
export const observationSubjects = ['individualId', 'pairingId', 'clutchId', 'sourceId'] as const;
