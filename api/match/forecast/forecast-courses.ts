import { computeInbreeding, type Inbreeding } from '../../lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../lineage/kernel/kinship.ts';
import type { Pedigree } from '../../lineage/kernel/pedigree.ts';
import { SeededRandom } from '../../lineage/kernel/seeded-random.ts';
import type { FounderShare } from '../../lineage/kernel/shares.ts';
import { BreedingCourse, type CourseOptions } from './breeding-course.ts';
import {
  schemeOfGroups,
  schemeOfPairs,
  type BreedingGroup,
  type FilledScheme,
  type ProposedPair,
} from './breeding-scheme.ts';
import { GroupMatings, PlannedMatings, RandomMatings, type Matings } from './drawn-generations.ts';
import { GeneCount } from './gene-count.ts';
import { GenerationKinship } from './generation-kinship.ts';
import { Outcomes, type Outcome } from './outcomes.ts';
import { planGenerations } from './planned-generations.ts';
import { PresentGenes } from './present-genes.ts';
import { toldOrigins } from './told-origins.ts';

/** The ways in which breeding may go on. */
export const courseKinds = ['plan', 'today', 'random'] as const;
export type CourseKind = (typeof courseKinds)[number];

/** What is asked, by numbers of a pedigree. */
export interface ForecastQuestion extends CourseOptions {
  /** For `plan` and `random`; at least one for either. */
  readonly pairs: readonly ProposedPair[];
  /** For `today`; at least one. */
  readonly groups: readonly BreedingGroup[];
  readonly courses: readonly CourseKind[];
  readonly replicates: number;
  readonly seed: number;
  /** How many origins of genes are told one by one; the others are told together. */
  readonly originsMost: number;
}

/** A figure over the replicates, and what it is expected to be where that can be computed. */
export interface ForecastFigure extends Outcome {
  /** The expectation by kinship, without drawing; null where the matings are drawn. */
  readonly expected: number | null;
}

/** One generation of a course. */
export interface GenerationForecast {
  /** 0 the breeders. */
  readonly generation: number;
  readonly animals: number;
  readonly diversity: ForecastFigure;
  readonly inbreeding: ForecastFigure;
  /** Shares of the origins that are told one by one, in their order. */
  readonly shares: readonly Outcome[];
  /** Share of all others. */
  readonly otherShare: Outcome;
}

/** How one course came out. */
export interface CourseForecast {
  readonly course: CourseKind;
  readonly sires: number;
  readonly dams: number;
  readonly clutches: number;
  readonly generations: readonly GenerationForecast[];
}

/** How the courses came out. */
export interface Forecast {
  readonly courses: readonly CourseForecast[];
  /** The origins told one by one, those with the largest share in the breeders of all courses first, with that expected share. */
  readonly origins: readonly FounderShare[];
  readonly otherOrigins: number;
}

/** Tells courses that have a stream of random numbers each, so that leaving one out changes nothing in the others. */
const STREAMS: Readonly<Record<CourseKind, number>> = { plan: 0x5bd1e995, today: 0x27d4eb2f, random: 0x165667b1 };

/**
 * Predicts gene diversity, inbreeding and founder shares of the next generations by gene dropping (MacCluer et al. 1986). Every replicate
 * draws the founders' genes and, of uncertain parents, one pair a clutch; drops the genes through the present ancestry to the breeders, once
 * for all courses; and then through the matings of each course.
 *
 * @param pedigree the ancestry of all breeders: founders first, then clutch by clutch, parents first
 * @param tell told some fifty times how many replicates are done
 * @throws RangeError where sources are kin to each other
 */
