import { AnimalRef, AsOfView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { AgeView, MateLineView } from '../breeder.view.ts';
import { exclusionReasons, type ExclusionReason } from '../breeders.ts';
import { BeginningView } from './carrier.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;
const count = { type: 'integer', minimum: 0 } as const;

/** What some animals of a line hold together. */
export class HoldingView {
  @Shown({ description: 'How many animals they are.', ...count })
  animals: number;

  @Shown({ description: 'How many males.', ...count })
  males: number;

  @Shown({ description: 'How many females.', ...count })
  females: number;

  @Shown({ description: 'How many that were not sexed yet.', ...count })
  unsexed: number;

  @Shown({
    description:
      'Mean of all kinships among them, each with itself included, 0 to 1 (Ballou & Lacy 1995); null without animals, as are the next two.',
    ...share,
    nullable: true,
  })
  meanKinship: number | null;

  @Shown({ description: 'Gene diversity, 1 minus the mean kinship, 0 to 1.', ...share, nullable: true })
  geneDiversity: number | null;

  @Shown({
    description: 'Founder genome equivalents, 1/(2 · mean kinship) (Lacy 1989; Ballou & Lacy 1995); at least ½.',
    type: Number,
    nullable: true,
    minimum: 0.5,
  })
  founderGenomeEquivalents: number | null;

  @Shown({ description: 'Of how many recorded founders anything is expected to be in them.', ...count })
  founders: number;

  @Shown({ description: 'Of how many recorded sources anything is expected to be in them.', ...count })
  sources: number;

  @Shown({
    description:
      'Expected part of their genes that comes from parents nobody knows, 0 to 1: these count as unrelated for want of knowledge.',
    ...share,
  })
  unknown: number;
}

/** What an exchange does for one of two. */
export class ExchangeOutcomeView {
  @Shown({ description: 'What it has afterwards.', type: HoldingView })
  after: HoldingView;

  @Shown({
    description: 'Gene diversity afterwards minus before, −1 to 1; null where it has no animals before or after.',
    type: Number,
    nullable: true,
    minimum: -1,
    maximum: 1,
  })
  gain: number | null;

  @Shown({ description: 'Founders of which it had nothing before, at most 12.', type: [BeginningView] })
  won: BeginningView[];

  @Shown({ description: 'How many founders of which it had nothing before, in all.', ...count })
  wonCount: number;

  @Shown({ description: 'Founders of which it has nothing any more, at most 12.', type: [BeginningView] })
  lost: BeginningView[];

  @Shown({ description: 'How many founders of which it has nothing any more, in all.', ...count })
  lostCount: number;

  @Shown({ description: 'What its keeper must know before.', type: [String] })
  warnings: string[];
}

/** An animal that would go to another keeper. */
export class MovingAnimalView {
  @Shown({ description: 'The animal.', type: AnimalRef })
  animal: AnimalRef;

  @Shown({ description: 'Its line; null without one.', type: MateLineView, nullable: true })
  line: MateLineView | null;

  @Shown({ description: 'Its age; null without a hatching date.', type: AgeView, nullable: true })
  age: AgeView | null;

  @Shown({ description: 'Whether a clutch that is certainly its own has hatched.' })
  proven: boolean;

  @Shown({ description: 'Whether it lives in a pairing now, as far as whoever asks may see that.' })
  housed: boolean;

  @Shown({
    description:
      'What a keeper must know before it moves: a cross, a disputed label, that it is housed or may not breed.',
    type: [String],
  })
  warnings: string[];
}

/** One of two that exchange. */
export class ExchangeSideView {
  @Shown({ description: 'Its keeper; null for animals named one by one.', type: String, nullable: true })
  keeper: string | null;

  @Shown({ description: 'Id of its keeper; null as above.', type: String, format: 'uuid', nullable: true })
  keeperId: string | null;

  @Shown({ description: 'What it has.', type: HoldingView })
  before: HoldingView;
}

/** The exchange that was asked about. */
export class AskedExchangeView {
  @Shown({ description: 'What the first side gives.', type: [MovingAnimalView] })
  give: MovingAnimalView[];

  @Shown({ description: 'What it takes.', type: [MovingAnimalView] })
  take: MovingAnimalView[];

  @Shown({ description: 'What it does for the first side.', type: ExchangeOutcomeView })
  one: ExchangeOutcomeView;

  @Shown({ description: 'What it does for the other.', type: ExchangeOutcomeView })
  other: ExchangeOutcomeView;
}

/** An exchange of one animal for one that helps both. */
export class ProposedExchangeView {
  @Shown({ description: 'What the first side gives.', type: MovingAnimalView })
  give: MovingAnimalView;

  @Shown({ description: 'What it takes.', type: MovingAnimalView })
  take: MovingAnimalView;

  @Shown({ description: 'What it does for the first side.', type: ExchangeOutcomeView })
  one: ExchangeOutcomeView;

  @Shown({ description: 'What it does for the other.', type: ExchangeOutcomeView })
  other: ExchangeOutcomeView;
}

/** Animals that are not proposed, for one reason. */
export class NotProposedView {
  @Shown({ description: 'The reason; of several the plainest.', enum: exclusionReasons })
  reason: ExclusionReason;

  @Shown({ description: 'The reason in words, and what would let these animals in.' })
  detail: string;

  @Shown({ description: 'How many there are.', type: 'integer', minimum: 1 })
  count: number;

  @Shown({ description: 'The first of them, at most 12.', type: [AnimalRef] })
  animals: AnimalRef[];
}

/** What an exchange between two does for both, and which ones would help both. */
export class ExchangeView {
  @Shown({ description: 'The line.', type: MateLineView })
  line: MateLineView;

  @Shown({ description: 'The first side.', type: ExchangeSideView })
  one: ExchangeSideView;

  @Shown({ description: 'The other side.', type: ExchangeSideView })
  other: ExchangeSideView;

  @Shown({
    description: 'The exchange that was asked about; null where nothing was given nor taken.',
    type: AskedExchangeView,
    nullable: true,
  })
  asked: AskedExchangeView | null;

  @Shown({
    description:
      'The exchanges of one animal for one after which both are more diverse than before, the best first: by the least of both gains, then by their sum, then by registry numbers. Empty where there is none.',
    type: [ProposedExchangeView],
  })
  proposals: ProposedExchangeView[];

  @Shown({ description: 'How many exchanges of one for one were tried: every one there is.', ...count })
  tried: number;

  @Shown({ description: 'How many of them help both.', ...count })
  helping: number;

  @Shown({
    description: 'What came of trying, in a sentence; null where none was to be proposed.',
    type: String,
    nullable: true,
  })
  outcome: string | null;

  @Shown({ description: 'Which animals of both are not proposed, by reason.', type: [NotProposedView] })
  notProposed: NotProposedView[];

  @Shown({ description: 'What belongs beside the figures.', type: [String] })
  cautions: string[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
