import { Shown } from '../../platform/fields.ts';
import { ClutchItemView } from '../clutches/clutch.view.ts';
import { AnimalStatusView } from '../individuals/individual.view.ts';

/** A clutch whose recorded parents and the animals housed when it was laid do not agree. */
export class ParentCorrectionView {
  @Shown({ description: 'The clutch as it is recorded.', type: ClutchItemView })
  clutch: ClutchItemView;

  @Shown({ description: 'Recorded as candidates, but not housed there that day.', type: [AnimalStatusView] })
  leaving: AnimalStatusView[];

  @Shown({ description: 'Housed there that day, but not recorded as candidates.', type: [AnimalStatusView] })
  joining: AnimalStatusView[];
}

/** Corrections that the keeper may make; none is made by itself. */
export class ParentCorrectionsView {
  @Shown({ description: 'One entry a clutch, newest first.', type: [ParentCorrectionView] })
  items: ParentCorrectionView[];
}
