import { Shown } from '../platform/fields.ts';
import { InbreedingFigureView } from './inbreeding.view.ts';
import { AsOfView } from './lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** How a spread was found. */
export const spreadMethods = ['certain', 'enumerated', 'sampled'] as const;

/** One coefficient that the animal can have. */
export class SpreadValueView {
  @Shown({ description: 'Inbreeding coefficient F, 0 to 1.', ...share })
  value: number;

  @Shown({ description: 'Its probability, or its part of the drawn assignments, above 0, at most 1.', ...share })
  share: number;
}

/** Coefficients taken together. */
export class SpreadBinView {
  @Shown({ description: 'The least F of the bin, 0 to 1.', ...share })
  from: number;

  @Shown({ description: 'F at which the next bin begins, 0 to 1; the last bin has it in it.', ...share })
  to: number;

  @Shown({ description: 'Probability of the bin, or its part of the drawn assignments, 0 to 1.', ...share })
  share: number;
}

/** A quantile. */
export class SpreadQuantileView {
  @Shown({ description: 'Probability that F is not greater, 0 to 1.', ...share })
  probability: number;

  @Shown({ description: 'The least F for which that holds, 0 to 1.', ...share })
  value: number;
}

/** Which inbreeding coefficients an animal can have, given who may be the parents of its ancestors. */
export class InbreedingSpreadView {
  @Shown({
    description:
      'Expected F, and its least and greatest over the candidate pairs of the own clutch, each averaged over the ancestry.',
    type: InbreedingFigureView,
  })
  inbreeding: InbreedingFigureView;

  @Shown({
    description:
      'certain: no parent among the ancestors is uncertain, F is one value; enumerated: every assignment was gone through, the distribution is exact; sampled: assignments were drawn.',
    enum: spreadMethods,
  })
  method: (typeof spreadMethods)[number];

  @Shown({
    description: 'Clutches among the ancestors, its own included, with more than one candidate pair.',
    type: 'integer',
    minimum: 0,
  })
  uncertainClutches: number;

  @Shown({
    description:
      'In how many ways one pair can be chosen for each of these clutches; beyond 9 007 199 254 740 991 the nearest number that a computer holds. Null beyond 10³⁰⁸.',
    type: 'number',
    minimum: 1,
    nullable: true,
  })
  assignments: number | null;

  @Shown({ description: 'How many assignments were gone through or drawn.', type: 'integer', minimum: 1 })
  samples: number;

  @Shown({
    description: 'Seed of the drawing; null where nothing was drawn.',
    type: 'integer',
    minimum: 0,
    nullable: true,
  })
  seed: number | null;

  @Shown({
    description:
      'Mean F over the assignments, 0 to 1. Within an assignment F is exact (Wright 1922); drawing what a pedigree leaves open is after MacCluer et al. 1986. Compare it with `inbreeding.expected`.',
    ...share,
  })
  mean: number;

  @Shown({
    description:
      'Standard error of the mean, by which it may miss the expected F by chance; 0 where nothing was drawn.',
    type: 'number',
    minimum: 0,
  })
  standardError: number;

  @Shown({ description: 'Standard deviation of F over the assignments.', type: 'number', minimum: 0 })
  standardDeviation: number;

  @Shown({ description: 'The least F among the assignments, 0 to 1; rarer ones may be missed by drawing.', ...share })
  least: number;

  @Shown({
    description: 'The greatest F among the assignments, 0 to 1; rarer ones may be missed by drawing.',
    ...share,
  })
  greatest: number;

  @Shown({ description: 'F at the probabilities 0.05, 0.25, 0.5, 0.75 and 0.95.', type: [SpreadQuantileView] })
  quantiles: SpreadQuantileView[];

  @Shown({
    description: 'The different values of F, the least first, where they are 32 at most; null where `bins` are given.',
    type: [SpreadValueView],
    nullable: true,
  })
  values: SpreadValueView[] | null;

  @Shown({
    description:
      '40 bins side by side from the least to the greatest F, of equal width in the square root of F; null where `values` are given.',
    type: [SpreadBinView],
    nullable: true,
  })
  bins: SpreadBinView[] | null;

  @Shown({ description: 'Whether the figures follow every change of the register.' })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
