import { ApiExtraModels, getSchemaPath } from '@nestjs/swagger';
import {
  clutchStages,
  expectedEvents,
  lossCauses,
  type ClutchStage,
  type ExpectedEvent,
  type LossCause,
} from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { AnimalStatusView, IndividualItemView } from '../individuals/individual.view.ts';
import { RecordView } from '../record.view.ts';
import { WarningView } from '../warnings/warning.view.ts';

/** One candidate parent. */
export class CandidateView {
  @Shown({ description: 'The animal; null stands for one that nobody knows.', type: AnimalStatusView, nullable: true })
  individual: AnimalStatusView | null;

  @Shown({
    description: 'Probability that it is the parent, over 0 to 1; those of a side sum to 1.',
    minimum: 0,
    maximum: 1,
  })
  probability: number;

  @Shown({ description: 'Why it is thought so.', type: String, nullable: true })
  reason: string | null;
}

/** Candidate sires and candidate dams, each side apart. */
export class ParentListsView {
  @Shown({ description: 'Says that the sides are listed apart.', enum: ['lists'] })
  mode: 'lists';

  @Shown({ description: 'Candidate sires, most probable first; empty where nothing is known.', type: [CandidateView] })
  sires: CandidateView[];

  @Shown({ description: 'Candidate dams, most probable first; empty where nothing is known.', type: [CandidateView] })
  dams: CandidateView[];
}

/** Two animals that may together be the parents. */
export class CandidatePairView {
  @Shown({ description: 'One of the two.', type: AnimalStatusView })
  a: AnimalStatusView;

  @Shown({ description: 'The other.', type: AnimalStatusView })
  b: AnimalStatusView;

  @Shown({
    description: 'Probability that they are the parents, over 0 to 1; those of all pairs sum to 1.',
    minimum: 0,
    maximum: 1,
  })
  probability: number;

  @Shown({ description: 'Why it is thought so.', type: String, nullable: true })
  reason: string | null;
}

/** Candidate pairs, where sexes are not known. */
export class ParentPairsView {
  @Shown({ description: 'Says that pairs are listed.', enum: ['pairs'] })
  mode: 'pairs';

  @Shown({ description: 'Candidate pairs, most probable first.', type: [CandidatePairView] })
  pairs: CandidatePairView[];
}

export class LossView {
  @Shown({ description: 'Cause.', enum: lossCauses })
  cause: LossCause;

  @Shown({ description: 'How many eggs or tadpoles.', type: 'integer', minimum: 1, maximum: 10_000 })
  count: number;
}

export class ClutchPairingView {
  @Shown({ description: 'Id of the pairing.', format: 'uuid' })
  id: string;

  @Shown({ description: 'Name of the pairing.' })
  name: string;
}

/** When the next thing of a clutch is expected, by the profile of its species. */
export class ExpectedWindowView {
  @Shown({ description: 'What is expected: that it hatches, or that its young leave the water.', enum: expectedEvents })
  event: ExpectedEvent;

  @Shown({ description: 'The first possible day that is counted from, YYYY-MM-DD.', format: 'date' })
  since: string;

  @Shown({
    description: "First day, YYYY-MM-DD: the first possible start and the least usual days of the species' profile.",
    format: 'date',
  })
  from: string;

  @Shown({
    description: "Last day, YYYY-MM-DD: the last possible start and the most usual days of the species' profile.",
    format: 'date',
  })
  to: string;

  @Shown({
    description: 'What the days are counted from: the laying, or the hatching where its day is known.',
    enum: ['laying', 'hatching'],
  })
  countedFrom: 'laying' | 'hatching';

  @Shown({ description: 'Id of the species whose profile says so.', format: 'uuid' })
  speciesId: string;

  @Shown({ description: 'Scientific name of that species.' })
  species: string;
}

const count = (description: string): PropertyDecorator =>
  Shown({ description, type: 'integer', nullable: true, minimum: 0, maximum: 10_000 });

/** A clutch as lists show it. */
@ApiExtraModels(ParentListsView, ParentPairsView)
export class ClutchItemView extends RecordView {
  @Shown({ description: 'What people call it, such as "clutch of 2021-04-12"; computed.' })
  title: string;

