import type { EntityManager } from 'typeorm';
import { writeChange } from '../change.ts';
import { originOf } from '../individuals/individual-origin.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import { columnsOf } from './merge-fields.ts';
import type { MergeRequest } from './merge.dto.ts';
import { mergedParents } from './merged-parents.ts';
import {
  clearParentRows,
  clutchesNaming,
  moveConfirmations,
  moveFollowers,
  moveAbout,
  moveStays,
  readParentRows,
  readStayRows,
  replaceStays,
  touchPairings,
  writeParentRows,
} from './merged-rows.queries.ts';
import { moveProvenance } from './merged-provenance.ts';
import { isOverlap, joinedStays, type StayRow } from './merged-stays.ts';
import type { Moved } from './moved.ts';

type Stays = Pick<Moved, 'stays' | 'joinedStays'>;

/**
 * Moves everything from a duplicate to the kept record, and gives what is needed to move it back. Callers hold the lock of the lineage
 * and of both records, and have looked for what stands against it.
 */
export async function moveRecords(
  manager: EntityManager,
  kept: Individual,
  duplicate: Individual,
  { take, reason }: Pick<MergeRequest, 'take' | 'reason'>,
): Promise<Moved> {
  const before = await readParentRows(manager, await clutchesNaming(manager, duplicate.id));
  const after = new Map([...before].map(([id, rows]) => [id, mergedParents(rows, kept.id, duplicate.id)]));
  const clutches = [...before].map(([id, rows]) => ({ id, before: rows, after: after.get(id) ?? [] }));
  await clearParentRows(manager, [...before.keys()]);
  // the duplicate goes first: its code is free then
  await writeChange(manager, individualKind, duplicate, {
    withdrawnAt: new Date(),
    withdrawnReason: reason,
    mergedIntoId: kept.id,
  });
  const taken = columnsOf(duplicate, take);
  const origin = take.includes('origin') ? await originOf(manager, kept, duplicate.clutchId) : {};
  await writeChange(manager, individualKind, kept, { ...taken, ...origin });
  await writeParentRows(manager, after);
  return {
    fields: take,
    before: columnsOf(kept, take),
    after: taken,
    clutches,
    ...(await moveHousing(manager, kept.id, duplicate.id)),
    remarks: await moveAbout(manager, 'observation', duplicate.id, kept.id),
    confirmations: await moveConfirmations(manager, duplicate.id, kept.id),
    followers: await moveFollowers(manager, duplicate.id, kept.id),
    provenance: await moveProvenance(manager, kept, duplicate),
  };
}

/** Moves the stays; those of both in one standing pairing are joined where they overlap. */
async function moveHousing(manager: EntityManager, keptId: string, duplicateId: string): Promise<Stays> {
  const all = await readStayRows(manager, [keptId, duplicateId]);
  const ofDuplicate = all.filter(({ individualId }) => individualId === duplicateId);
  const overlapping = new Set(
    ofDuplicate
      .filter((stay) =>
        all.some(
          (other) =>
            other.individualId === keptId &&
            other.pairingId === stay.pairingId &&
            stay.stands &&
            isOverlap(stay, other),
        ),
      )
      .map(({ pairingId }) => pairingId),
  );
  const stays = ofDuplicate.filter(({ pairingId }) => !overlapping.has(pairingId));
  const joined = [...overlapping].map((id) => {
    const rows = all.filter(({ pairingId }) => pairingId === id).map(plain);
    return { id, before: rows, after: joinedStays(rows, keptId) };
  });
  for (const { id, before, after } of joined) await replaceStays(manager, id, before, after);
  await moveStays(
    manager,
    stays.map(({ id }) => id),
    keptId,
  );
  await touchPairings(manager, [...new Set(ofDuplicate.map(({ pairingId }) => pairingId))]);
  return { stays: stays.map(({ id, pairingId }) => ({ id, pairingId })), joinedStays: joined };
}

/** The stay alone, as it is kept. */
export function plain(stay: StayRow): StayRow {
  const { id, individualId, joined, joinedEarliest, joinedLatest, left, leftEarliest, leftLatest } = stay;
  return { id, individualId, joined, joinedEarliest, joinedLatest, left, leftEarliest, leftLatest };
}
