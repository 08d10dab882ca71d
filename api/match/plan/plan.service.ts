import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { GivenUpProblem } from '../../platform/given-up.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { isLiving } from '../../lineage/register-graph.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { LongWork } from '../../platform/long-work.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { findLine } from '../../register/lines/line.queries.ts';
import { present } from '../../register/present.ts';
import { makePlanTask } from '../tasks/make-plan.task.ts';
import { impossiblePlan, noPlanInTime } from './impossible-words.ts';
import type { Impossibility } from './impossible.ts';
import { findCandidates, type Candidate, type Candidates, type PlannedLine } from './plan-candidates.ts';
import type { PairPlace } from './plan-problem.ts';
import { recordPlan, type PlanRecord } from './plan-record.ts';
import { planView } from './plan-view.ts';
import type { PairRequest, PlanRequest } from './plan.dto.ts';
import type { PlanView } from './plan.view.ts';
import type { PlanCandidate, RegisterPlanInput } from './register-plan.ts';
import { say } from '../../platform/say.ts';

/** Weights under which every plan is measured, so that a slider can show what it does. */
const WEIGHTS = [0, 0.25, 0.5, 1, 2, 4, 8];

/** Chooses pairings for a line. */
@Injectable()
export class PlanService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * The pairs that keep most of a line's diversity under the conditions of the request, and why. Nothing is written.
   *
   * @param signal ends the computation when nobody waits for it any more
   * @throws NotFoundProblem if there is no such line; InvalidProblem for animals that cannot be taken and where no plan can be;
   *   BusyProblem if too many computations wait
   */
  async of(id: string, request: PlanRequest, signal: AbortSignal): Promise<PlanView> {
    const { record } = await this.make(id, request, signal);
    return planView(this.dataSource.manager, record, request);
  }

  /**
   * As `of`, but gives the plan as it can be kept, and the request with the ids of all animals that it named.
   *
   * @throws as `of`
   */
  async make(
    id: string,
    request: PlanRequest,
    signal: AbortSignal,
  ): Promise<{ record: PlanRecord; request: PlanRequest }> {
    const { manager } = this.dataSource;
    const { speciesId, id: lineId } = present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    const snapshot = await this.snapshots.current();
    const line = snapshot.graph.lines.findIndex((node) => node.id === lineId);
    const planned: PlannedLine = { line, speciesId };
    const candidates = await findCandidates(manager, snapshot, planned, request);
    const input = planInput(snapshot, planned, candidates, request);
    const { outcome, means } = await this.work.run(makePlanTask, input, { signal }).catch((error: unknown) => {
      throw signal.aborted ? new GivenUpProblem() : error;
    });
    if (outcome.kind === 'out-of-time') throw noPlanInTime(request);
    if (outcome.kind === 'impossible') throw await this.#impossible(snapshot, candidates, request, input, outcome.why);
    const record = await recordPlan(manager, { snapshot, planned, candidates, plan: outcome.plan, means });
    return { record, request: byIds(request, (name) => snapshot.idOf(candidates.mentioned.get(name) ?? -1)) };
  }

  async #impossible(
    snapshot: LineageSnapshot,
    { males, females }: Candidates,
    request: PlanRequest,
    { conditions: { fixed } }: RegisterPlanInput,
    why: Impossibility,
  ): Promise<InvalidProblem> {
    const animalAt = (side: 'male' | 'female', place: number): number =>
      (side === 'male' ? males : females)[place]?.animal ?? -1;
    const wanted = new WantedNames();
    for (const { male, female } of fixed)
      wanted.individuals.add(animalAt('male', male)).add(animalAt('female', female));
    const names = await RecordNames.read(this.dataSource.manager, snapshot.graph, wanted);
    const nameOf = (side: 'male' | 'female', place: number): string =>
      names.record('individual', animalAt(side, place)).name;
    return impossiblePlan(why, { request, fixed, nameOf });
  }
}

