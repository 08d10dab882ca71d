import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import type { Acting } from '../../platform/acting.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { ConflictProblem, InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange } from '../../register/change.ts';
import { noteAdded } from '../../register/kept/note-change.ts';
import { present } from '../../register/present.ts';
import { holdStanding, requireStanding } from '../../register/standing.queries.ts';
import type { PlanRecord } from '../plan/plan-record.ts';
import type { PairRequest, PlanRequest } from '../plan/plan.dto.ts';
import { PlanService } from '../plan/plan.service.ts';
import type { DecidePairsRequest, KeptPlanChangeRequest, NewKeptPlanRequest } from './kept-plan.dto.ts';
import { KeptPlan } from './kept-plan.entity.ts';
import { KeptPlanAnswer } from './kept-plan-answer.entity.ts';
import { KeptPlanPair } from './kept-plan-pair.entity.ts';
import { findKeptPlan, keptPlanKind, readHousedIn, readPairRows, type PairRow } from './kept-plan.queries.ts';
import { keptPlanView } from './kept-plan-view.ts';
import type { KeptPlanView } from './kept-plan.view.ts';
import type { KeptAnswer } from './pairs-today.ts';
import { placedRows } from './placed-rows.ts';
import { say } from '../../platform/say.ts';

/** Keeps plans for lines. */
@Injectable()
export class KeptPlansService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(PlanService) private readonly plans: PlanService,
  ) {}

  /** One kept plan, compared with the register of today; 404 where there is none. */
  async get(id: string): Promise<KeptPlanView> {
    return viewOf(this.dataSource.manager, await this.snapshots.current(), id);
  }

  /**
   * Makes a plan from its assumptions and keeps it, as a plan of the acting keeper.
   *
   * @param signal ends the computation when nobody waits for it any more
   * @throws as PlanService.of; ConflictProblem where it comes out with other pairs than were shown
   */
  async keep(keeper: Acting, asked: NewKeptPlanRequest, signal: AbortSignal): Promise<KeptPlanView> {
    await requireStanding(this.dataSource.manager, 'line', asked.lineId, '/lineId');
    const { record, request } = await this.plans
      .make(asked.lineId, asked.assumptions, signal)
      .catch((error: unknown) => {
        throw error instanceof InvalidProblem ? withinAssumptions(error) : error;
      });
    if (asked.shown !== undefined) await this.#refuseOther(record, asked.shown);
    const snapshot = await this.snapshots.current();
    return inTransaction(this.dataSource, async (manager) => {
      await requireStanding(manager, 'line', asked.lineId, '/lineId');
      await holdStanding(manager, 'line', [asked.lineId], () => '/lineId');
      const id = await store(manager, keeper, asked, record, request);
      return viewOf(manager, snapshot, id);
    });
  }

  /** Changes the name, the notes, or who may see it; 404, 409, 412, 422. */
  async change(id: string, match: VersionMatch, request: KeptPlanChangeRequest): Promise<KeptPlanView> {
    return this.#changeWith(id, match, (manager, plan) =>
      writeChange(manager, keptPlanKind, plan, sentFields(request, ['name', 'notes', 'visibility'])),
    );
  }

  /** Declines pairs, or puts them back; 404, 409 where one is a pairing that stands, 412, 422. */
  async decide(id: string, match: VersionMatch, request: DecidePairsRequest): Promise<KeptPlanView> {
    return this.#changeWith(id, match, async (manager, plan) => {
      for (const row of placedRows(await readPairRows(manager, id), request.pairs)) {
        refusePaired(row);
        const reason = request.state === 'declined' ? (request.reason ?? null) : null;
        const decided = { state: request.state, reason, pairingId: null, warnings: [] };
        await manager.update(KeptPlanPair, { planId: id, place: row.place }, decided);
      }
      await writeChange(manager, keptPlanKind, plan, {});
    });
  }

  async #changeWith(
    id: string,
    match: VersionMatch,
    work: (manager: EntityManager, plan: KeptPlan) => Promise<void>,
  ): Promise<KeptPlanView> {
    const snapshot = await this.snapshots.current();
    return inTransaction(this.dataSource, async (manager) => {
      await work(manager, await lockStanding(manager, keptPlanKind, id, match));
      return viewOf(manager, snapshot, id);
    });
  }

  async #refuseOther(record: PlanRecord, shown: readonly PairRequest[]): Promise<void> {
    const snapshot = await this.snapshots.current();
    const idOf = (text: string): string => snapshot.idOf(snapshot.find(text));
    const key = (male: string, female: string): string => `${male} ${female}`;
    const were = shown.map(({ male, female }) => key(idOf(male), idOf(female)));
    const pairs = pairsOf(record);
    const are = pairs.map(({ male, female }) => key(male, female));
    if (were.length === are.length && are.every((one) => were.includes(one))) return;
    throw new ConflictProblem(
      say`The plan comes out with other pairs by now than you were shown, since the register changed. Nothing was kept: make the plan again, look at it, then keep it.`,
      { pairs, asOf: record.asOf },
    );
  }
}

