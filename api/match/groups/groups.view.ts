import { AnimalRef, AsOfView, InbreedingRangeView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';

/** What young of a group would be, if every male is as likely the father as any other, and every female the mother. */
export class GroupScoreView {
  @Shown({
    description:
      'F of the young: expected over the pairs, and that of the least and of the most related pair (Malécot 1948).',
    type: InbreedingRangeView,
  })
  inbreeding: InbreedingRangeView;

  @Shown({
    description:
      'Mean kinship of the young with the living of the line, 0 to 1 (Ballou & Lacy 1995); null where none of the line lives.',
    type: Number,
    nullable: true,
    minimum: 0,
    maximum: 1,
  })
  youngMeanKinship: number | null;

  @Shown({
    description:
      'Mean kinship of the young + weight · F: the less the better. Without a living line, weight · F alone.',
    minimum: 0,
  })
  cost: number;

  @Shown({ description: 'How many pairs the group has.', type: 'integer', minimum: 1 })
  pairs: number;
}

/** What the group would be without one of its animals, or with one more. */
export class GroupChangeView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'The group after the change.', type: GroupScoreView })
  after: GroupScoreView;

  @Shown({ description: 'How much less the group costs afterwards; below 0 where it costs more.' })
  gain: number;
}

/** The best group of a size. */
export class BestGroupView {
  @Shown({ description: 'Its males.', type: [AnimalRef] })
  males: AnimalRef[];

  @Shown({ description: 'Its females.', type: [AnimalRef] })
  females: AnimalRef[];

  @Shown({ description: 'What its young would be.', type: GroupScoreView })
  score: GroupScoreView;
}

/** A group of animals, how well it fits, and what would make it fit better. */
export class GroupView {
  @Shown({ description: 'The males of the group.', type: [AnimalRef] })
  males: AnimalRef[];

  @Shown({ description: 'The females of the group.', type: [AnimalRef] })
  females: AnimalRef[];

  @Shown({ description: 'Animals that do not count, since their sex is not known.', type: [AnimalRef] })
  unsexed: AnimalRef[];

  @Shown({
    description: 'The group as it is; null without a male or without a female.',
    type: GroupScoreView,
    nullable: true,
  })
  score: GroupScoreView | null;

  @Shown({
    description: 'The group without one of its animals, the best first; those it would lose a side with are left out.',
    type: [GroupChangeView],
  })
  takeOut: GroupChangeView[];

  @Shown({
    description: 'The group with one more grown animal of its line, the best first, at most 10.',
    type: [GroupChangeView],
  })
  add: GroupChangeView[];

  @Shown({
    description:
      'The best group of the size asked for, exact; null where none was asked for or a side has too few animals.',
    type: BestGroupView,
    nullable: true,
  })
  best: BestGroupView | null;

  @Shown({ description: 'What a keeper must know before housing them together.', type: [String] })
  warnings: string[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
