import { Shown } from '../platform/fields.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** The mean kinships of a line, and where one animal stands among them. */
export class LineKinshipView {
  @Shown({
    description: 'Mean of all kinships among the living animals of the line, 0 to 1 (Ballou & Lacy 1995).',
    ...share,
  })
  mean: number;

  @Shown({ description: 'How many living animals the line has.', type: 'integer', minimum: 1 })
  living: number;

  @Shown({
    description:
      'Place of the animal among them, the one with the rarest genes (least mean kinship) first; equals share a place. Null for an animal that does not live.',
    type: 'integer',
    minimum: 1,
    nullable: true,
  })
  rank: number | null;
}

/** How far the genes of an animal have met themselves before. */
export class AncestralInbreedingView {
  @Shown({
    description:
      'Ancestral inbreeding, 0 to 1, without unit: probability that a gene has met a copy of itself before in an inbred ancestor, by the recursion of Ballou (1997), expected over uncertain parents. The recursion takes the history of a gene and the F of its bearer as independent, so the exact value differs. 0 where no ancestor is inbred as far as recorded.',
    ...share,
  })
  recursion: number;

  @Shown({
    description:
      'The same exactly, 0 to 1, by counting all ways in which genes can have come down. Null where there are more than 4096 ways.',
    ...share,
    nullable: true,
  })
  exact: number | null;

  @Shown({
    description:
      'Old inbreeding, 0 to F: the part of F in which a gene has met itself before (after Kalinowski, Hedrick & Miller 2000), counted. Null as `exact`.',
    ...share,
    nullable: true,
  })
  oldInbreeding: number | null;

  @Shown({
    description:
      'New inbreeding, 0 to F: the rest of F, genes that meet themselves for the first time. Null as `exact`.',
    ...share,
    nullable: true,
  })
  newInbreeding: number | null;
}
