import { Shown } from '../platform/fields.ts';
import { CommonAncestorView } from './common-ancestors.view.ts';
import { AnimalRef, AsOfView, ShareClutchView } from './lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** One animal on the way up from a parent. */
export class LoopStepView {
  @Shown({
    description: 'Id of the animal, as `animals` has it; null for the parent nobody knows that two clutch-mates share.',
    type: String,
    nullable: true,
  })
  animal: string | null;

  @Shown({ description: 'Id of the clutch that it is a parent of, as `clutches` has it: that of the animal below it.' })
  clutch: string;

  @Shown({ description: 'As what; `either` where sexes are not known.', enum: ['sire', 'dam', 'either'] })
  as: 'sire' | 'dam' | 'either';

  @Shown({ description: 'Probability that it is that parent, above 0, at most 1.', ...share })
  probability: number;

  @Shown({
    description:
      'Where the other side leads through the same clutch: the probability that the animals on both sides are its parents. It counts once, in place of the ' +
      'two; null elsewhere.',
    type: Number,
    nullable: true,
    minimum: 0,
    maximum: 1,
  })
  together: number | null;
}

/** One loop: two paths up from the two parents that share no animal before they meet. */
export class InbreedingLoopView {
  @Shown({ description: 'Place of its common ancestor in `ancestors`, from 0.', type: 'integer', minimum: 0 })
  commonAncestor: number;

  @Shown({
    description: 'What it adds to F: `probability` · ½^`steps` · `kinship` (Wright 1922), above 0, at most 1.',
    ...share,
  })
  part: number;

  @Shown({
    description:
      'Probability that all animals on it are the parents that they are taken for; 1 where nothing is uncertain.',
    ...share,
  })
  probability: number;

  @Shown({ description: 'Steps from one parent up and down to the other.', type: 'integer', minimum: 0 })
  steps: number;

  @Shown({
    description:
      'How akin two alleles drawn where it closes are: ½(1+F) of the common ancestor, ½ of one that nobody knows, or the base kinship that sources state.',
    ...share,
  })
  kinship: number;

  @Shown({
    description:
      'The path up from one parent (the sire where sexes are known), the common ancestor last. Founders that are kin by base kinship end a path each. Empty for a founder.',
    type: [LoopStepView],
  })
  first: LoopStepView[];

  @Shown({ description: 'The path up from the other parent.', type: [LoopStepView] })
  second: LoopStepView[];
}

/** One common ancestor, and what of it is listed. */
export class LoopAncestorView extends CommonAncestorView {
  @Shown({ description: 'How many of its loops are listed.', type: 'integer', minimum: 0 })
  listed: number;

  @Shown({
    description: 'How many are left out. Rounded above 2^53; null above 1.8e308.',
    type: Number,
    nullable: true,
    minimum: 0,
  })
  leftOut: number | null;

  @Shown({ description: 'The part of F of those left out together.', ...share })
  leftOutPart: number;
}

/** Why F of one animal is what it is, loop by loop. */
export class InbreedingLoopsView {
  @Shown({
    description:
      'Inbreeding coefficient F, the probability that two alleles at a locus are identical by descent (Wright 1922). It is the sum of all `part` of ' +
      '`loops`, all `leftOutPart` of `ancestors`, and `othersPart`.',
    ...share,
  })
  inbreeding: number;

  @Shown({
    description:
      'Whether F could be taken apart. False for a pedigree with more than half a million pairs of ancestors; the lists are empty then.',
  })
  isTakenApart: boolean;

  @Shown({
    description:
      'The loops, the largest part first. Fewer than asked for where there are no more, or where they name 20 000 animals in all.',
    type: [InbreedingLoopView],
  })
  loops: InbreedingLoopView[];

  @Shown({ description: 'Common ancestors, the largest part first.', type: [LoopAncestorView] })
  ancestors: LoopAncestorView[];

  @Shown({ description: 'How many further common ancestors are not named.', type: 'integer', minimum: 0 })
  others: number;

  @Shown({ description: 'Their part of F together.', ...share })
  othersPart: number;

  @Shown({ description: 'The animals on the loops, each once.', type: [AnimalRef] })
  animals: AnimalRef[];

  @Shown({ description: 'The clutches that the loops lead through, each once.', type: [ShareClutchView] })
  clutches: ShareClutchView[];

  @Shown({ description: 'Whether these figures follow the newest change; false while they are being recomputed.' })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
