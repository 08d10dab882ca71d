import type { EntityManager } from 'typeorm';
import { ForbiddenProblem } from '../../people/permissions.ts';
import { acting } from '../../platform/acting.ts';
import { isMatch, type VersionMatch } from '../../platform/etag.ts';
import { isId } from '../../platform/ids.ts';
import { ConflictProblem, NotFoundProblem, StaleProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { seenTransfer } from './seen-transfers.ts';
import { isForGiver, isForReceiver } from './transfer-steps.ts';
import { Transfer } from './transfer.entity.ts';
import { findTransfer } from './transfer.queries.ts';
import type { TransferView } from './transfer.view.ts';
import { say } from '../../platform/say.ts';

/**
 * Locks a transfer for a change by its giver or its receiver; for a departure the lock of the lineage comes first, since who lives follows
 * from it. 404 where there is none or it may not be seen, 403 where it is for somebody else to do.
 */
export async function lockTransfer(manager: EntityManager, id: string, side: 'giver' | 'receiver'): Promise<Transfer> {
  const [found] = isId(id)
    ? await manager.query<{ toId: string | null }[]>(
        `select t.to_id as "toId" from transfer t where t.id = $1 and ${seenTransfer('t')}`,
        [id],
      )
    : [];
  if (found?.toId === null) await lockPedigree(manager);
  const transfer = found
    ? await manager
        .createQueryBuilder(Transfer, 't')
        .setLock('pessimistic_write')
        .where('t.id = :id', { id })
        .andWhere(seenTransfer('t'))
        .getOne()
    : null;
  if (!transfer) throw new NotFoundProblem(say`transfer`, id);
  const who = acting();
  if (side === 'giver' && !isForGiver(who, transfer))
    throw new ForbiddenProblem(say`Only the keeper who gives, or a registrar, can do that.`);
  if (side === 'receiver' && !isForReceiver(who, transfer))
    throw new ForbiddenProblem(
      say`Only the keeper to whom the animals are offered answers, or a registrar who did not offer them.`,
    );
  return transfer;
}

/**
 * Refuses a change that a transfer as it is does not allow: 409 that says what happened to it meanwhile, then 412 where it is another
 * version. Both carry it as it is now.
 */
export async function requireState(
  manager: EntityManager,
  transfer: Transfer,
  isFit: boolean,
  match: VersionMatch,
): Promise<void> {
  if (isFit && isMatch(match, transfer.version)) return;
  const current = await findTransfer(manager, transfer.id);
  if (!isFit && current) throw new ConflictProblem(whatHappened(current), { current });
  throw new StaleProblem(current);
}

/** What became of a transfer, in a sentence. */
function whatHappened({ kind, state, settledBy, settledAt, to }: TransferView): string {
  const when = say`on ${settledAt?.slice(0, 10) ?? say`an unknown day`}`;
  const who = settledBy ?? 'Somebody';
  if (state === 'offered') return say`This offer still waits for the answer of ${to?.name ?? say`its receiver`}.`;
  if (kind === 'departure')
    return state === 'accepted'
      ? say`${who} noted ${when} that these animals left the club.`
      : say`${who} put these animals back ${when}: they had not left the club.`;
  const what = { accepted: 'accepted', declined: 'declined', withdrawn: 'withdrew' }[state];
  return say`${who} ${what} this offer ${when}. Nothing more can be done with it.`;
}

/** Writes a change of a transfer that was locked before. */
export async function writeTransfer(
  manager: EntityManager,
  { id, version }: Transfer,
  patch: Partial<Pick<Transfer, 'state' | 'reason' | 'date' | 'dateEarliest' | 'dateLatest' | 'endedStays'>>,
): Promise<void> {
  const settled =
    patch.state === 'offered'
      ? { settledById: null, settledAt: null }
      : { settledById: acting().id, settledAt: new Date() };
  const result = await manager.update(
    Transfer,
    { id, version },
    { ...patch, ...(patch.state === undefined ? {} : settled), updatedAt: new Date() },
  );
  if (result.affected !== 1) throw new StaleProblem(await findTransfer(manager, id));
}
