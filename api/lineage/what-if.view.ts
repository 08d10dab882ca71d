import { Shown } from '../platform/fields.ts';
import { InbreedingFigureView } from './inbreeding.view.ts';
import {
  AnimalRef,
  AsOfView,
  CompletenessView,
  OriginView,
  ShareClutchView,
  StandingShareView,
} from './lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;
const change = { type: 'number', minimum: -1, maximum: 1 } as const;
const generations = { type: 'integer', minimum: 0 } as const;

/** Figures of one animal; each is what `GET /individuals/{id}/lineage` tells by the same name. */
export class WhatIfFiguresView {
  @Shown({ description: 'Inbreeding coefficient F with its range, 0 to 1 (Wright 1922).', type: InbreedingFigureView })
  inbreeding: InbreedingFigureView;

  @Shown({ description: 'Ancestral inbreeding by the recursion of Ballou (1997), 0 to 1.', ...share })
  ancestralInbreeding: number;

  @Shown({
    description:
      'Mean kinship with the living animals of its line, 0 to 1 (Ballou & Lacy 1995). Null without a line or without living animals in it.',
    ...share,
    nullable: true,
  })
  meanKinship: number | null;

  @Shown({ description: 'Pedigree depth, in generations.', ...generations })
  depth: number;

  @Shown({ description: 'Generations back in which every ancestor is known.', ...generations })
  fullDepth: number;

  @Shown({
    description: 'Complete generation equivalent, in generations (Maignel et al. 1996).',
    type: 'number',
    minimum: 0,
  })
  generationEquivalents: number;

  @Shown({ description: 'How complete the pedigree is.', type: CompletenessView })
  completeness: CompletenessView;

  @Shown({
    description: 'Generations since the wild (CITES Resolution Conf. 10.16); null where they cannot be known.',
    ...generations,
    nullable: true,
  })
  filialGeneration: number | null;

  @Shown({ description: 'Expected genome shares by standing, best first; they sum to 1.', type: [StandingShareView] })
  standings: StandingShareView[];
}

/** By how much figures differ: as assumed, less as recorded. */
export class WhatIfDifferenceView {
  @Shown({ description: 'Difference of the expected F, −1 to 1.', ...change })
  inbreeding: number;

  @Shown({ description: 'Difference of the least F, −1 to 1.', ...change })
  inbreedingLeast: number;

  @Shown({ description: 'Difference of the greatest F, −1 to 1.', ...change })
  inbreedingGreatest: number;

  @Shown({ description: 'Difference of ancestral inbreeding, −1 to 1.', ...change })
  ancestralInbreeding: number;

  @Shown({ description: 'Difference of mean kinship, −1 to 1; null where there is none.', ...change, nullable: true })
  meanKinship: number | null;

  @Shown({ description: 'Difference of the depth, in generations.', type: 'integer' })
  depth: number;

  @Shown({ description: 'Difference of the generations in which all are known.', type: 'integer' })
  fullDepth: number;

  @Shown({ description: 'Difference of the complete generation equivalent, in generations.', type: 'number' })
  generationEquivalents: number;

  @Shown({ description: 'Difference of the completeness index, −1 to 1.', ...change })
  completeness: number;
}

/** An origin with its share as recorded and as assumed. */
export class WhatIfShareView extends OriginView {
  @Shown({ description: 'Expected share of the genome as recorded, 0 to 1.', ...share })
  recorded: number;

  @Shown({ description: 'Expected share of the genome as assumed, 0 to 1.', ...share })
  assumed: number;

  @Shown({ description: 'The difference, −1 to 1.', ...change })
  difference: number;
}

/** A source in the ancestry, of which another base kinship can be assumed. */
export class AssumableSourceView {
  @Shown({ description: 'Id of the source; "private-source-1" and so on where it may not be seen.' })
  id: string;

  @Shown({ description: 'What it is called.' })
  title: string;

  @Shown({ description: 'Whether it is private: nothing can be assumed of it then.' })
  isPrivate: boolean;

  @Shown({ description: 'Base kinship as recorded, 0 to 1; null where it may not be seen.', ...share, nullable: true })
  baseKinship: number | null;
}

/** A candidate parent with its odds. */
export class RecordedCandidateView {
  @Shown({ description: 'The animal; null for one that nobody knows.', type: AnimalRef, nullable: true })
  animal: AnimalRef | null;

  @Shown({ description: 'Probability as recorded, above 0, at most 1.', ...share })
  probability: number;
}

/** A candidate pair with its odds. */
export class RecordedPairView {
  @Shown({ description: 'One of the two.', type: AnimalRef, nullable: true })
  a: AnimalRef | null;

  @Shown({ description: 'The other.', type: AnimalRef, nullable: true })
  b: AnimalRef | null;

  @Shown({ description: 'Probability as recorded, above 0, at most 1.', ...share })
  probability: number;
}

/** An uncertain clutch of the ancestry, of which other odds can be assumed. */
export class AssumableClutchView extends ShareClutchView {
  @Shown({
    description: 'Candidate sires; null where pairs are recorded.',
    type: [RecordedCandidateView],
    nullable: true,
  })
  sires: RecordedCandidateView[] | null;

  @Shown({
    description: 'Candidate dams; null where pairs are recorded.',
    type: [RecordedCandidateView],
    nullable: true,
  })
  dams: RecordedCandidateView[] | null;

  @Shown({
    description: 'Candidate pairs; null where sires and dams are recorded.',
    type: [RecordedPairView],
    nullable: true,
  })
  pairs: RecordedPairView[] | null;
}

/** Figures of one animal as recorded and under assumptions; nothing was recorded. */
export class WhatIfView {
  @Shown({ description: 'As recorded.', type: WhatIfFiguresView })
  recorded: WhatIfFiguresView;

  @Shown({ description: 'As assumed.', type: WhatIfFiguresView })
  assumed: WhatIfFiguresView;

  @Shown({ description: 'As assumed, less as recorded; differences below 1e-12 are 0.', type: WhatIfDifferenceView })
  difference: WhatIfDifferenceView;

  @Shown({
    description:
      'Where the genome is expected to come from, as recorded and as assumed, the largest share first; at most 50.',
    type: [WhatIfShareView],
  })
  shares: WhatIfShareView[];

  @Shown({
    description:
      'Sources in the recorded ancestry, of which another base kinship can be assumed, the largest share first; at most 50.',
    type: [AssumableSourceView],
  })
  sources: AssumableSourceView[];

  @Shown({
    description: 'Clutches of the recorded ancestry with uncertain parents, the youngest first; at most 20.',
    type: [AssumableClutchView],
  })
  clutches: AssumableClutchView[];

  @Shown({ description: 'How many further clutches there have uncertain parents.', type: 'integer', minimum: 0 })
  otherClutches: number;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
