import { observationKinds, type ObservationKind, type Visibility } from '../../../shared/vocabulary.ts';
import { Shown, ShownVisibility } from '../../platform/fields.ts';
import { KeptRecordView } from '../record.view.ts';

const subject = (description: string): PropertyDecorator =>
  Shown({ description, type: String, format: 'uuid', nullable: true });

/** A dated remark on exactly one animal, pairing, clutch or source. */
export class ObservationView extends KeptRecordView {
  @subject('The animal that it is about.')
  individualId: string | null;

  @subject('The pairing that it is about.')
  pairingId: string | null;

  @subject('The clutch that it is about.')
  clutchId: string | null;

  @subject('The source that it is about.')
  sourceId: string | null;

  @Shown({ description: 'Kind of remark.', enum: observationKinds })
  kind: ObservationKind;

  @Shown({ description: 'When it was observed, EDTF.', type: String, nullable: true })
  observedOn: string | null;

  @Shown({ description: 'What was observed.', type: String, nullable: true })
  text: string | null;

  @Shown({ description: 'Snout-vent length in millimetres.', type: Number, nullable: true, minimum: 0, maximum: 500 })
  svlMm: number | null;

  @Shown({ description: 'Mass in grams.', type: Number, nullable: true, minimum: 0, maximum: 5000 })
  massG: number | null;

  @ShownVisibility()
  visibility: Visibility;
}
