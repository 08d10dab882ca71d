import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import type { Acting } from '../../platform/acting.ts';
import { databaseProblem } from '../../platform/database-problem.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { ConflictProblem, InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { holdPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, writeChange } from '../../register/change.ts';
import { sayOfChange } from '../../register/kept/note-change.ts';
import { moveOut } from '../../register/pairings/move-out.ts';
import { addPairing } from '../../register/pairings/pairings.service.ts';
import { AnimalNames } from '../plan/animal-names.ts';
import type { PlanLeave } from '../plan/plan.dto.ts';
import type { AcceptPairsRequest } from './kept-plan.dto.ts';
import { KeptPlanPair } from './kept-plan-pair.entity.ts';
import type { KeptPlan } from './kept-plan.entity.ts';
import { keptPlanKind } from './kept-plan.queries.ts';
import type { KeptPlanView } from './kept-plan.view.ts';
import { readKept, viewOf } from './kept-plans.service.ts';
import { readPairsToday, type PairToday } from './pairs-today.ts';
import { placedRows } from './placed-rows.ts';
import { say } from '../../platform/say.ts';

/** How often the register may change between looking at it and writing before the keeper is asked to try again. */
const TRIES = 3;

/** The register changed after it was looked at, before it could be held. */
class RegisterMoved extends Error {}

/** Turns pairs of kept plans into pairings. */
@Injectable()
export class AcceptPairsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Turns pairs of a kept plan into pairings of the acting keeper, all of them or none, by what the register says at this very moment.
   *
   * @throws NotFoundProblem, ForbiddenProblem, StaleProblem as for any change; InvalidProblem for pairs that cannot be made any more, or
   *   need what was not asked for; ConflictProblem where a pair is accepted or declined already, or an animal lives elsewhere at that time
   */
  async accept(id: string, match: VersionMatch, keeper: Acting, request: AcceptPairsRequest): Promise<KeptPlanView> {
    for (let left = TRIES; left > 0; left--) {
      const snapshot = await this.snapshots.current();
      try {
        return await inTransaction(this.dataSource, async (manager) => {
          if ((await holdPedigree(manager)) !== snapshot.revision.number) throw new RegisterMoved();
          const plan = await lockStanding(manager, keptPlanKind, id, match);
          await acceptPairs(manager, snapshot, keeper, plan, request);
          return viewOf(manager, snapshot, id);
        });
      } catch (error) {
        if (!(error instanceof RegisterMoved)) throw error;
      }
    }
    throw new ConflictProblem(say`The register is being changed at this moment. Try again shortly.`);
  }
}

async function acceptPairs(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  keeper: Acting,
  plan: KeptPlan,
  request: AcceptPairsRequest,
): Promise<void> {
  const day = requireDay(request);
  const kept = await readKept(manager, plan.id);
  const wanted = placedRows(kept.rows, request.pairs);
  const names = await AnimalNames.read(
    manager,
    wanted.flatMap(({ maleId, femaleId }) => [maleId, femaleId]),
  );
  const pairs = await readPairsToday(manager, snapshot, { ...kept, rows: wanted }, names);
  refuseDecided(pairs);
  refuseUnfit(pairs, snapshot, request.allow);
  for (const [index, pair] of pairs.entries()) {
    const name = request.pairs[index]?.name ?? usualName(plan, pair, names);
    if (day !== null)
      for (const { then, name: animal } of [pair.male, pair.female])
        await moveOut(manager, { id: then.id, name: animal }, day, `/pairs/${index}`);
    const pairingId = await addPairing(
      manager,
      keeper,
      {
        name,
        notes: [`From the plan “${plan.name}”.`, ...pair.warnings].join(' '),
        members: [pair.row.maleId, pair.row.femaleId].map((individualId) => ({
          individualId,
          joined: request.joined ?? null,
        })),
      },
      () => `/pairs/${index}`,
    ).catch((error: unknown) => {
      throw housedElsewhere(error, index, pair) ?? error;
    });
    await manager.update(
      KeptPlanPair,
      { planId: plan.id, place: pair.row.place },
      { state: 'accepted', pairingId, reason: null, warnings: [...pair.warnings] },
    );
  }
  await writeChange(manager, keptPlanKind, plan, {});
  sayOfChange(manager, plan.id, { action: 'paired' });
}

