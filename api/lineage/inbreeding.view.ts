import { Shown } from '../platform/fields.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** An inbreeding coefficient with its range. */
export class InbreedingRangeView {
  @Shown({
    description: 'Expected inbreeding coefficient F over the candidate pairs, 0 to 1, without unit (Wright 1922).',
    ...share,
  })
  expected: number;

  @Shown({ description: 'F if the least related candidate pair are the parents, 0 to 1.', ...share })
  least: number;

  @Shown({ description: 'F if the most related candidate pair are the parents, 0 to 1.', ...share })
  greatest: number;
}

/** An inbreeding coefficient of a recorded animal. */
export class InbreedingFigureView extends InbreedingRangeView {
  @Shown({
    description:
      'True where F rests on nothing: neither a source nor any known parent is recorded. Show "nothing known" then, never 0.',
  })
  nothingKnown: boolean;

  @Shown({
    description:
      'Probability that both parents are recorded animals, 0 to 1. The rest counts as F = 0 for want of knowledge; 0 for an animal without a clutch.',
    ...share,
  })
  bothParentsKnown: number;
}

/** The inbreeding coefficient that young of two animals would have, and what it rests on. */
export class YoungInbreedingView extends InbreedingRangeView {
  @Shown({
    description:
      'True where a 0 rests on nothing: of one of the two neither a source nor any known parent is recorded, and nobody above both. Show "nothing known" then, never 0.',
  })
  nothingKnown: boolean;

  @Shown({
    description:
      'Generations on the longest recorded path from the young to a founder: 1 where both parents are founders. Null in plans that were kept without it.',
    type: 'integer',
    minimum: 1,
    nullable: true,
  })
  depth: number | null;

  @Shown({
    description:
      'Generations back in which every ancestor of the young is certainly a recorded one, its parents among them. Null in plans that were kept without it.',
    type: 'integer',
    minimum: 1,
    nullable: true,
  })
  fullDepth: number | null;
}