  @Shown({ description: "The keeper's own code, at most 40 characters.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Name of its keeper.' })
  keeper: string;

  @Shown({ description: 'Id of its keeper.', format: 'uuid' })
  keeperId: string;

  @Shown({
    description: 'The pairing that it was laid in; null also where that may not be seen.',
    type: ClutchPairingView,
    nullable: true,
  })
  pairing: ClutchPairingView | null;

  @Shown({ description: 'When it was laid, EDTF.', type: String, nullable: true })
  laid: string | null;

  @count('Eggs laid.')
  eggs: number | null;

  @count('Eggs that were fertile.')
  fertile: number | null;

  @count('Eggs that hatched.')
  hatched: number | null;

  @Shown({ description: 'When they hatched, EDTF.', type: String, nullable: true })
  hatchedOn: string | null;

  @count('Young that left the water.')
  outOfWater: number | null;

  @Shown({
    description:
      'How far it is: `egg` while nothing hatched, `water` while tadpoles are left, `out` once those left the water, `ended` where nothing came of it; computed from counts, losses and young.',
    enum: clutchStages,
  })
  stage: ClutchStage;

  @Shown({
    description:
      'What is expected of it next, and when; null once it is out of the water, and where dates or the profile of the species do not say.',
    type: ExpectedWindowView,
    nullable: true,
  })
  expected: ExpectedWindowView | null;

  @Shown({ description: 'Losses by cause.', type: [LossView] })
  losses: LossView[];

  @Shown({ description: 'Where it was laid.', type: String, nullable: true })
  site: string | null;

  @Shown({ description: 'Notes.', type: String, nullable: true })
  notes: string | null;

  @Shown({
    description: 'Who may be the parents.',
    oneOf: [{ $ref: getSchemaPath(ParentListsView) }, { $ref: getSchemaPath(ParentPairsView) }],
    discriminator: {
      propertyName: 'mode',
      mapping: { lists: getSchemaPath(ParentListsView), pairs: getSchemaPath(ParentPairsView) },
    },
  })
  parents: ParentListsView | ParentPairsView;

  @Shown({
    description:
      'Whether the parents were taken from the animals housed in its pairing when it was laid, all at equal odds.',
  })
  parentsFromPairing: boolean;
}

/** One clutch, whole. */
export class ClutchView extends ClutchItemView {
  @Shown({ description: 'Its young in the register that may be seen, by number.', type: [IndividualItemView] })
  young: IndividualItemView[];

  @Shown({ description: 'How many more young it has that may not be seen.', type: 'integer', minimum: 0 })
  privateYoung: number;

  @Shown({ description: 'What looks implausible; it never blocks.', type: [WarningView] })
  warnings: WarningView[];
}

/** The figures of one young, as they follow from the change that made it. */
export class YoungFiguresView {
  @Shown({ description: 'Id of the animal.', format: 'uuid' })
  id: string;

  @Shown({
    description: 'Inbreeding coefficient, expected over its candidate parents (Wright 1922).',
    minimum: 0,
    maximum: 1,
  })
  inbreeding: number;

  @Shown({ description: 'Least inbreeding coefficient that its candidate parents allow.', minimum: 0, maximum: 1 })
  inbreedingLeast: number;

  @Shown({ description: 'Greatest inbreeding coefficient that its candidate parents allow.', minimum: 0, maximum: 1 })
  inbreedingGreatest: number;

  @Shown({ description: 'Generations on the longest recorded path to a founder.', type: 'integer', minimum: 0 })
  depth: number;

  @Shown({ description: 'Whether these figures follow the newest change; false while they are recomputed.' })
  current: boolean;
}

/** A clutch that was just added. */
export class NewClutchView extends ClutchView {
  @Shown({
    description:
      'Figures of the young that were raised with it, in the order of `young`; left out where there are none.',
    type: [YoungFiguresView],
    required: false,
  })
  figures?: YoungFiguresView[];
}

/** Young that were raised from a clutch. */
export class OffspringView {
  @Shown({ description: 'The new animals, by number.', type: [IndividualItemView] })
  items: IndividualItemView[];

  @Shown({ description: 'Their figures, in the same order.', type: [YoungFiguresView], required: false })
  figures?: YoungFiguresView[];
}
