import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import { isId, newId } from '../../platform/ids.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { resolveIndividuals } from '../individuals/resolve-individuals.queries.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import { holdStanding } from '../standing.queries.ts';
import type { MemberChangeRequest, NewMemberRequest, NewPairingRequest, PairingChangeRequest } from './pairing.dto.ts';
import { PairingMember } from './pairing-member.entity.ts';
import { Pairing } from './pairing.entity.ts';
import { findPairing } from './pairing.queries.ts';
import type { PairingView } from './pairing.view.ts';
import type { ParentCorrectionsView } from './parent-correction.view.ts';
import { findParentCorrections } from './parent-corrections.queries.ts';
import { say } from '../../platform/say.ts';

export const pairingKind: Kind<Pairing, PairingView> = { word: 'pairing', entity: Pairing, find: findPairing };

/** Pairings and who lives in them, over time. */
@Injectable()
export class PairingsService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One pairing; 404 where there is none. */
  async get(id: string): Promise<PairingView> {
    return present(await findPairing(this.dataSource.manager, id), () => new NotFoundProblem(say`pairing`, id));
  }

  /** Clutches of a pairing whose recorded parents the housing contradicts; 404 where there is no such pairing. */
  async corrections(id: string): Promise<ParentCorrectionsView> {
    const pairing = await this.get(id);
    return { items: await findParentCorrections(this.dataSource.manager, pairing.id) };
  }

  /** Adds a pairing of the acting keeper; 409 where an animal lives elsewhere at that time, 422 where one is not there. */
  async add(keeper: Acting, request: NewPairingRequest): Promise<PairingView> {
    return inTransaction(this.dataSource, async (manager) => {
      const id = await addPairing(manager, keeper, request, (index) => `/members/${index}/individualId`);
      return present(await findPairing(manager, id), () => new NotFoundProblem(say`pairing`, id));
    });
  }

  /** Changes a pairing; 404, 409, 412, 422. */
  async change(id: string, match: VersionMatch, request: PairingChangeRequest): Promise<PairingView> {
    return this.changeWith(id, match, (manager, pairing) =>
      writeChange(manager, pairingKind, pairing, sentFields(request, ['name', 'notes'])),
    );
  }

  /** Lets an animal join; a change of the pairing. 404, 409 where it lives elsewhere at that time, 412, 422. */
  async addMember(id: string, match: VersionMatch, request: NewMemberRequest): Promise<PairingView> {
    return this.changeWith(id, match, async (manager, pairing) => {
      await addMembers(manager, id, [request], () => '/individualId');
      await writeChange(manager, pairingKind, pairing, {});
    });
  }

  /** Changes a stay: when the animal joined, when it left. A change of the pairing. 404, 409, 412, 422. */
  async changeMember(
    id: string,
    memberId: string,
    match: VersionMatch,
    request: MemberChangeRequest,
  ): Promise<PairingView> {
    return this.changeWith(id, match, async (manager, pairing) => {
      const where = { id: memberId, pairingId: id };
      const member = isId(memberId) ? await manager.findOneBy(PairingMember, where) : null;
      if (!member) throw new NotFoundProblem(say`stay in this pairing`, memberId);
      const joined = request.joined === undefined ? {} : dateColumns('joined', request.joined);
      const left = request.left === undefined ? {} : dateColumns('left', request.left);
      if (Object.keys({ ...joined, ...left }).length > 0)
        await manager.update(PairingMember, where, { ...joined, ...left });
      await writeChange(manager, pairingKind, pairing, {});
    });
  }

  /** Removes a stay that was entered by mistake; a change of the pairing. 404, 409, 412. */
  async removeMember(id: string, memberId: string, match: VersionMatch): Promise<PairingView> {
    return this.changeWith(id, match, async (manager, pairing) => {
      const result = isId(memberId) ? await manager.delete(PairingMember, { id: memberId, pairingId: id }) : null;
      if (result?.affected !== 1) throw new NotFoundProblem(say`stay in this pairing`, memberId);
      await writeChange(manager, pairingKind, pairing, {});
    });
  }

  private changeWith(
    id: string,
    match: VersionMatch,
    work: (manager: EntityManager, pairing: Pairing) => Promise<void>,
  ): Promise<PairingView> {
    return inTransaction(this.dataSource, async (manager) => {
      await work(manager, await lockStanding(manager, pairingKind, id, match));
      return present(await findPairing(manager, id), () => new NotFoundProblem(say`pairing`, id));
    });
  }
}

/**
 * Adds a pairing of the acting keeper within a transaction and gives its id; errors as for the service.
 *
 * @param pointerOf where the request names each of the animals
 */
export async function addPairing(
  manager: EntityManager,
  keeper: Acting,
  request: NewPairingRequest,
  pointerOf: (index: number) => string,
): Promise<string> {
  const id = newId();
  await manager.insert(Pairing, { id, keeperId: keeper.id, ...sentFields(request, ['name', 'notes']) });
  noteAdded(manager, 'pairing', id);
  await addMembers(manager, id, request.members ?? [], pointerOf);
  return id;
}

async function addMembers(
  manager: EntityManager,
  pairingId: string,
  members: readonly NewMemberRequest[],
  pointerOf: (index: number) => string,
): Promise<void> {
  const animals = await resolveIndividuals(
    manager,
    members.map((member, index) => ({ text: member.individualId, pointer: pointerOf(index) })),
  );
  await holdStanding(
    manager,
    'individual',
    animals.map((animal) => animal.id),
    pointerOf,
  );
  const rows = animals.map((animal, index) => ({
    id: newId(),
    pairingId,
    individualId: animal.id,
    ...dateColumns('joined', members[index]?.joined ?? null),
    ...dateColumns('left', members[index]?.left ?? null),
  }));
  if (rows.length > 0) await manager.insert(PairingMember, rows);
}
