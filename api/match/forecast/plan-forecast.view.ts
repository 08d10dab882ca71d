import { AsOfView, OriginView } from '../../lineage/lineage.view.ts';
import { Shown } from '../../platform/fields.ts';
import { courseKinds, type CourseKind } from './forecast-courses.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** How one figure came out over the replicates. */
export class ForecastOutcomeView {
  @Shown({ description: 'Mean over the replicates, 0 to 1.', ...share })
  mean: number;

  @Shown({
    description:
      'Standard error of the mean: how far it may be off because no more replicates were drawn. It says nothing of how far one future may lie from the mean.',
    type: 'number',
    minimum: 0,
  })
  standardError: number;

  @Shown({
    description: 'Interval of the outcome: 95 % of the replicates lie from here to `to`, 2.5 % below. 0 to 1.',
    ...share,
  })
  from: number;

  @Shown({ description: 'End of the interval of the outcome; 2.5 % of the replicates lie above. 0 to 1.', ...share })
  to: number;

  @Shown({ description: 'The least of all replicates, 0 to 1.', ...share })
  least: number;

  @Shown({ description: 'The greatest of all replicates, 0 to 1.', ...share })
  greatest: number;
}

/** The same, with what can be expected without drawing. */
export class ForecastFigureView extends ForecastOutcomeView {
  @Shown({
    description:
      'What kinship expects (Malécot 1948), 0 to 1, computed without drawing; the mean lies about it by its standard error. Null where who mates with whom is drawn.',
    ...share,
    nullable: true,
  })
  expected: number | null;
}

/** One generation of a course. */
export class ForecastGenerationView {
  @Shown({ description: '0 the breeders, 1 their young, and so on.', type: 'integer', minimum: 0, maximum: 10 })
  generation: number;

  @Shown({ description: 'Animals of the generation that figures are taken of.', type: 'integer', minimum: 1 })
  animals: number;

  @Shown({
    description:
      'Gene diversity: 1 − mean kinship of the animals of the generation, each with itself included (Lacy 1989), 0 to 1, against unrelated founders.',
    type: ForecastFigureView,
  })
  diversity: ForecastFigureView;

  @Shown({
    description: 'Mean inbreeding coefficient F of the animals of the generation, 0 to 1 (Wright 1922).',
    type: ForecastFigureView,
  })
  inbreeding: ForecastFigureView;

  @Shown({
    description: 'Share of each of `origins` in the genes of the generation, in their order, 0 to 1.',
    type: [ForecastOutcomeView],
  })
  shares: ForecastOutcomeView[];

  @Shown({
    description: 'Share of all other origins together; the means of all shares sum to 1.',
    type: ForecastOutcomeView,
  })
  otherShare: ForecastOutcomeView;
}

/** One way in which breeding may go on. */
export class ForecastCourseView {
  @Shown({
    description:
      'plan: the given pairs; today: the groups of the register; random: the breeders of the plan at random.',
    enum: courseKinds,
  })
  course: CourseKind;

  @Shown({ description: 'By which rule later generations are mated, in plain words; to be shown beside the figures.' })
  rule: string;

  @Shown({ description: 'Sires that breed in the first generation.', type: 'integer', minimum: 1 })
  sires: number;

  @Shown({ description: 'Dams that breed in the first generation.', type: 'integer', minimum: 1 })
  dams: number;

  @Shown({ description: 'Clutches in each generation, each of one sire and one dam.', type: 'integer', minimum: 1 })
  clutches: number;

  @Shown({ description: 'The generations, the breeders first.', type: [ForecastGenerationView] })
  generations: ForecastGenerationView[];
}

/** A course that cannot be forecast. */
export class MissingCourseView {
  @Shown({ description: 'Which one.', enum: courseKinds })
  course: CourseKind;

  @Shown({ description: 'Why, and what would help.' })
  detail: string;
}

/** What the next generations would be like, by gene dropping. */
export class PlanForecastView {
  @Shown({ description: 'The courses asked for, as far as they can be forecast.', type: [ForecastCourseView] })
  courses: ForecastCourseView[];

  @Shown({ description: 'Courses asked for that cannot be forecast.', type: [MissingCourseView] })
  missing: MissingCourseView[];

  @Shown({
    description: 'Where the genes of the breeders begin: the 24 origins with the largest shares, those first.',
    type: [OriginView],
  })
  origins: OriginView[];

  @Shown({ description: 'How many other origins there are.', type: 'integer', minimum: 0 })
  otherOrigins: number;

  @Shown({
    description:
      'How often the generations were bred (gene dropping, MacCluer et al. 1986): each time the parents of uncertain clutches among the ancestors, the genes handed on and, but for the plan, the mates are drawn anew.',
    type: 'integer',
    minimum: 100,
  })
  replicates: number;

  @Shown({ description: 'Unlinked loci followed in each replicate.', type: 'integer', minimum: 1, maximum: 64 })
  loci: number;

  @Shown({ description: 'Young of each clutch that grow up.', type: 'integer', minimum: 2, maximum: 20 })
  youngKept: number;

  @Shown({ description: 'Seed of the drawing.', type: 'integer', minimum: 0 })
  seed: number;

  @Shown({
    description: 'What must be kept in mind with these figures, in plain sentences; to be shown beside them.',
    type: [String],
  })
  cautions: string[];

  @Shown({
    description:
      'Whether the figures follow every change of the register; false while figures of some breeders are still being recomputed.',
  })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
