import type { ForecastCourse, ForecastFigure, PlanForecast } from '../api/types.ts';
import { grouped, percent, percentDigits, percentRange } from '../ui/figures.ts';
import { courseOrder, type CourseKind } from './forecast-layout.ts';
import type { CourseShares, ForecastShares } from './forecast-shares.ts';
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

/** All courses in one generation, in the order of the drawing, as the keyboard's stop says it. */
export function generationInWords(courses: readonly ForecastCourse[], generation: number): string {
  const ordered = courseOrder.flatMap((kind) => courses.filter(({ course }) => course === kind));
  const parts = ordered.flatMap(({ course, generations }) => {
    const found = generations.find((one) => one.generation === generation);
    if (!found) return [];
    return `${courseNames[course]}: gene diversity ${spanInWords(found.diversity)}; F ${spanInWords(found.inbreeding)}`;
  });
  return `${generationName(generation)}. ${parts.join('. ')}.`;
}

function spanInWords({ mean, from, to }: ForecastFigure): string {
  return percentRange(from, to) === percent(mean) ? percent(mean) : `${percent(mean)}, ${percentRange(from, to)}`;
}

/** What one course's genes come from in one generation, the largest shares first. */
export function sharesOfGeneration(
  { origins }: ForecastShares,
  { course, rows }: CourseShares,
  generation: number,
): string {
  const row = rows.find(({ year }) => year === generation);
  const parts = origins
    .map(({ name }, at) => ({ name, share: row?.shares[at] ?? 0 }))
    .filter(({ share }) => share > 0)
    .sort((one, other) => other.share - one.share)
    .map(({ name, share }) => `${percent(share)} ${name}`);
  const others = row && row.othersShare > 0 ? [`${percent(row.othersShare)} further origins`] : [];
  return `${courseNames[course]}, ${generationName(generation)}: ${[...parts, ...others].join('; ')}.`;
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