/** The day on which the animals leave where they live; null where they are not to. */
function requireDay({ moveOut: isMoving, joined }: AcceptPairsRequest): string | null {
  if (!isMoving) return null;
  if (typeof joined === 'string') return joined;
  const detail = say`Say from when the two are housed together: that is the day on which they leave where they live.`;
  throw new InvalidProblem(detail, [{ pointer: '/joined', detail }]);
}

function refuseDecided(pairs: readonly PairToday[]): void {
  const errors = pairs.flatMap(({ row }, index): ProblemError[] => {
    if (row.state === 'proposed') return [];
    const pairing = row.isPairingSeen ? say` and is the pairing “${row.pairingName ?? ''}”` : '';
    const detail =
      row.state === 'declined'
        ? say`Pair ${row.place + 1} was declined. Put it back first.`
        : say`Pair ${row.place + 1} was accepted already${pairing}.`;
    return [{ pointer: `/pairs/${index}`, detail }];
  });
  const [first] = errors;
  if (first) throw new ConflictProblem(errors.length === 1 ? first.detail : say`Some pairs are decided.`, {}, errors);
}

function refuseUnfit(pairs: readonly PairToday[], snapshot: LineageSnapshot, allow: readonly PlanLeave[]): void {
  const errors = pairs.flatMap((pair, index) => {
    const pointer = `/pairs/${index}`;
    const stopping = whatStops(pair, snapshot).map((detail) => ({ pointer, detail }));
    const asking = pair.leaves.flatMap((leave, place): ProblemError[] =>
      allow.includes(leave)
        ? []
        : [
            {
              pointer,
              detail: say`${pair.warnings[place] ?? ''} Leave the pair out, or ask for it by ${leave} in allow.`,
            },
          ],
    );
    return [...stopping, ...asking];
  });
  if (errors.length > 0)
    throw new InvalidProblem(say`Some pairs cannot be accepted as they are today; each is named below.`, errors);
}

function whatStops({ changes, male, female, row }: PairToday, snapshot: LineageSnapshot): string[] {
  const unseen = [male, female].filter(({ now }) => now === undefined);
  if (unseen.length > 0)
    return [say`There is an animal in this pair that you may not see. Its keeper has to accept it.`];
  const stops = changes.filter((one) => one.stops).map(({ text }) => text);
  const isCurrent = [row.maleId, row.femaleId].every((id) => snapshot.isCurrent(snapshot.find(id)));
  if (stops.length === 0 && !isCurrent)
    return [say`The figures of this pair are being computed anew. Try again in a moment.`];
  return stops;
}

/** Codes are told to whoever sees the pairing, so those of private animals stay out of its name. */
function usualName(plan: KeptPlan, { row, male, female }: PairToday, names: AnimalNames): string {
  const isOpen = [male, female].every(({ now }) => now !== undefined && now.visibility !== 'private');
  const [one, other] = [names.refOf(row.maleId), names.refOf(row.femaleId)];
  return isOpen
    ? `${one.code ?? one.number ?? ''} × ${other.code ?? other.number ?? ''}`
    : say`${plan.name.slice(0, 100)}, pair ${row.place + 1}`;
}

function housedElsewhere(error: unknown, index: number, { male, female }: PairToday): ConflictProblem | null {
  const problem = databaseProblem(error);
  if (!(problem instanceof ConflictProblem) || problem.errors === undefined) return null;
  const living = [male, female].flatMap(({ name, livesIn }) =>
    livesIn.map((pairing) => say`${name} lives in “${pairing.name}”.`),
  );
  const where =
    living.length > 0 ? living.join(' ') : say`${male.name} or ${female.name} lives elsewhere at that time.`;
  const detail = `${where} Say when it left there, let the two join later, or let them move out (moveOut).`;
  return new ConflictProblem(detail, {}, [{ pointer: `/pairs/${index}`, detail }]);
}
