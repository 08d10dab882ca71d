import { flagCodes, type FlagCode } from '../../shared/vocabulary.ts';
import { Shown } from '../platform/fields.ts';
import { AsOfView, InbreedingFigureView, StandingShareView, TracedShareView } from './lineage.view.ts';

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
    description: 'What the audit holds against its label, the gravest first; ask for its lineage to learn why.',
    enum: flagCodes,
    isArray: true,
  })
  flags: FlagCode[];
}

/** The figures of some animals. */
export class FiguresView {
  @Shown({ description: 'One item an animal, in the order they were named.', type: [FigureItemView] })
  items: FigureItemView[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
