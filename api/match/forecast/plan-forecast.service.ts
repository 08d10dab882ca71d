import { Inject, Injectable } from '@nestjs/common';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import type { Acting } from '../../platform/acting.ts';
import type { Progress } from '../../platform/long-task.ts';
import { LongWork } from '../../platform/long-work.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { ProgressStream } from '../../platform/progress-stream.ts';
import { findLine } from '../../register/lines/line.queries.ts';
import { present } from '../../register/present.ts';
import { findBreeders } from '../breeders.ts';
import { planForecastTask } from '../tasks/plan-forecast.task.ts';
import { dams, type ProposedPair } from './breeding-scheme.ts';
import type { CourseKind, Forecast, ForecastQuestion } from './forecast-courses.ts';
import { forecastView } from './forecast-view.ts';
import type { PlanForecastRequest } from './plan-forecast.dto.ts';
import type { MissingCourseView, PlanForecastView } from './plan-forecast.view.ts';
import { resolvePairs } from './planned-pairs.ts';
import type { ForecastLimits } from './register-forecast.ts';
import { readHousedAnimals } from './standing-groups.queries.ts';
import { standingGroups, type StandingGroups } from './standing-groups.ts';
import { say } from '../../platform/say.ts';

/** Most that one forecast may take: what a request for JSON has time for, and an ancestry of some hundred megabytes of genes. */
const LIMITS: ForecastLimits = { clutches: 50_000, cost: 5e10 };
const REPLICATES_LEAST = 100;
/** Origins of genes that an answer names. */
const ORIGINS_MOST = 24;
/** Dams of groups beyond which the course of today is not forecast. */
const GROUP_DAMS_MOST = 1000;

/** How a request wants to be answered. */
interface Asked {
  readonly keeper: Acting;
  readonly request: Request;
  readonly response: Response;
}

/** A plan as the register knows it. */
export interface KnownPlan {
  readonly snapshot: LineageSnapshot;
  /** Number of the line. */
  readonly line: number;
  readonly pairs: readonly ProposedPair[];
  readonly standing: StandingGroups;
}

/** Answers what would come of a plan. */
@Injectable()
export class PlanForecastService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
    @Inject(ProgressStream) private readonly stream: ProgressStream,
  ) {}

  /**
   * Answers with a forecast of the next generations: as JSON, or as a stream that tells its progress.
   *
   * @throws NotFoundProblem if there is no such line; InvalidProblem for pairs that cannot be taken, or if so many replicates are too much;
   *   BusyProblem if too many computations wait
   */
  async answer({ keeper, request, response }: Asked, id: string, body: PlanForecastRequest): Promise<void> {
    const { manager } = this.dataSource;
    const line = present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    refuseWithoutPairs(body);
    const housed = body.courses.includes('today') ? await readHousedAnimals(manager, line.id) : [];
    // read afterwards, so that it knows every animal found
    const snapshot = await this.snapshots.current();
    const number = snapshot.graph.lines.findIndex((node) => node.id === line.id);
    const pairs = await resolvePairs(manager, snapshot, body.pairs, { line: number, crossLines: body.crossLines });
    const plan = { snapshot, line: number, pairs, standing: standingGroups(snapshot, housed) };
    await this.stream.answer(request, response, keeper.id, (signal, tell) =>
      this.#compute(plan, body, { signal, ...(tell ? { tell } : {}) }),
    );
  }

  async #compute(
    plan: KnownPlan,
    body: PlanForecastRequest,
    run: { signal: AbortSignal; tell?: (progress: Progress) => void },
  ): Promise<PlanForecastView> {
    const { snapshot, pairs, standing } = plan;
    const { manager } = this.dataSource;
    const missing = body.courses.includes('today') ? missingToday(standing) : [];
    const courses = body.courses.filter((course) => !missing.some((one) => one.course === course));
    const question = {
      pairs,
      groups: courses.includes('today') ? standing.groups : [],
      courses,
      generations: body.generations,
      youngKept: body.youngKept,
      replicates: body.replicates,
      loci: body.loci,
      seed: body.seed,
      originsMost: ORIGINS_MOST,
    };
    const forecast = courses.length === 0 ? NOTHING : await this.#forecast(snapshot, question, run);
    const breeders = [...new Set(pairs.flatMap(({ sire, dam }) => [sire, dam]))];
    const found = await findBreeders(manager, snapshot, breeders, { unsexed: true, disputed: true });
    return forecastView(manager, plan, { forecast, question, missing, ...found });
  }

  async #forecast(
    { graph }: LineageSnapshot,
    question: ForecastQuestion,
    run: { signal: AbortSignal; tell?: (progress: Progress) => void },
  ): Promise<Forecast> {
    const { pedigree, serials } = graph;
    const outcome = await this.work.run(planForecastTask, { pedigree, serials, question, limits: LIMITS }, run);
    switch (outcome.kind) {
      case 'forecast':
        return outcome.forecast;
      case 'too many ancestors':
        throw tooMuch(
          '/pairs',
          say`These breeders descend from more than ${LIMITS.clutches} clutches, which is more than genes can be dropped through. Ask for fewer pairs.`,
        );
      case 'too many replicates':
        throw tooMuch(
          outcome.most < REPLICATES_LEAST ? '/pairs' : '/replicates',
          outcome.most < REPLICATES_LEAST
            ? say`So many breeders and generations are too much for one answer. Ask for fewer pairs, generations, young or loci.`
            : say`So many replicates are too much for this plan. Ask for ${outcome.most} at most, or for fewer generations, young or loci.`,
        );
    }
  }
}

const NOTHING: Forecast = { courses: [], origins: [], otherOrigins: 0 };

function refuseWithoutPairs({ pairs, courses }: PlanForecastRequest): void {
  const needy: CourseKind | undefined = courses.find((course) => course !== 'today');
  if (pairs.length > 0 || needy === undefined) return;
  throw tooMuch(
    '/pairs',
    say`Name at least one pair: the course "${needy}" is that of a plan. Without one only "today" can be asked for.`,
  );
}

function tooMuch(pointer: string, detail: string): InvalidProblem {
  return new InvalidProblem(detail, [{ pointer, detail }]);
}

function missingToday({ groups, idle }: StandingGroups): MissingCourseView[] {
  const because = (detail: string): MissingCourseView[] => [{ course: 'today', detail }];
  if (groups.length === 0)
    return because(
      idle === 0
        ? say`No living animals of this line that you may see live in a pairing of the register. Enter your pairings to compare with them.`
        : say`No pairing of the register holds living males and females of this line that you may see.`,
    );
  if (dams(groups) > GROUP_DAMS_MOST)
    return because(
      say`The pairings of this line hold more than ${GROUP_DAMS_MOST} dams, too many to be bred in one answer.`,
    );
  return [];
}
