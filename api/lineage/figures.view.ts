import { flagCodes, type FlagCode } from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';
import { InbreedingFigureView } from './inbreeding.view.ts';
import { AsOfView, StandingShareView, TracedShareView } from './lineage.view.ts';

/** The figures of one animal, as a list shows them. */
export class FigureItemView {
  @Shown({ description: 'Id of the individual.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Inbreeding coefficient with its range.', type: InbreedingFigureView })
  inbreeding: InbreedingFigureView;

  @Shown({
    description: 'Generations on the longest recorded path to a founder; 0 for a founder.',
    type: 'integer',
    minimum: 0,
  })
  depth: number;

  @Shown({ description: 'Expected genome shares by standing, best first; they sum to 1.', type: [StandingShareView] })
  standings: StandingShareView[];

  @Shown({
    description: 'How much of the animal is traced to founders that carry its label on paper.',
    type: TracedShareView,
  })
  tracedShare: TracedShareView;

  @Shown({
    description:
      'Mean kinship with the living animals of its line, itself included where it lives, 0 to 1 (Ballou & Lacy 1995), as it was last ' +
      'written: the value that lists are sorted and filtered by, which follows a change a moment later (GET /lineage/progress tells). ' +
      'Null without a line or without living animals in it, or while it is still to be written.',
    type: 'number',
    minimum: 0,
    maximum: 1,
    nullable: true,
  })
  meanKinship: number | null;

  @Shown({
    description: 'What the audit holds against its label, the gravest first; ask for its lineage to learn why.',
    enum: flagCodes,
    isArray: true,
  })
  flags: FlagCode[];

  @Shown({
    description: 'Those of its flags that a registrar acknowledged; ask for its lineage to learn why.',
    enum: flagCodes,
    isArray: true,
  })
  acknowledged: FlagCode[];
}

/** The figures of some animals. */
export class FiguresView {
  @Shown({ description: 'One item an animal, in the order they were named.', type: [FigureItemView] })
  items: FigureItemView[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
