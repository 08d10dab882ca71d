import { Shown, ShownDay } from '../../platform/fields.ts';
import {
  AnimalStatusView,
  MateView,
  OwnClutchView,
  YoungAnimalView,
} from '../../register/individuals/individual.view.ts';
import { StandingShareView } from '../lineage.view.ts';

const standingsShown = 'Expected genome shares by standing, best first; they sum to 1. Empty where it may not be seen.';

/** The animal asked about. */
export class DescendedFromView extends AnimalStatusView {
  @Shown({ description: 'Hatching date, EDTF.', type: String, nullable: true })
  hatched: string | null;

  @ShownDay('First', 'hatching date')
  earliest: string | null;

  @ShownDay('Last', 'hatching date')
  latest: string | null;

  @Shown({ description: standingsShown, type: [StandingShareView] })
  standings: StandingShareView[];
}

/** One of the young. */
export class DescendantView extends YoungAnimalView {
  @Shown({ description: standingsShown, type: [StandingShareView] })
  standings: StandingShareView[];
}

/** A clutch with the bounds of its date. */
export class DatedClutchView extends OwnClutchView {
  @ShownDay('First', 'laying date')
  earliest: string | null;

  @ShownDay('Last', 'laying date')
  latest: string | null;
}

/** One clutch of the animal or of one of its descendants, with whom, and its young. */
export class FamilyView {
  @Shown({ description: 'Id of the animal whose clutch it is or may be.', format: 'uuid' })
  parent: string;

  @Shown({ description: 'The clutch, with the role and the odds of that animal.', type: DatedClutchView })
  clutch: DatedClutchView;

  @Shown({ description: 'Who may be the other parent, most probable first.', type: [MateView] })
  mates: MateView[];

  @Shown({
    description: 'Its young in the register, by number. Those that may not be seen are numbered for each parent anew.',
    type: [DescendantView],
  })
  animals: DescendantView[];
}

/** What descends from one animal. */
export class DescendantsView {
  @Shown({ description: 'The animal asked about.', type: DescendedFromView })
  root: DescendedFromView;

  @Shown({
    description:
      'Clutches, generation by generation, those of one parent newest first. A clutch of two of them stands here under each.',
    type: [FamilyView],
  })
  families: FamilyView[];

  @Shown({
    description: 'Whether there are more with young of their own than `parentLimit`; ask for those one by one.',
  })
  truncated: boolean;

  @Shown({ description: 'Most animals whose clutches one answer tells.', type: 'integer', minimum: 1 })
  parentLimit: number;
}