export function forecastCourses(
  pedigree: Pedigree,
  question: ForecastQuestion,
  tell: (done: number, total: number) => void = () => undefined,
): Forecast {
  const { replicates, seed, loci } = question;
  const present = new PresentGenes(pedigree, loci);
  const inbreeding = computeInbreeding(pedigree);
  const courses = question.courses.map((course) => prepare(pedigree, inbreeding, question, course));
  const breeders = Int32Array.from(courses.flatMap((course) => [...course.breeders]));
  const told = toldOrigins(pedigree, inbreeding, present, breeders, question.originsMost);
  const count = new GeneCount(told.shareOf, told.origins.length + 1, loci);
  const figures = told.origins.length + 3;
  const random = new SeededRandom(seed);
  const runs = courses.map((one) => ({
    ...one,
    random: new SeededRandom((seed ^ STREAMS[one.course]) >>> 0),
    outcomes: new Outcomes(replicates, figures * (question.generations + 1)),
  }));
  const tellEvery = Math.max(1, Math.floor(replicates / 50));
  for (let replicate = 0; replicate < replicates; replicate++) {
    if (replicate % tellEvery === 0) tell(replicate, replicates);
    present.draw(random);
    for (const { breeding, random: own, outcomes } of runs)
      breeding.run(present.table, own, count, (generation, { diversity, inbreeding: doubled, shares }) => {
        const first = generation * figures;
        outcomes.note(replicate, first, diversity);
        outcomes.note(replicate, first + 1, doubled);
        shares.forEach((share, origin) => outcomes.note(replicate, first + 2 + origin, share));
      });
  }
  tell(replicates, replicates);
  return {
    courses: runs.map((run) => outcomeOf(run, run.outcomes, figures)),
    origins: told.origins,
    otherOrigins: told.others,
  };
}

/** A course that is ready to run. */
interface PreparedCourse {
  readonly course: CourseKind;
  readonly breeders: Int32Array;
  readonly filled: FilledScheme;
  readonly breeding: BreedingCourse;
  /** Kinships of the generations as far as they are known before anything is drawn, the breeders' first. */
  readonly kinships: readonly GenerationKinship[];
}

function prepare(
  pedigree: Pedigree,
  inbreeding: Inbreeding,
  question: ForecastQuestion,
  course: CourseKind,
): PreparedCourse {
  const filled = course === 'today' ? schemeOfGroups(question.groups) : schemeOfPairs(question.pairs);
  const breeders = Int32Array.from([...filled.sires, ...filled.dams]);
  const kinship = kinshipOf(pedigree, inbreeding, breeders);
  const planned = course === 'plan' ? planGenerations(filled, kinship, question.generations, question.youngKept) : [];
  const matings: Record<CourseKind, () => Matings> = {
    plan: () => new PlannedMatings(planned),
    today: () => new GroupMatings(question.groups, question.youngKept),
    random: () => new RandomMatings(filled.scheme, question.youngKept),
  };
  return {
    course,
    breeders,
    filled,
    breeding: new BreedingCourse(breeders, matings[course](), question),
    kinships: [kinship, ...planned.map((generation) => generation.kinship)],
  };
}

/** Expected kinships of the breeders on a grid of 2⁻⁴⁴, so that no rounding decides between two choices. */
function kinshipOf(pedigree: Pedigree, inbreeding: Inbreeding, breeders: Int32Array): GenerationKinship {
  const matrix = kinshipMatrix(pedigree, inbreeding, breeders);
  return GenerationKinship.ofBreeders(
    matrix.map((kinship) => Math.round(kinship * 2 ** 44) / 2 ** 44),
    breeders.length,
  );
}

function outcomeOf(
  { course, filled, breeders, breeding, kinships }: PreparedCourse,
  outcomes: Outcomes,
  figures: number,
): CourseForecast {
  const generations: GenerationForecast[] = [];
  const count = breeding.generationCount;
  for (let generation = 0; generation <= count; generation++) {
    const first = generation * figures;
    const kinship = kinships[generation];
    generations.push({
      generation,
      animals: generation === 0 ? breeders.length : breeding.animals,
      diversity: { ...outcomes.of(first), expected: kinship ? 1 - kinship.mean : null },
      inbreeding: { ...outcomes.of(first + 1), expected: kinship ? kinship.inbreeding : null },
      shares: Array.from({ length: figures - 3 }, (_, origin) => outcomes.of(first + 2 + origin)),
      otherShare: outcomes.of(first + figures - 1),
    });
  }
  const { sires, dams, damOf } = filled.scheme;
  return { course, sires, dams, clutches: damOf.length, generations };
}
