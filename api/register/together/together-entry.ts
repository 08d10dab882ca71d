import type { EntityManager } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { newId } from '../../platform/ids.ts';
import { writeEntry } from '../../platform/journal-entry.ts';
import type { Judged } from './judge-animals.ts';
import type { ChangeTogetherRequest } from './together.dto.ts';

/**
 * Writes the entry that tells of a change of several animals as one, the first of its request: undoing it takes back all that the request
 * did. Each animal has its own entry besides. It tells how many and which fields, no animal; where one of them is private, it is, too.
 */
export async function writeTogetherEntry(
  manager: EntityManager,
  keeper: Acting,
  { fields, move, remark }: ChangeTogetherRequest,
  done: readonly Judged[],
): Promise<void> {
  const isPrivate =
    fields?.visibility === 'private' ||
    remark?.visibility === 'private' ||
    done.some(({ row }) => row?.visibility === 'private');
  const named = Object.entries(fields ?? {}).flatMap(([field, value]) => (value === undefined ? [] : [field]));
  await writeEntry(manager, {
    action: 'changed-together',
    kind: 'change_together',
    recordId: newId(),
    ownerId: keeper.id,
    visibility: isPrivate ? 'private' : 'club',
    before: null,
    after: {
      animals: done.length,
      fields: [...named, ...(move ? ['pairing'] : []), ...(remark ? ['remark'] : [])],
    },
  });
}
