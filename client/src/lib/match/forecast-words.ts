import type { ForecastCourse, ForecastFigure, PlanForecast } from '../api/types.ts';
import { grouped, percent, percentDigits, percentRange } from '../ui/figures.ts';
import { courseOrder, type CourseKind } from './forecast-layout.ts';
import { word } from '../words/word.ts';

/** What each course is called. */
export const courseNames: Readonly<Record<CourseKind, string>> = {
  plan: 'this plan',
  today: 'the pairings of today',
  random: 'mating at random',
};

/** What a generation is called. */
export function generationName(generation: number): string {
  return generation === 0 ? word('breeders') : `generation ${generation}`;
}

/** One row of the table: a course in one generation. */
export interface ForecastRow {
  key: string;
  generation: string;
  course: string;
  animals: string;
  diversity: FigureWords;
  inbreeding: FigureWords;
}

/** A figure in words. */
export interface FigureWords {
  mean: string;
  interval: string;
  standardError: string;
}

/** The rows of the table, generation by generation, the courses in the order of the drawing. */
export function forecastRows(courses: readonly ForecastCourse[]): ForecastRow[] {
  return courses
    .flatMap(({ course, generations }) => generations.map((found) => ({ course, found })))
    .sort(
      (one, other) =>
        one.found.generation - other.found.generation ||
        courseOrder.indexOf(one.course) - courseOrder.indexOf(other.course),
    )
    .map(({ course, found }) => ({
      key: `${course} ${found.generation}`,
      generation: generationName(found.generation),
      course: courseNames[course],
      animals: grouped(found.animals),
      diversity: figureWords(found.diversity),
      inbreeding: figureWords(found.inbreeding),
    }));
}

function figureWords({ mean, from, to, standardError }: ForecastFigure): FigureWords {
  return { mean: percent(mean), interval: percentRange(from, to), standardError: `± ${percentDigits(standardError)}` };
}

/** How the figures were found, in one or two sentences. */
export function howForecast({ replicates, loci, seed }: Pick<PlanForecast, 'replicates' | 'loci' | 'seed'>): string {
  const genes = loci === 1 ? 'one gene was' : `${loci} unlinked genes were`;
  return `The generations were bred ${grouped(replicates)} times, and each time ${genes} followed down from the founders. A mark is the mean; its bar holds 95 % of what came out. Seed ${seed}: asked again, it gives the same figures.`;
}

/** What the last generation comes to under each course, the most diversity first; empty without any. */
export function outcomeInWords(courses: readonly ForecastCourse[]): string {
  const ends = courses
    .flatMap(({ course, generations }) => {
      const last = generations.at(-1);
      return last ? [{ course, last }] : [];
    })
    .sort((one, other) => other.last.diversity.mean - one.last.diversity.mean);
  const [first] = ends;
  if (!first) return '';
  const parts = ends.map(
    ({ course, last }) =>
      `${percent(last.diversity.mean)} with a mean F of ${percent(last.inbreeding.mean)} under ${courseNames[course]}`,
  );
  return `Gene diversity in ${generationName(first.last.generation)}: ${parts.join('; ')}.`;
}
