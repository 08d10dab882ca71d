import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ForbiddenProblem } from '../../people/permissions.ts';
import type { Acting } from '../../platform/acting.ts';
import { ConflictProblem, InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, writeChange } from '../change.ts';
import { noteChanges } from '../kept/note-change.ts';
import type { Pairing } from '../pairings/pairing.entity.ts';
import { pairingKind } from '../pairings/pairings.service.ts';
import { requireStanding } from '../standing.queries.ts';
import { addRemarks } from './add-remarks.ts';
import { judge, type Judged, type TargetNames } from './judge-animals.ts';
import { writeTogetherEntry } from './together-entry.ts';
import type { ChangeTogetherRequest } from './together.dto.ts';
import { lockAnimals, readOpenStays, readVersions, type OpenStay } from './together.queries.ts';
import type { ChangedTogetherView } from './together.view.ts';
import { writeTogether } from './write-together.ts';
import { say } from '../../platform/say.ts';

/** Fields whose change is a change of the lineage. */
const lineageFields = ['lineId', 'sex', 'status', 'died'] as const;

/** What was only looked at is taken back by being thrown. */
class OnlyLooked extends Error {
  constructor(readonly view: ChangedTogetherView) {
    super('only looked at');
  }
}

/** Changes several animals at once: all of them or none, by one request, and one undo takes all of it back. */
@Injectable()
export class TogetherService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** What a change would do to each of its animals, by doing it and taking it back. 422 where the change itself makes no sense, 403, 404. */
  async look(keeper: Acting, request: ChangeTogetherRequest): Promise<ChangedTogetherView> {
    try {
      return await inTransaction(this.dataSource, async (manager) => {
        throw new OnlyLooked(viewOf(await work(manager, keeper, request)));
      });
    } catch (error) {
      if (error instanceof OnlyLooked) return error.view;
      throw error;
    }
  }

  /**
   * Changes the animals. 409 that names each one that cannot be changed so, where there is any (403 where all of those are another keeper's): then
   * nothing is written. 422, 403 and 404 as for `look`.
   */
  async change(keeper: Acting, request: ChangeTogetherRequest): Promise<ChangedTogetherView> {
    return inTransaction(this.dataSource, async (manager) => {
      const judged = await work(manager, keeper, request);
      refuseAny(judged);
      const versions = await readVersions(
        manager,
        judged.map(({ view }) => view.id),
      );
      const view = viewOf(judged);
      return {
        ...view,
        items: view.items.map((item) => ({ ...item, version: versions.get(item.id) ?? item.version })),
      };
    });
  }
}

async function work(manager: EntityManager, keeper: Acting, request: ChangeTogetherRequest): Promise<Judged[]> {
  refuseSenseless(request);
  const ids = request.animals.map(({ id }) => id.toLowerCase());
  if (lineageFields.some((field) => request.fields?.[field] !== undefined)) await lockPedigree(manager);
  const names = await namesOf(manager, request);
  const pairings = request.move ? await lockPairings(manager, ids, request.move.pairingId) : new Map<string, Pairing>();
  const rows = await lockAnimals(manager, ids);
  const stays = request.move ? byAnimal(await readOpenStays(manager, ids)) : new Map<string, OpenStay[]>();
  const judged = request.animals.map((animal) => {
    const id = animal.id.toLowerCase();
    return judge(animal, rows.get(id), stays.get(id) ?? [], request, names);
  });
  const changing = judged.filter(({ view }) => view.outcome === 'changes');
  await noteChanges(
    manager,
    'individual',
    changing.filter(({ changesFields }) => changesFields).flatMap(({ row }) => row?.id ?? []),
  );
  const written = new Map(
    (await writeTogether(manager, changing, request)).map((one): [string, Judged] => [one.view.id, one]),
  );
  const all = judged.map((one) => written.get(one.view.id) ?? one);
  await writeRest(manager, keeper, request, all, pairings);
  return all;
}

function byAnimal(stays: readonly OpenStay[]): Map<string, OpenStay[]> {
  const found = new Map<string, OpenStay[]>();
  for (const stay of stays) found.set(stay.individualId, [...(found.get(stay.individualId) ?? []), stay]);
  return found;
}

