import type { EntityManager } from 'typeorm';
import { writeEntry, type KeptForm } from '../../platform/journal-entry.ts';
import type { Individual } from '../individuals/individual.entity.ts';
import { asKept, type Kept } from '../kept/kept-form.queries.ts';
import { stricter } from '../kept/note-change.ts';
import { present } from '../present.ts';
import type { Moved } from './moved.ts';

/** What is told of a merging, or of its undoing. */
export interface MergeTold {
  readonly action: 'merged' | 'unmerged';
  readonly mergeId: string;
  readonly moved: Moved;
  readonly reason: string | null;
  /** The entry of the journal that this one undoes. */
  readonly reversesId?: string | undefined;
}

/**
 * Reads both records before a merging or its undoing; what it gives writes, afterwards, the one entry that tells of all that moved. It
 * stands in the history of both records, and of every clutch, pairing and remark that moved.
 */
export async function noteMerge(
  manager: EntityManager,
  kept: Individual,
  duplicate: Individual,
): Promise<(told: MergeTold) => Promise<void>> {
  const read = async ({ id }: Individual): Promise<Kept> =>
    present(await asKept(manager, 'individual', id), () => new Error('a record is never destroyed'));
  const [keptBefore, duplicateBefore] = [await read(kept), await read(duplicate)];
  return async ({ action, mergeId, moved, reason, reversesId }) => {
    const [keptAfter, duplicateAfter] = [await read(kept), await read(duplicate)];
    const merged: KeptForm = { duplicateId: duplicate.id, moved: movedRows(moved) };
    await writeEntry(manager, {
      action,
      kind: 'individual',
      recordId: kept.id,
      recordVersion: keptAfter.version,
      ownerId: keptAfter.ownerId,
      visibility: [keptBefore, keptAfter, duplicateBefore, duplicateAfter]
        .map((state) => state.visibility)
        .reduce(stricter),
      before: { ...keptBefore.form, ...(action === 'unmerged' ? merged : {}) },
      after: { ...keptAfter.form, ...(action === 'merged' ? merged : {}) },
      reason,
      reversesId: reversesId ?? null,
      aboutIds: [mergeId, duplicate.id, ...recordsIn(moved)],
    });
  };
}

const recordsIn = (moved: Moved): string[] => [
  ...new Set([
    ...moved.clutches.map(({ id }) => id),
    ...moved.stays.map(({ pairingId }) => pairingId),
    ...moved.joinedStays.map(({ id }) => id),
    ...moved.remarks,
    ...Object.values(provenanceIn(moved)).flat(),
  ]),
];

/** What is said and shown of the animal, by ids. */
function provenanceIn({
  provenance,
}: Moved): Record<'claims' | 'joined' | 'photographs' | 'acknowledgements', string[]> {
  return {
    claims: [...(provenance?.claims ?? [])],
    joined: (provenance?.joinedClaims ?? []).flatMap(({ id, keptId, evidence }) => [id, keptId, ...evidence]),
    photographs: [...(provenance?.photographs ?? [])],
    acknowledgements: [...(provenance?.acknowledgements ?? [])],
  };
}

/** What moved, a row each, so that the journal can tell it and holds what each of them was and became. */
function movedRows(moved: Moved): readonly KeptForm[] {
  return [
    ...moved.clutches.map(({ id, before, after }) => ({ clutchId: id, parentsBefore: before, parentsAfter: after })),
    ...moved.stays.map(({ id, pairingId }) => ({ pairingId, stay: id })),
    ...moved.joinedStays.map(({ id, before, after }) => ({ pairingId: id, staysBefore: before, staysAfter: after })),
    ...moved.remarks.map((id) => ({ remark: id })),
    ...moved.confirmations.map((id) => ({ confirmation: id })),
    ...moved.followers.map((id) => ({ individualId: id })),
    ...provenanceIn(moved).claims.map((id) => ({ claimId: id })),
    ...(moved.provenance?.joinedClaims ?? []).map(({ id, keptId, evidence, filled }) => ({
      claimId: id,
      withdrawnFor: keptId,
      evidenceMoved: evidence,
      filled,
    })),
    ...provenanceIn(moved).photographs.map((id) => ({ photographId: id })),
    ...provenanceIn(moved).acknowledgements.map((id) => ({ acknowledgement: id })),
  ];
}
