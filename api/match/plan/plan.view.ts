import { YoungInbreedingView } from '../../lineage/inbreeding.view.ts';
import { AnimalRef, AsOfView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { BreederView, MateLineView } from '../breeder.view.ts';
import { exclusionReasons, type ExclusionReason } from '../breeders.ts';
import { YoungLabelView } from '../mates/mates.view.ts';

const probability = { minimum: 0, maximum: 1 } as const;
const orNull = { type: Number, nullable: true } as const;

export const leftOutReasons = [
  'unused',
  'no-mate',
  'mates-spent',
  'moves-spent',
  'as-good',
  'higher-mean-kinship',
  'dearer',
] as const;

/** An animal of a plan. */
export class PlanAnimalView extends BreederView {
  @Shown({
    description: 'Whether it counts as an old animal that has not bred: not proven, and certainly `reserveMonths` old.',
  })
  isReserve: boolean;

  @Shown({
    description: 'Mean kinship with the living animals of the line, 0 to 1 (Ballou & Lacy 1995).',
    ...probability,
  })
  meanKinship: number;
}

/** What the best plan would cost that does otherwise in one point. */
export class AlternativeView {
  @Shown({
    description:
      '`possible`: there is such a plan; `impossible`: there is none under these conditions; `unknown`: there was no time to find out, or it is fixed.',
    enum: ['possible', 'impossible', 'unknown'],
  })
  is: 'possible' | 'impossible' | 'unknown';

  @Shown({
    description: 'How much greater its sum would be, 0 or more, in the unit of the sum; null unless possible.',
    ...orNull,
    minimum: 0,
  })
  extra: number | null;

  @Shown({ description: 'Whether that is the exact figure; else it is at least so much.' })
  isExact: boolean;
}

/** The best mate that the plan does not give an animal. */
export class OtherMateView {
  @Shown({ description: 'That mate.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({
    description:
      'What a pair with it would add to the sum less what the chosen one adds; below 0 where it would be better for this animal alone.',
  })
  difference: number;

  @Shown({ description: 'Whether the plan uses that mate as often as it may be used.' })
  isSpent: boolean;
}

/** A mate that only the limit of F keeps from an animal. */
export class MateAboveLimitView {
  @Shown({ description: 'That mate.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'Expected F of the young with it, above the limit, 0 to 1 (Malécot 1948).', ...probability })
  inbreeding: number;

  @Shown({
    description:
      'What a pair with it would add to the sum less what the pair with the chosen mate, or with the best one, adds; below 0.',
    maximum: 0,
  })
  difference: number;
}

/** How the mate in a plan stands among all that an animal may have. */
export class MateRankView {
  @Shown({
    description: 'Its place by what the pair adds to the sum, 1 the best; equals share one.',
    type: 'integer',
    minimum: 1,
  })
  rank: number;

  @Shown({ description: 'How many mates the animal may have.', type: 'integer', minimum: 1 })
  of: number;

  @Shown({
    description: 'The best other mate; null where there is none.',
    type: OtherMateView,
    nullable: true,
  })
  bestOther: OtherMateView | null;

  @Shown({
    description:
      'The best of the mates that would add less than the chosen one, but whose young would have F above the limit; null where there is none.',
    type: MateAboveLimitView,
    nullable: true,
  })
  aboveLimit: MateAboveLimitView | null;
}

/** A pair of a plan, and why. */
export class PlanPairView {
  @Shown({ description: 'The male.', type: PlanAnimalView })
  male: PlanAnimalView;

  @Shown({ description: 'The female.', type: PlanAnimalView })
  female: PlanAnimalView;

  @Shown({
    description:
      'F of the young, which is the kinship of the two (Malécot 1948), with its range over the candidate parents of whichever of the two hatched later. The limit is held against the expected one.',
    type: YoungInbreedingView,
  })
  inbreeding: YoungInbreedingView;

  @Shown({
    description: 'Mean kinship of the young with the living of the line: half of each parent’s, 0 to 1.',
    ...probability,
  })
  meanKinship: number;

  @Shown({ description: 'What the pair adds to the sum: mean kinship + w · kinship.', minimum: 0 })
  cost: number;

  @Shown({ description: 'Whether the two have different keepers, so that one has to move.' })
  isMove: boolean;

  @Shown({ description: 'Whether the request fixed it.' })
  isFixed: boolean;

  @Shown({ description: 'The label of the young.', type: YoungLabelView })
  label: YoungLabelView;

  @Shown({ description: 'How the female stands among the mates of the male.', type: MateRankView })
  forMale: MateRankView;

  @Shown({ description: 'How the male stands among the mates of the female.', type: MateRankView })
  forFemale: MateRankView;

  @Shown({ description: 'The best plan without this pair.', type: AlternativeView })
  without: AlternativeView;

  @Shown({ description: 'Why it is in the plan, in words.', type: [String] })
  why: string[];

  @Shown({
    description:
      'What a keeper must know before: a cross, a disputed label, F above the limit, an age that nobody knows.',
    type: [String],
  })
  warnings: string[];
}

/** An animal that may breed but is in no pair, and why. */
export class LeftOutView {
  @Shown({ description: 'The animal.', type: PlanAnimalView })
  animal: PlanAnimalView;

  @Shown({
    description:
      '`unused`: the request says so; `no-mate`: it may have none; `mates-spent`: all its mates are used as often as they may be; `moves-spent`: it would have to move, or its mate; `as-good`: a plan with it is as good; `higher-mean-kinship`: higher than that of all of its sex in the plan; `dearer`: its pairs would add more.',
    enum: leftOutReasons,
  })
  reason: (typeof leftOutReasons)[number];

  @Shown({ description: 'Why, in words.' })
  why: string;

  @Shown({ description: 'How many mates it may have.', type: 'integer', minimum: 0 })
  mates: number;

  @Shown({ description: 'The best of them; null without one.', type: AnimalRef, nullable: true })
  bestMate: AnimalRef | null;

  @Shown({
    description:
      'The best of the mates that would add less than the best mate, but whose young would have F above the limit; null where there is none.',
    type: MateAboveLimitView,
    nullable: true,
  })
  aboveLimit: MateAboveLimitView | null;

  @Shown({ description: 'The best plan that has it in a pair.', type: AlternativeView })
  including: AlternativeView;
}

/** Animals that may not breed, for one reason. */
export class PlanExcludedView {
  @Shown({ description: 'The reason; of several the plainest.', enum: exclusionReasons })
  reason: ExclusionReason;

  @Shown({ description: 'The reason in words, and what would let these animals in.' })
  detail: string;

  @Shown({
    description: 'How many there are, of those that may be seen. Of the dead only those that the request names.',
    type: 'integer',
    minimum: 1,
  })
  count: number;

  @Shown({ description: 'The first of them, at most 12.', type: [AnimalRef] })
  animals: AnimalRef[];
}

/** What a plan adds up to, and how good that is. */
export class PlanObjectiveView {
  @Shown({ description: 'Weight w of kinship.', minimum: 0, maximum: 100 })
  weight: number;

  @Shown({ description: 'Σ mean kinship of the parents, half of each, over the pairs.', minimum: 0 })
  meanKinship: number;

  @Shown({ description: 'Σ kinship of the two over the pairs.', minimum: 0 })
  kinship: number;

  @Shown({ description: 'Σ mean kinship + w · Σ kinship: what the plan makes small.', minimum: 0 })
  sum: number;

  @Shown({ description: 'No plan under these conditions has a smaller sum.', minimum: 0 })
  bound: number;

  @Shown({
    description: '(sum − bound) / sum, 0 to 1: how much better another plan may be at most.',
    ...probability,
  })
  gap: number;

  @Shown({
    description: 'Whether it is proven that no plan is better by more than 10⁻¹⁰ (1 + w).',
  })
  isOptimal: boolean;
}

/** The best plan under another weight. */
export class TradeOffView {
  @Shown({ description: 'Weight w of kinship.', minimum: 0, maximum: 100 })
  weight: number;

  @Shown({ description: 'Σ mean kinship of the parents over its pairs.', minimum: 0 })
  meanKinship: number;

  @Shown({
    description: 'Σ kinship of the two over its pairs; divided by their number, mean F of the young.',
    minimum: 0,
  })
  kinship: number;

  @Shown({ description: 'How many of its pairs have animals of two keepers.', type: 'integer', minimum: 0 })
  moves: number;

  @Shown({ description: 'Whether it is proven that none is better.' })
  isOptimal: boolean;
}

/** Pairs chosen for a line. Nothing is written. */
export class PlanView {
  @Shown({ description: 'The line.', type: MateLineView })
  line: MateLineView;

  @Shown({ description: 'The pairs.', type: [PlanPairView] })
  pairs: PlanPairView[];

  @Shown({
    description: 'Animals that may breed but are in no pair, the nearest to being used first.',
    type: [LeftOutView],
  })
  leftOut: LeftOutView[];

  @Shown({ description: 'Who may not breed, by reason.', type: [PlanExcludedView] })
  excluded: PlanExcludedView[];

  @Shown({ description: 'What the plan adds up to.', type: PlanObjectiveView })
  objective: PlanObjectiveView;

  @Shown({
    description:
      'The best plans under seven weights and the asked one, by weight: what more of the one costs of the other. Shorter where the time was over.',
    type: [TradeOffView],
  })
  tradeOff: TradeOffView[];

  @Shown({ description: 'How many pairs have animals of two keepers.', type: 'integer', minimum: 0 })
  moves: number;

  @Shown({ description: 'Seconds that the choice took, its reasons and the trade-off apart.', minimum: 0 })
  seconds: number;

  @Shown({ description: 'What belongs beside the figures.', type: [String] })
  cautions: string[];

  @Shown({ description: 'The state of the register that the plan was made at.', type: AsOfView })
  asOf: AsOfView;
}
