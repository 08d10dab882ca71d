import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Individual } from '../individuals/individual.entity.ts';
import {
  bringClaimBack,
  findSameClaims,
  moveEvidence,
  moveEvidenceBack,
  notAcknowledgedOf,
  readClaimRow,
  withdrawInFavour,
  writeClaimColumns,
  type SameClaims,
} from './merged-provenance.queries.ts';
import { moveAbout, moveThese } from './merged-rows.queries.ts';
import type { FilledColumns, JoinedClaim, MovedProvenance } from './moved.ts';

/**
 * Columns of a claim that are filled from the same claim of the duplicate where they are all empty; those of a group mean something only
 * together. The words of a label are never altered: they stay readable in the claim that is withdrawn.
 */
const fillable = [
  ['stated_by'],
  ['stated_on', 'stated_on_earliest', 'stated_on_latest'],
  [
    'locality',
    'country_code',
    'state_province',
    'decimal_latitude',
    'decimal_longitude',
    'geodetic_datum',
    'coordinate_uncertainty_m',
    'georeferenced_by',
    'georeference_sources',
  ],
  ['notes'],
] as const;

/** Moves what is said and shown of a duplicate to the kept record. Callers hold the lock of the lineage and of both records. */
export async function moveProvenance(
  manager: EntityManager,
  kept: Individual,
  duplicate: Individual,
): Promise<MovedProvenance> {
  const joinedClaims: JoinedClaim[] = [];
  for (const same of await findSameClaims(manager, kept.id, duplicate.id))
    joinedClaims.push(await joinClaims(manager, same, kept));
  return {
    joinedClaims,
    claims: await moveAbout(manager, 'claim', duplicate.id, kept.id),
    photographs: await moveAbout(manager, 'photograph', duplicate.id, kept.id),
    acknowledgements: await moveAbout(
      manager,
      'flag_acknowledgement',
      duplicate.id,
      kept.id,
      notAcknowledgedOf('$2::uuid'),
    ),
  };
}

/** One statement about a record is one claim: that of the kept record goes on with the evidence of both. */
async function joinClaims(
  manager: EntityManager,
  { kept, duplicate }: SameClaims,
  animal: Individual,
): Promise<JoinedClaim> {
  const evidence = await moveEvidence(manager, duplicate.id, kept.id);
  const at = new Date().toISOString();
  const reason = `Recorded twice: the same claim of ${formatRegistryNumber(animal.number)} goes on, with the evidence of both.`;
  await withdrawInFavour(manager, duplicate.id, animal.id, { at, reason });
  const filled: Record<string, string | number> = {};
  for (const group of fillable) {
    if (group.some((column) => kept[column] !== null)) continue;
    for (const column of group) {
      const value = duplicate[column] ?? null;
      if (value !== null) filled[column] = value;
    }
  }
  await writeClaimColumns(manager, kept.id, filled);
  return { id: duplicate.id, keptId: kept.id, withdrawnAt: at, evidence, filled };
}

/** Gives the duplicate back what is said and shown of it, as it is by now. */
export async function putProvenanceBack(
  manager: EntityManager,
  moved: MovedProvenance | undefined,
  duplicateId: string,
): Promise<void> {
  if (moved === undefined) return;
  for (const joined of moved.joinedClaims) {
    await moveEvidenceBack(manager, joined);
    await bringClaimBack(manager, joined, duplicateId);
    await writeClaimColumns(manager, joined.keptId, emptied(joined.filled, await readClaimRow(manager, joined.keptId)));
  }
  await moveThese(manager, 'claim', moved.claims, duplicateId);
  await moveThese(manager, 'photograph', moved.photographs, duplicateId);
  await moveThese(manager, 'flag_acknowledgement', moved.acknowledgements, duplicateId);
}

/** What was filled becomes empty again; what somebody wrote since stays, with all of its group. */
function emptied(
  filled: FilledColumns,
  now: Readonly<Record<string, string | number | null>>,
): Readonly<Record<string, null>> {
  const untouched = fillable.filter((group) => group.every((column) => (filled[column] ?? null) === now[column]));
  return Object.fromEntries(
    untouched.flatMap((group) => group.filter((column) => column in filled).map((column) => [column, null])),
  );
}
