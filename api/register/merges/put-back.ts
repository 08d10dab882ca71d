import { In, type EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { ConflictProblem } from '../../platform/problem.ts';
import { writeChange } from '../change.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import { originOf } from '../individuals/individual-origin.ts';
import type { Individual } from '../individuals/individual.entity.ts';
import { individualKind } from '../individuals/individuals.service.ts';
import { Pairing } from '../pairings/pairing.entity.ts';
import { clutchTitle } from '../titles.ts';
import { missingBeneath } from '../withdrawal.queries.ts';
import type { Merge } from './merge.entity.ts';
import { changedFields } from './merge-fields.ts';
import { holderOfCode, laterMerges } from './merge.queries.ts';
import { putProvenanceBack } from './merged-provenance.ts';
import { repeatedAcross } from './merged-provenance.queries.ts';
import { isSameRows } from './merged-parents.ts';
import {
  clearParentRows,
  moveStays,
  moveTheseConfirmations,
  moveTheseFollowers,
  moveThese,
  readParentRows,
  readStayRows,
  replaceStays,
  touchPairings,
  writeParentRows,
} from './merged-rows.queries.ts';
import { isSameStays } from './merged-stays.ts';
import { plain } from './move-records.ts';
import { say } from '../../platform/say.ts';

/** Something that was changed since a merging. */
interface Changed {
  readonly kind: 'individual' | 'clutch' | 'pairing' | 'merge' | 'evidence';
  readonly id: string;
  readonly name: string;
  readonly detail: string;
}

/**
 * Refuses with 409, naming what was changed since, where a merging cannot be put back exactly. Callers hold the lock of the lineage and
 * of both records.
 */
export async function refuseChanged(
  manager: EntityManager,
  merge: Merge,
  kept: Individual,
  duplicate: Individual,
): Promise<void> {
  const later = await laterMerges(manager, merge.id, [kept.id, duplicate.id]);
  const changed: Changed[] = later.map((other) => ({
    kind: 'merge',
    id: other.id,
    name: say`${other.duplicate} merged into ${other.kept}`,
    detail: say`This merging came later. Undo it first.`,
  }));
  if (changed.length === 0)
    changed.push(
      ...ofKept(merge, kept),
      ...(await ofClutches(manager, merge)),
      ...(await ofStays(manager, merge)),
      ...(await ofCode(manager, merge, kept, duplicate)),
      ...(await ofEvidence(manager, merge)),
    );
  const [first] = changed;
  if (first)
    throw new ConflictProblem(
      say`This merging cannot be put back exactly: something was changed since. ${first.name}: ${first.detail}`,
      { changed },
    );
  const missing = await missingBeneath(manager, 'animal', duplicate.id);
  if (missing.length > 0)
    throw new ConflictProblem(say`The duplicate needs records that are withdrawn. Restore them first.`, {
      dependants: missing,
    });
}

const nameOf = ({ number, code }: Pick<Individual, 'number' | 'code'>): string =>
  [formatRegistryNumber(number), code].filter((part) => part !== null).join(' ');

function ofKept({ moved }: Merge, kept: Individual): Changed[] {
  const about = { kind: 'individual' as const, id: kept.id, name: nameOf(kept) };
  if (kept.withdrawnAt !== null) return [{ ...about, detail: say`The kept record was withdrawn. Restore it first.` }];
  return changedFields(kept, moved.fields, moved.after).map((field) => ({
    ...about,
    detail: say`Its ${field} was taken from the duplicate and changed since. Undo that change first.`,
  }));
}

async function ofClutches(manager: EntityManager, { moved }: Merge): Promise<Changed[]> {
  const now = await readParentRows(
    manager,
    moved.clutches.map(({ id }) => id),
  );
  const changed = moved.clutches.filter(({ id, after }) => !isSameRows(now.get(id) ?? [], after)).map(({ id }) => id);
  const clutches = changed.length === 0 ? [] : await manager.findBy(Clutch, { id: In(changed) });
  return clutches.map((clutch) => ({
    kind: 'clutch',
    id: clutch.id,
    name: clutchTitle(clutch),
    detail: say`Its possible parents were changed since. Undo that change first.`,
  }));
}

async function ofStays(manager: EntityManager, { moved, keptId }: Merge): Promise<Changed[]> {
  const now = await readStayRows(manager, [keptId]);
  const gone = moved.stays.filter(({ id }) => !now.some((stay) => stay.id === id)).map(({ pairingId }) => pairingId);
  const edited = moved.joinedStays
    .filter(
      ({ id, after }) =>
        !isSameStays(
          now.filter(({ pairingId }) => pairingId === id),
          after,
        ),
    )
    .map(({ id }) => id);
  const ids = [...new Set([...gone, ...edited])];
  const pairings = ids.length === 0 ? [] : await manager.findBy(Pairing, { id: In(ids) });
  return pairings.map((pairing) => ({
    kind: 'pairing',
    id: pairing.id,
    name: pairing.name,
    detail: say`The stays of the animal in it were changed since. Undo that change first.`,
  }));
}

async function ofEvidence(manager: EntityManager, { moved }: Merge): Promise<Changed[]> {
  const found = await repeatedAcross(manager, moved.provenance?.joinedClaims ?? []);
  return found.map(({ id, reference }) => ({
    kind: 'evidence',
    id,
    name: reference,
    detail: say`It repeats evidence that would be with the other record. Withdraw it first, and bring it again afterwards.`,
  }));
}

async function ofCode(
  manager: EntityManager,
  { moved }: Merge,
  kept: Individual,
  duplicate: Individual,
): Promise<Changed[]> {
  const holder = await holderOfCode(manager, duplicate.id);
  const isGivenBack = holder?.id === kept.id && (moved.fields.includes('code') || moved.fields.includes('keeper'));
  if (holder === null || isGivenBack) return [];
  return [
    {
      kind: 'individual',
      id: holder.id,
      name: nameOf(holder),
      detail: say`It has the code ${holder.code} of the duplicate meanwhile. Give it another first.`,
    },
  ];
}

/** Puts back what a merging moved. 409 with the members of the loop where that would close one. */
export async function putBack(
  manager: EntityManager,
  { moved }: Merge,
  kept: Individual,
  duplicate: Individual,
): Promise<void> {
  await clearParentRows(
    manager,
    moved.clutches.map(({ id }) => id),
  );
  const origin = moved.fields.includes('origin') ? await originOf(manager, kept, moved.before['clutchId'] ?? null) : {};
  await writeChange(manager, individualKind, kept, { ...moved.before, ...origin });
  await writeChange(manager, individualKind, duplicate, {
    withdrawnAt: null,
    withdrawnReason: null,
    mergedIntoId: null,
  });
  const parents = new Map(moved.clutches.map(({ id, before }) => [id, before]));
  await writeParentRows(manager, parents);
  await putStaysBack(manager, moved, kept.id, duplicate.id);
  await moveThese(manager, 'observation', moved.remarks, duplicate.id);
  await moveTheseConfirmations(manager, moved.confirmations, duplicate.id);
  await moveTheseFollowers(manager, moved.followers, duplicate.id);
  await putProvenanceBack(manager, moved.provenance, duplicate.id);
}

async function putStaysBack(
  manager: EntityManager,
  moved: Merge['moved'],
  keptId: string,
  duplicateId: string,
): Promise<void> {
  const now = await readStayRows(manager, [keptId]);
  await moveStays(
    manager,
    moved.stays.map(({ id }) => id),
    duplicateId,
  );
  for (const { id, before } of moved.joinedStays)
    await replaceStays(manager, id, now.filter(({ pairingId }) => pairingId === id).map(plain), before);
  await touchPairings(manager, [
    ...new Set([...moved.stays.map(({ pairingId }) => pairingId), ...moved.joinedStays.map(({ id }) => id)]),
  ]);
}