/** A request that names each animal by its id. */
function byIds(request: PlanRequest, idOf: (name: string) => string): PlanRequest {
  const { individuals, also, fixed, forbidden, uses } = request;
  const pair = ({ male, female }: PairRequest): PairRequest => ({ male: idOf(male), female: idOf(female) });
  return {
    ...request,
    ...(individuals === undefined ? {} : { individuals: individuals.map(idOf) }),
    also: also.map(idOf),
    fixed: fixed.map(pair),
    forbidden: forbidden.map(pair),
    uses: uses.map(({ individual, most }) => ({ individual: idOf(individual), most })),
  };
}

function planInput(
  snapshot: LineageSnapshot,
  planned: PlannedLine,
  candidates: Candidates,
  request: PlanRequest,
): RegisterPlanInput {
  const { graph, inbreeding, matrixBytes } = snapshot;
  const { males, females, mentioned } = candidates;
  const keepers = keeperNumbers(candidates, request);
  const numbered = new Map(request.uses.map(({ individual, most }) => [mentioned.get(individual) ?? -1, most]));
  const told = ({ animal, keeperId, isReserve }: Candidate): PlanCandidate => ({
    animal,
    keeper: keepers.get(keeperId) ?? -1,
    usesMost: numbered.get(animal) ?? request.usesMost,
    isReserve,
  });
  const members = snapshot.membersOfLine(planned.line);
  return {
    pedigree: graph.pedigree,
    inbreeding,
    matrixBytes,
    living: members.filter((member) => isLiving(graph, member)),
    males: males.map(told),
    females: females.map(told),
    conditions: {
      pairings: request.pairings,
      weight: request.weight,
      inbreedingMost: request.inbreedingTo,
      fixedMayExceed: request.allow.includes('above-limit'),
      fixed: placesOf(request.fixed, candidates),
      forbidden: [...placesOf(request.forbidden, candidates), ...outsiders(snapshot, planned, candidates)],
      keptTogether: request.keptTogether.map((id) => keepers.get(id) ?? -1),
      movesMost: request.movesMost,
      reserveLeast: request.reserve,
    },
    seconds: request.seconds,
    otherWeights: WEIGHTS.filter((weight) => weight !== request.weight),
  };
}

/** Numbers of the keepers of all candidates, by their ids. */
function keeperNumbers({ males, females }: Candidates, { keptTogether }: PlanRequest): Map<string, number> {
  const ids = [...new Set([...males, ...females].map(({ keeperId }) => keeperId))];
  const numbers = new Map(ids.map((id, place) => [id, place]));
  const errors = keptTogether.flatMap((id, place) =>
    numbers.has(id)
      ? []
      : [
          {
            pointer: `/keptTogether/${place}`,
            detail: say`None of the animals that may breed belongs to this keeper.`,
          },
        ],
  );
  if (errors.length > 0) throw new InvalidProblem(say`Some keepers have no animal here; each is named below.`, errors);
  return numbers;
}

/** Pairs by the places of their animals; without those of which one may not breed, which cannot be in a plan anyway. */
function placesOf(pairs: readonly PairRequest[], { males, females, mentioned }: Candidates): PairPlace[] {
  const placeIn = (candidates: readonly Candidate[]): Map<number, number> =>
    new Map(candidates.map(({ animal }, place) => [animal, place]));
  const [maleAt, femaleAt] = [placeIn(males), placeIn(females)];
  return pairs.flatMap((pair) => {
    const male = maleAt.get(mentioned.get(pair.male) ?? -1);
    const female = femaleAt.get(mentioned.get(pair.female) ?? -1);
    return male === undefined || female === undefined ? [] : [{ male, female }];
  });
}

/** Pairs of two animals of other lines: their young would have nothing of this one. */
function outsiders({ graph }: LineageSnapshot, { line }: PlannedLine, { males, females }: Candidates): PairPlace[] {
  const foreign = (candidates: readonly Candidate[]): number[] =>
    candidates.flatMap(({ animal }, place) => (graph.lineOf[animal] === line ? [] : [place]));
  const others = foreign(females);
  return foreign(males).flatMap((male) => others.map((female) => ({ male, female })));
}