/** What is wrong with assumptions, where they stand in the request. */
function withinAssumptions({ message, errors, extra }: InvalidProblem): InvalidProblem {
  const moved = (errors ?? []).map(({ pointer = '', ...error }) => ({ ...error, pointer: `/assumptions${pointer}` }));
  return new InvalidProblem(message, moved, extra);
}

/** The pairs of a plan by the ids of their animals. */
function pairsOf({ plan, males, females }: PlanRecord): PairRequest[] {
  return plan.pairs.map(({ male, female }) => ({ male: males[male]?.id ?? '', female: females[female]?.id ?? '' }));
}

async function store(
  manager: EntityManager,
  keeper: Acting,
  asked: NewKeptPlanRequest,
  record: PlanRecord,
  assumptions: PlanRequest,
): Promise<string> {
  const id = newId();
  const pairs = pairsOf(record);
  await manager.insert(KeptPlan, {
    id,
    keeperId: keeper.id,
    revision: record.asOf.revision,
    ...sentFields(asked, ['lineId', 'name', 'notes', 'visibility']),
  });
  const housed = await readHousedIn(manager, [...new Set(pairs.flatMap(({ male, female }) => [male, female]))]);
  await manager.insert(KeptPlanAnswer, {
    planId: id,
    assumptions,
    record,
    housed: Object.fromEntries(housed),
  });
  const rows = pairs.map(({ male, female }, place) => ({ planId: id, place, maleId: male, femaleId: female }));
  await manager.insert(KeptPlanPair, rows);
  noteAdded(manager, 'kept_plan', id);
  return id;
}

/**
 * Tells a kept plan.
 *
 * @throws NotFoundProblem where there is none or it may not be seen
 */
export async function viewOf(manager: EntityManager, snapshot: LineageSnapshot, id: string): Promise<KeptPlanView> {
  const item = present(await findKeptPlan(manager, id), () => new NotFoundProblem(say`plan`, id));
  return keptPlanView(manager, snapshot, item, await readKept(manager, id));
}

/** A kept plan with its pairs, whoever asks: callers have seen that they may. */
export async function readKept(manager: EntityManager, id: string): Promise<KeptAnswer> {
  const { assumptions, record, housed } = await manager.findOneByOrFail(KeptPlanAnswer, { planId: id });
  return { assumptions, record, housed, rows: await readPairRows(manager, id) };
}

function refusePaired({ state, place, isPairingSeen, isPairingWithdrawn, pairingName }: PairRow): void {
  if (state !== 'accepted' || isPairingWithdrawn) return;
  const name = isPairingSeen ? `“${pairingName ?? ''}”` : say`that may not be seen`;
  throw new ConflictProblem(
    say`Pair ${place + 1} became the pairing ${name}. Undo the accepting, or withdraw that pairing first.`,
  );
}
