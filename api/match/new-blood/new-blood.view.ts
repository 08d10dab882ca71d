import { YoungInbreedingView } from '../../lineage/inbreeding.view.ts';
import { AnimalRef, AsOfView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { BreederView, MateLineView } from '../breeder.view.ts';
import { ExcludedMatesView, YoungFlagView } from '../mates/mates.view.ts';
import { BeginningView, CarriedShareView } from './carrier.view.ts';
import { HoldingView } from './exchange.view.ts';
import { holdingChoices, newBloodOrders, type HoldingChoice, type NewBloodOrder } from './new-blood.dto.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;
const gain = { type: 'number', minimum: -1, maximum: 1, nullable: true } as const;
const count = { type: 'integer', minimum: 0 } as const;

/** A founder of which a holding has less than the line, or nothing. */
export class LackedFounderView extends BeginningView {
  @Shown({ description: 'Expected part of the genes of the living of the line that comes from it, 0 to 1.', ...share })
  inLine: number;

  @Shown({
    description: 'Expected part of the genes of the holding that comes from it; 0: nothing of it is there.',
    ...share,
  })
  inHolding: number;
}

/** A founder of which an animal carries more than a holding has. */
export class BroughtFounderView extends LackedFounderView {
  @Shown({ description: 'How much of the genome of the animal comes from it.', type: CarriedShareView })
  share: CarriedShareView;
}

/** Young of an animal with the partner of whom one adds most. */
export class BestYoungView {
  @Shown({ description: 'The partner, of the holding.', type: AnimalRef })
  partner: AnimalRef;

  @Shown({
    description:
      'F of the young, which is the kinship of the two (Malécot 1948), with its range over candidate parents.',
    type: YoungInbreedingView,
  })
  inbreeding: YoungInbreedingView;

  @Shown({ description: 'What one young adds to the gene diversity of the holding.', minimum: -1, maximum: 1 })
  gain: number;
}

/** An animal that may bring new blood. */
export class NewBloodAnimalView extends BreederView {
  @Shown({
    description:
      'Mean kinship with the animals of the holding, 0 to 1 (Ballou & Lacy 1995), itself included where it is one of them; null where nothing is held.',
    ...share,
    nullable: true,
  })
  meanKinship: number | null;

  @Shown({
    description:
      'What the animal itself adds to the gene diversity of the holding, 1 minus mean kinship; null where it is one of them or nothing is held.',
    ...gain,
  })
  gain: number | null;

  @Shown({
    description:
      'One young with the best partner of the holding; null where nobody there may be its mate: all of the other sex are related above the limit, or there is none.',
    type: BestYoungView,
    nullable: true,
  })
  young: BestYoungView | null;

  @Shown({
    description: 'Expected share of its genome from recorded founders of which the holding has nothing, 0 to 1.',
    ...share,
  })
  lacking: number;

  @Shown({
    description:
      'Expected share of its genome from parents nobody knows, 0 to 1: these count as unrelated for want of knowledge.',
    ...share,
  })
  unknown: number;

  @Shown({
    description: 'Founders that it carries more of than the holding, of those that the holding lacks, at most 6.',
    type: [BroughtFounderView],
  })
  brings: BroughtFounderView[];

  @Shown({ description: 'How many such founders there are in all.', ...count })
  bringsCount: number;

  @Shown({ description: 'What an audit holds against its label, the gravest first.', type: [YoungFlagView] })
  flags: YoungFlagView[];

  @Shown({ description: 'Whether it lives in a pairing now, as far as whoever asks may see that.' })
  housed: boolean;

  @Shown({
    description: 'What a keeper must know before: a cross, a disputed label, that it is housed, an open sex or age.',
    type: [String],
  })
  warnings: string[];
}

/** Which animals would bring new blood to a holding. */
export class NewBloodView {
  @Shown({ description: 'The line.', type: MateLineView })
  line: MateLineView;

  @Shown({ description: 'Who gets it.', enum: holdingChoices })
  of: HoldingChoice;

  @Shown({ description: 'The keeper; null for the whole line.', type: String, nullable: true })
  keeper: string | null;

  @Shown({ description: 'Id of the keeper; null as above.', type: String, format: 'uuid', nullable: true })
  keeperId: string | null;

  @Shown({ description: 'How the animals are ordered.', enum: newBloodOrders })
  sort: NewBloodOrder;

  @Shown({ description: 'What is held.', type: HoldingView })
  holding: HoldingView;

  @Shown({ description: 'What lives of the whole line.', type: HoldingView })
  whole: HoldingView;

  @Shown({
    description:
      'Founders of which the holding has less than the line, by what is missing, at most 24; of a whole line those that gave it less than an even part.',
    type: [LackedFounderView],
  })
  lacks: LackedFounderView[];

  @Shown({ description: 'How many such founders there are in all.', ...count })
  lacksCount: number;

  @Shown({ description: 'One page of the animals, in the order asked for.', type: [NewBloodAnimalView] })
  items: NewBloodAnimalView[];

  @Shown({ description: 'Send it as `after` to go on; null at the end.', type: String, nullable: true })
  next: string | null;

  @Shown({ description: 'How many animals there are in all.', ...count })
  total: number;

  @Shown({ description: 'Who was left out, by reason.', type: [ExcludedMatesView] })
  excluded: ExcludedMatesView[];

  @Shown({ description: 'What belongs beside the figures.', type: [String] })
  cautions: string[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
