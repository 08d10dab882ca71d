import type { EntityManager } from 'typeorm';
import { ForbiddenProblem } from '../../people/permissions.ts';
import { dateColumns } from '../../platform/dates.ts';
import { ConflictProblem, NotFoundProblem } from '../../platform/problem.ts';
import { lockStanding, writeChange } from '../change.ts';
import { PairingMember } from './pairing-member.entity.ts';
import { pairingKind } from './pairings.service.ts';
import { say } from '../../platform/say.ts';

/** An animal that is to leave where it lives. */
export interface Leaving {
  readonly id: string;
  readonly name: string;
}

/**
 * Ends the stays of an animal in all pairings that it has not left, each as a change of that pairing.
 *
 * @param day EDTF
 * @throws ConflictProblem at `pointer` where one of them is another keeper's or may not be seen
 */
export async function moveOut(manager: EntityManager, animal: Leaving, day: string, pointer: string): Promise<void> {
  const stays = await manager.query<{ id: string; pairingId: string }[]>(
    `select id, pairing_id as "pairingId" from pairing_member where individual_id = $1 and "left" is null and stands order by pairing_id, id`,
    [animal.id],
  );
  for (const { id, pairingId } of stays) {
    const pairing = await lockStanding(manager, pairingKind, pairingId, 'any').catch((error: unknown) => {
      throw notToBeLeft(error, animal, pointer) ?? error;
    });
    await manager.update(PairingMember, { id }, dateColumns('left', day));
    await writeChange(manager, pairingKind, pairing, {});
  }
}

function notToBeLeft(error: unknown, { name }: Leaving, pointer: string): ConflictProblem | null {
  if (!(error instanceof ForbiddenProblem) && !(error instanceof NotFoundProblem)) return null;
  const detail = say`${name} lives in a pairing of another keeper. Ask that keeper or a registrar to say when it left there.`;
  return new ConflictProblem(detail, {}, [{ pointer, detail }]);
}
