import { Shown } from '../platform/fields.ts';
import { AnimalRef, AsOfView, ShareClutchView, ShareView, StandingShareView } from './lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;
const maybeShare = { ...share, nullable: true } as const;
const maybeCount = { type: 'number', minimum: 0, nullable: true } as const;
const count = { type: 'integer', minimum: 0 } as const;

/** Inbreeding of some animals; those of which nothing is known are left out. */
export class SetInbreedingView {
  @Shown({
    description: 'How many animals it rests on: those with a recorded source or at least one recorded parent.',
    ...count,
  })
  animals: number;

  @Shown({
    description:
      'Mean of their expected inbreeding coefficients F, 0 to 1, without unit (Wright 1922). Null where nothing is known of any of them.',
    ...maybeShare,
  })
  mean: number | null;

  @Shown({ description: 'The least expected F among them, 0 to 1; null where there is none.', ...maybeShare })
  least: number | null;

  @Shown({ description: 'The greatest expected F among them, 0 to 1; null where there is none.', ...maybeShare })
  greatest: number | null;
}

/** Where the gene pool of a set begins. */
export class SetContributionsView {
  @Shown({
    description:
      'The origins with the largest expected parts in the gene pool, the largest first, at most 24; founders of one source together (Lacy 1989).',
    type: [ShareView],
  })
  items: ShareView[];

  @Shown({
    description:
      'Expected parts of the gene pool by how well the label of their founders stands, best first, further origins included; they sum to 1. Empty for an empty set.',
    type: [StandingShareView],
  })
  standings: StandingShareView[];

  @Shown({ description: 'How many further origins there are.', ...count })
  others: number;

  @Shown({ description: 'What those further origins give together, 0 to 1.', ...share })
  othersShare: number;
}

/** An ancestor with what it adds to the explanation of a gene pool: ancestor or unknownParentOf is there. */
export class AncestorContributionView {
  @Shown({ description: 'The ancestor.', type: AnimalRef, required: false })
  ancestor?: AnimalRef;

  @Shown({
    description: 'The clutch of which an unknown parent is the ancestor.',
    type: ShareClutchView,
    required: false,
  })
  unknownParentOf?: ShareClutchView;

  @Shown({
    description: 'Marginal contribution, above 0, at most 1: what the ancestors before it do not explain already.',
    ...share,
  })
  share: number;
}

/** The ancestors that explain the genes of a set. */
export class SetAncestorsView {
  @Shown({
    description:
      'Effective number of ancestors, 1/Σ of the squared marginal contributions (Boichard, Maignel & Verrier 1997); a count of animals. Below the effective number of founders after a bottleneck. Null for an empty set.',
    ...maybeCount,
  })
  effective: number | null;

  @Shown({
    description: 'The ancestors that explain most, in the order in which they are picked, at most 24.',
    type: [AncestorContributionView],
  })
  items: AncestorContributionView[];

  @Shown({ description: 'How many ancestors were picked in all.', ...count })
  picked: number;

  @Shown({
    description:
      'Part of the gene pool that the picked ancestors leave unexplained, 0 to 1: above 0 only where the set is so large that picking was ended early; the effective number is then too large by little.',
    ...share,
  })
  unexplained: number;
}

/** Increase of inbreeding and the effective size that it implies. */
export class SetEffectiveSizeView {
  @Shown({
    description: 'How many animals it rests on: those with more than one complete generation equivalent.',
    ...count,
  })
  animals: number;

  @Shown({
    description:
      'Mean individual increase of inbreeding per generation, ΔF = 1 − (1 − F)^(1/(t − 1)), 0 to 1 (Gutiérrez, Cervantes & Goyache 2009). Null without such animals.',
    ...maybeShare,
  })
  increase: number | null;

  @Shown({
    description:
      'Realised effective size, 1/(2 ΔF), in animals (Gutiérrez, Cervantes & Goyache 2009). Null where no increase is recorded: it is then undefined, not infinite.',
    ...maybeCount,
  })
  effectiveSize: number | null;

  @Shown({
    description: 'Standard error of the effective size, in animals; null where it rests on fewer than two animals.',
    ...maybeCount,
  })
  standardError: number | null;

