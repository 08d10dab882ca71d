import type { EntityManager } from 'typeorm';
import { FounderStandings, labelOfLine } from '../../lineage/founder-standings.ts';
import { originView, wantOrigins } from '../../lineage/origin-views.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import type { Breeder, ExcludedAnimal } from '../breeders.ts';
import type { Forecast, ForecastFigure, ForecastQuestion } from './forecast-courses.ts';
import { courseRules, forecastCautions } from './forecast-words.ts';
import type { Outcome } from './outcomes.ts';
import type { KnownPlan } from './plan-forecast.service.ts';
import type {
  ForecastCourseView,
  ForecastFigureView,
  ForecastOutcomeView,
  MissingCourseView,
  PlanForecastView,
} from './plan-forecast.view.ts';

/** What was found of a plan. */
interface FoundForecast {
  readonly forecast: Forecast;
  readonly question: ForecastQuestion;
  readonly missing: MissingCourseView[];
  /** Breeders of the plan that may breed, and those that may not. */
  readonly breeders: readonly Breeder[];
  readonly excluded: readonly ExcludedAnimal[];
}

/** A forecast as an answer shows it, with the names of origins as far as whoever asks may see them. */
export async function forecastView(
  manager: EntityManager,
  { snapshot, line, pairs, standing }: KnownPlan,
  { forecast, question, missing, breeders, excluded }: FoundForecast,
): Promise<PlanForecastView> {
  const wanted = new WantedNames();
  wantOrigins(wanted, forecast.origins);
  const names = await RecordNames.read(manager, snapshot.graph, wanted);
  const founders = new FounderStandings(snapshot.graph, labelOfLine(snapshot.graph, line));
  const all = [
    ...pairs.flatMap(({ sire, dam }) => [sire, dam]),
    ...question.groups.flatMap((group) => [...group.sires, ...group.dams, ...group.unsexed]),
  ];
  const { replicates, loci, youngKept, seed } = question;
  const circumstances = { pairs, line, breeders, excluded, idle: standing.idle, youngKept };
  return {
    courses: forecast.courses.map(courseView),
    missing,
    origins: forecast.origins.map((origin) => originView(snapshot, founders, origin, names)),
    otherOrigins: forecast.otherOrigins,
    replicates,
    loci,
    youngKept,
    seed,
    cautions: forecastCautions(snapshot, circumstances, forecast),
    current: all.every((animal) => snapshot.isCurrent(animal)),
    asOf: snapshot.asOf,
  };
}

function courseView(course: Forecast['courses'][number]): ForecastCourseView {
  return {
    course: course.course,
    rule: courseRules[course.course],
    sires: course.sires,
    dams: course.dams,
    clutches: course.clutches,
    generations: course.generations.map(({ diversity, inbreeding, shares, otherShare, ...rest }) => ({
      ...rest,
      diversity: figureView(diversity),
      inbreeding: figureView(inbreeding),
      shares: shares.map(outcomeView),
      otherShare: outcomeView(otherShare),
    })),
  };
}

function figureView({ expected, ...outcome }: ForecastFigure): ForecastFigureView {
  return { ...outcomeView(outcome), expected };
}

function outcomeView({ mean, standardError, from, to, least, greatest }: Outcome): ForecastOutcomeView {
  return { mean, standardError, from, to, least, greatest };
}