/** What follows from the animals that were changed: their pairings, remarks on them, and the entry that tells of all. */
async function writeRest(
  manager: EntityManager,
  keeper: Acting,
  request: ChangeTogetherRequest,
  all: readonly Judged[],
  pairings: ReadonlyMap<string, Pairing>,
): Promise<void> {
  const done = all.filter(({ view }) => view.outcome === 'changes');
  const touched = new Set(done.flatMap(({ leaves, moves }) => (moves ? leaves.map(({ pairingId }) => pairingId) : [])));
  if (request.move?.pairingId && done.some(({ moves }) => moves)) touched.add(request.move.pairingId.toLowerCase());
  for (const id of touched) {
    const pairing = pairings.get(id);
    if (pairing) await writeChange(manager, pairingKind, pairing, {});
  }
  const remarks = request.remark ? done.length : 0;
  const records = done.filter(({ changesFields }) => changesFields).length + touched.size + remarks;
  if (records > 1) await writeTogetherEntry(manager, keeper, request, done);
  if (request.remark)
    await addRemarks(
      manager,
      keeper,
      request.remark,
      done.flatMap(({ row }) => row?.id ?? []),
    );
}

function refuseSenseless({ animals, fields, move, remark }: ChangeTogetherRequest): void {
  const ids = animals.map(({ id }) => id.toLowerCase());
  const errors = ids.flatMap((id, at) =>
    ids.indexOf(id) === at ? [] : [{ pointer: `/animals/${at}/id`, detail: say`This animal is named twice.` }],
  );
  if (errors.length > 0) throw new InvalidProblem(say`Name each animal once.`, errors);
  const saysSomething = Object.values(fields ?? {}).some((value) => value !== undefined);
  if (!saysSomething && !move && !remark) {
    const detail = say`Say what is to change: a field, where they go to live, or a remark.`;
    throw new InvalidProblem(detail, [{ pointer: '/fields', detail }]);
  }
  if (remark && !remark.text && remark.svlMm == null && remark.massG == null) {
    const detail = say`A remark says something: a text, a length or a mass.`;
    throw new InvalidProblem(detail, [{ pointer: '/remark/text', detail }]);
  }
}

async function namesOf(manager: EntityManager, { fields, move }: ChangeTogetherRequest): Promise<TargetNames> {
  await requireStanding(manager, 'line', fields?.lineId, '/fields/lineId');
  await requireStanding(manager, 'pairing', move?.pairingId, '/move/pairingId');
  const [row] = await manager.query<{ line: string | null; pairing: string | null }[]>(
    'select (select name from line where id = $1::uuid) as line, (select name from pairing where id = $2::uuid) as pairing',
    [fields?.lineId ?? null, move?.pairingId ?? null],
  );
  return row ?? { line: null, pairing: null };
}

/**
 * Locks the pairing that animals join and those that they leave, in the order of their ids and before any animal. One that may not be changed
 * is left out: its animals are refused. 403 where the one to join is another keeper's.
 */
async function lockPairings(
  manager: EntityManager,
  ids: readonly string[],
  target: string | null,
): Promise<Map<string, Pairing>> {
  const stays = await readOpenStays(manager, ids);
  const wanted = new Set([
    ...stays.map(({ pairingId }) => pairingId),
    ...(target === null ? [] : [target.toLowerCase()]),
  ]);
  const locked = new Map<string, Pairing>();
  for (const id of [...wanted].sort()) {
    try {
      locked.set(id, await lockStanding(manager, pairingKind, id, 'any'));
    } catch (error) {
      if (id === target?.toLowerCase()) throw error;
      if (!(error instanceof NotFoundProblem) && !(error instanceof ForbiddenProblem)) throw error;
    }
  }
  return locked;
}

function refuseAny(judged: readonly Judged[]): void {
  const errors = judged.flatMap(({ view }, at) =>
    view.outcome === 'refused' ? [{ pointer: `/animals/${at}`, detail: `${nameIn(view)}: ${view.detail ?? ''}` }] : [],
  );
  if (errors.length === 0) return;
  const detail = say`Some of these animals cannot be changed so; each is named below. Nothing was written. Leave them out, or change what stands against it.`;
  const areAllOthers = judged.every(({ view }) => view.outcome !== 'refused' || view.refusal === 'not-yours');
  if (areAllOthers) throw new ForbiddenProblem(detail, errors);
  throw new ConflictProblem(detail, {}, errors);
}

const nameIn = ({ code, number, id }: Judged['view']): string => code ?? number ?? id;

function viewOf(judged: readonly Judged[]): ChangedTogetherView {
  const count = (outcome: Judged['view']['outcome']): number =>
    judged.filter(({ view }) => view.outcome === outcome).length;
  return {
    changing: count('changes'),
    same: count('same'),
    refused: count('refused'),
    items: judged.map(({ view }) => view),
  };
}
