import { labelKinds, type LabelKind } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { RecordView } from '../record.view.ts';

export class LineCountsView {
  @Shown({
    description: 'Animals of the line that stand in the register and may be seen.',
    type: 'integer',
    minimum: 0,
  })
  animals: number;

  @Shown({ description: 'Those of them that are alive.', type: 'integer', minimum: 0 })
  alive: number;
}

/** Animals bred as one closed lineage under one label. */
export class LineView extends RecordView {
  @Shown({ description: 'Scientific name of its species.' })
  species: string;

  @Shown({ description: 'Id of its species.', format: 'uuid' })
  speciesId: string;

  @Shown({ description: 'Name of the line, which is its label.' })
  name: string;

  @Shown({ description: 'What the label is: a place, a name of the trade, a cross, or none.', enum: labelKinds })
  labelKind: LabelKind;

  @Shown({ description: 'What its keepers agreed on.', type: String, nullable: true })
  policy: string | null;

  @Shown({ description: 'How many animals it has.', type: LineCountsView })
  counts: LineCountsView;
}
