import { getSchemaPath } from '@nestjs/swagger';
import { Shown } from '../../platform/fields.ts';
import { ParentListsView, ParentPairsView } from '../clutches/clutch.view.ts';

/** A clutch as a correction of its parents names it. */
export class CorrectedClutchView {
  @Shown({ description: 'Id of the clutch.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What people call it, such as "clutch of 2021-04-12"; computed.' })
  title: string;

  @Shown({ description: 'Its version now, for If-Match.', type: 'integer', minimum: 1 })
  version: number;

  @Shown({ description: 'When it was laid, EDTF.', type: String, nullable: true })
  laid: string | null;

  @Shown({ description: 'Whether its recorded parents came from the housing; name it again to put them back.' })
  parentsFromPairing: boolean;
}

const parents = (description: string): PropertyDecorator =>
  Shown({
    description,
    oneOf: [{ $ref: getSchemaPath(ParentListsView) }, { $ref: getSchemaPath(ParentPairsView) }],
    discriminator: {
      propertyName: 'mode',
      mapping: { lists: getSchemaPath(ParentListsView), pairs: getSchemaPath(ParentPairsView) },
    },
  });

/** A clutch whose recorded parents the housing contradicts. */
export class ParentCorrectionView {
  @Shown({ description: 'The clutch.', type: CorrectedClutchView })
  clutch: CorrectedClutchView;

  @parents('Who may be the parents as it is recorded.')
  recorded: ParentListsView | ParentPairsView;

  @parents(
    'Who would be proposed now from the animals housed when it was laid; a side that the keeper narrowed or gave odds stays as recorded while all its animals lived there.',
  )
  housed: ParentListsView | ParentPairsView;

  @Shown({
    description: 'Why it is offered, in a sentence or two.',
    example: 'LK-02 did not live here when it was laid.',
  })
  why: string;
}

/** Corrections that the keeper may make; none is made by itself. */
export class ParentCorrectionsView {
  @Shown({
    description: 'One entry a clutch, newest first; at most 200, the rest follows once these are made.',
    type: [ParentCorrectionView],
  })
  items: ParentCorrectionView[];
}