  @Shown({
    description: 'Why there is no effective size, in a plain sentence; null where there is one.',
    type: String,
    nullable: true,
  })
  note: string | null;
}

/** How far the pedigrees of a set reach. */
export class SetDepthView {
  @Shown({ description: 'Mean pedigree depth, in generations; null for an empty set.', ...maybeCount })
  mean: number | null;

  @Shown({ description: 'Greatest pedigree depth, in generations; null for an empty set.', ...maybeCount })
  greatest: number | null;

  @Shown({
    description: 'Mean number of generations back in which every ancestor is known; null for an empty set.',
    ...maybeCount,
  })
  full: number | null;

  @Shown({
    description:
      'Mean complete generation equivalent, in generations (Maignel, Boichard & Verrier 1996); null for an empty set.',
    ...maybeCount,
  })
  generationEquivalents: number | null;
}

/** The young of one year among a set. */
export class HatchYearView {
  @Shown({ description: 'Year of hatching.', type: 'integer' })
  year: number;

  @Shown({ description: 'How many animals of the set hatched in it.', type: 'integer', minimum: 1 })
  animals: number;

  @Shown({ description: 'Their inbreeding.', type: SetInbreedingView })
  inbreeding: SetInbreedingView;

  @Shown({
    description: 'Gene diversity of the young of the year, 1 − their mean kinship, 0 to 1 (Lacy 1989).',
    ...share,
  })
  geneDiversity: number;

  @Shown({
    description:
      'Expected parts of their gene pool from each origin in `contributions.items`, in the same order, each 0 to 1; what is missing from 1 comes from further origins.',
    type: 'array',
    items: share,
  })
  shares: number[];
}

/** What is measured of a set of animals. */
export class LineageSetView {
  @Shown({ description: 'How many animals the set has.', ...count })
  animals: number;

  @Shown({
    description: 'How many of them nothing is known of: no source and no parent is recorded.',
    ...count,
  })
  nothingKnown: number;

  @Shown({ description: 'Their inbreeding coefficients.', type: SetInbreedingView })
  inbreeding: SetInbreedingView;

  @Shown({
    description:
      'Mean of all kinships within the set, each animal with itself included, 0 to 1, expected over uncertain parents (Ballou & Lacy 1995). Null for an empty set.',
    ...maybeShare,
  })
  meanKinship: number | null;

  @Shown({
    description:
      'Gene diversity, 1 − mean kinship, 0 to 1: what is left of the diversity of unrelated founders (Lacy 1989). Null for an empty set.',
    ...maybeShare,
  })
  geneDiversity: number | null;

  @Shown({
    description:
      'Founder genome equivalents, 1/(2 · mean kinship): so many unrelated founders would hold as much diversity; a count of animals (Lacy 1989; Ballou & Lacy 1995). Null for an empty set.',
    ...maybeCount,
  })
  founderGenomeEquivalents: number | null;

  @Shown({
    description:
      'Effective number of founders, 1/Σp² over every single founder and unknown parent, p its part of the gene pool; a count of animals (Lacy 1989). Null for an empty set.',
    ...maybeCount,
  })
  effectiveFounders: number | null;

  @Shown({ description: 'The ancestors that explain the gene pool.', type: SetAncestorsView })
  effectiveAncestors: SetAncestorsView;

  @Shown({ description: 'Where the gene pool begins.', type: SetContributionsView })
  contributions: SetContributionsView;

  @Shown({ description: 'Increase of inbreeding per generation, and effective size.', type: SetEffectiveSizeView })
  effectiveSize: SetEffectiveSizeView;

  @Shown({ description: 'How far the pedigrees reach.', type: SetDepthView })
  depth: SetDepthView;

  @Shown({
    description:
      'The young of each year of hatching, in the order of years. Animals not dated to the year are in none.',
    type: [HatchYearView],
  })
  years: HatchYearView[];

  @Shown({ description: 'How many animals are not dated to a year of hatching.', ...count })
  undated: number;

  @Shown({
    description: 'What must be kept in mind with these figures, in plain sentences; to be shown beside them.',
    type: [String],
  })
  cautions: string[];

  @Shown({
    description:
      'Whether the figures follow every change of the register; false while figures of some of the animals are still being recomputed.',
  })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
