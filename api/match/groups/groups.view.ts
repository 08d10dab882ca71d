import { InbreedingRangeView, YoungInbreedingView } from '../../lineage/inbreeding.view.ts';
import { AnimalRef, AsOfView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { MateLineView } from '../breeder.view.ts';
import { exclusionReasons, type ExclusionReason } from '../breeders.ts';

/** An animal of a group. */
export class GroupMemberView extends AnimalRef {
  @Shown({ description: 'Its line; null without one.', type: MateLineView, nullable: true })
  line: MateLineView | null;

  @Shown({ description: 'Its keeper; empty where whoever asks may not see the animal.' })
  keeper: string;

  @Shown({
    description:
      'Mean kinship with the living of the line of the group, 0 to 1 (Ballou & Lacy 1995); null where none of it lives, and for animals of unknown sex.',
    type: Number,
    nullable: true,
    minimum: 0,
    maximum: 1,
  })
  meanKinship: number | null;

  @Shown({
    description: 'Why it may not breed, the plainest reason; null where nothing stands against it.',
    enum: exclusionReasons,
    nullable: true,
  })
  excluded: ExclusionReason | null;
}

/** What the young of one male with each of the females would be. */
export class GroupRowView {
  @Shown({
    description:
      'F of the young with each of `females`, in their order: expected, and its range over the candidate parents of whichever of the two hatched later (Malécot 1948).',
    type: [YoungInbreedingView],
  })
  inbreeding: YoungInbreedingView[];
}

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

  @Shown({
    description: 'In how many of them F counts as 0 for want of knowledge alone: all of them, and nothing is known.',
    type: 'integer',
    minimum: 0,
  })
  nothingKnown: number;
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

  @Shown({ description: 'What a keeper must know before housing them together.', type: [String] })
  warnings: string[];
}

/** A group of animals, how well it fits, and what would make it fit better. */
export class GroupView {
  @Shown({ description: 'The males of the group.', type: [GroupMemberView] })
  males: GroupMemberView[];

  @Shown({ description: 'The females of the group.', type: [GroupMemberView] })
  females: GroupMemberView[];

  @Shown({ description: 'Animals that do not count, since their sex is not known.', type: [GroupMemberView] })
  unsexed: GroupMemberView[];

  @Shown({
    description: 'Every sire with every dam: one row for each of `males`, in their order.',
    type: [GroupRowView],
  })
  rows: GroupRowView[];

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
    description:
      'The group with one more grown animal of its line, the best first, then those of which nothing is recorded, at most 10; of those that would make no pair above the limit of F.',
    type: [GroupChangeView],
  })
  add: GroupChangeView[];

  @Shown({
    description:
      'The best group of the size asked for, exact, of the animals that may breed and without a pair above the limit of F; null where none was asked for, or there is none.',
    type: BestGroupView,
    nullable: true,
  })
  best: BestGroupView | null;

  @Shown({
    description: 'Why there is no group of the size asked for, and what would help; null where there is one.',
    type: String,
    nullable: true,
  })
  noBest: string | null;

  @Shown({ description: 'What a keeper must know before housing them together.', type: [String] })
  warnings: string[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
