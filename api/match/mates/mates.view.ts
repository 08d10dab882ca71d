import { flagCodes, flagSeverities, type FlagCode, type FlagSeverity } from '../../../shared/vocabulary.ts';
import { YoungInbreedingView } from '../../lineage/inbreeding.view.ts';
import { AnimalRef, AsOfView, StandingShareView, TracedShareView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { BreederView } from '../breeder.view.ts';
import { exclusionReasons } from '../breeders.ts';

/** Why an animal is no mate for another, the plainest reason first. */
export const mateExclusions = [...exclusionReasons, 'other-species', 'related', 'other-line'] as const;
export type MateExclusion = (typeof mateExclusions)[number];

/** A flag that the label of young would carry. */
export class YoungFlagView {
  @Shown({ description: 'Which flag.', enum: flagCodes })
  code: FlagCode;

  @Shown({ description: 'How grave it is.', enum: flagSeverities })
  severity: FlagSeverity;
}

/** The label that young of two animals would carry. */
export class YoungLabelView {
  @Shown({
    description: 'Expected genome shares of the young by standing, best first; they sum to 1.',
    type: [StandingShareView],
  })
  shares: StandingShareView[];

  @Shown({
    description: 'How much of the young would be traced to founders that carry their label on paper.',
    type: TracedShareView,
  })
  tracedShare: TracedShareView;

  @Shown({ description: 'What an audit would hold against it, the gravest first.', type: [YoungFlagView] })
  flags: YoungFlagView[];
}

/** An animal that may be the mate of another, and what their young would be. */
export class PossibleMateView extends BreederView {
  @Shown({ description: 'Its hatching date (EDTF); null where none is recorded.', type: String, nullable: true })
  hatched: string | null;

  @Shown({
    description:
      'F of the young, which is the kinship of the two (Malécot 1948), with its range over the candidate parents of whichever of the two hatched later.',
    type: YoungInbreedingView,
  })
  inbreeding: YoungInbreedingView;

  @Shown({
    description:
      "Mean kinship of the young with the living animals of the asked animal's line, 0 to 1: the mean of their parents' (Ballou & Lacy 1995). Null where none lives.",
    type: Number,
    nullable: true,
    minimum: 0,
    maximum: 1,
  })
  youngMeanKinship: number | null;

  @Shown({
    description:
      "What one young of the two would add to the gene diversity of the asked animal's line, 1 minus its mean kinship; below 0 where it would take from it. Null where none of the line lives.",
    type: Number,
    nullable: true,
    minimum: -1,
    maximum: 1,
  })
  diversityGain: number | null;

  @Shown({ description: 'Where its keeper lives, roughly; null where they do not say.', type: String, nullable: true })
  region: string | null;

  @Shown({ description: 'The label of the young.', type: YoungLabelView })
  label: YoungLabelView;

  @Shown({
    description: 'What a keeper must know before such a pairing: a cross, a disputed label, an age that nobody knows.',
    type: [String],
  })
  warnings: string[];
}

/** Animals that are no mates, for one reason. */
export class ExcludedMatesView {
  @Shown({ description: 'The reason; of several the plainest.', enum: mateExclusions })
  reason: MateExclusion;

  @Shown({ description: 'The reason in words, and what would let these animals in.' })
  detail: string;

  @Shown({
    description:
      'How many there are, of those that may be seen; null for animals of other lines, which are not counted.',
    type: 'integer',
    minimum: 1,
    nullable: true,
  })
  count: number | null;

  @Shown({ description: 'The first of them, at most 12.', type: [AnimalRef] })
  animals: AnimalRef[];
}

/** Who may be the mate of an animal. */
export class MatesView {
  @Shown({ description: 'The animal that was asked about.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({
    description: 'What speaks against breeding from the animal itself; empty where nothing does.',
    type: [String],
  })
  cautions: string[];

  @Shown({ description: 'Greatest kinship that was taken.', minimum: 0, maximum: 1 })
  kinshipTo: number;

  @Shown({ description: 'One page of the mates, in the order asked for.', type: [PossibleMateView] })
  items: PossibleMateView[];

  @Shown({ description: 'Send it as `after` to go on; null at the end.', type: String, nullable: true })
  next: string | null;

  @Shown({ description: 'How many mates there are in all.', type: 'integer', minimum: 0 })
  total: number;

  @Shown({
    description:
      'Of how many of all these mates neither a source nor a parent is recorded. They would count as unrelated for want of knowledge, so they come last in either order.',
    type: 'integer',
    minimum: 0,
  })
  nothingKnown: number;

  @Shown({ description: 'Who was left out, by reason.', type: [ExcludedMatesView] })
  excluded: ExcludedMatesView[];

  @Shown({
    description: "Gene diversity of the living of the animal's line, 0 to 1; null where none lives.",
    type: Number,
    nullable: true,
    minimum: 0,
    maximum: 1,
  })
  geneDiversity: number | null;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
