import type { EntityManager } from 'typeorm';
import type { SheetClaim, SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { dateColumns } from '../../platform/dates.ts';
import { newId } from '../../platform/ids.ts';
import { Claim } from '../../provenance/claims/claim.entity.ts';
import { Evidence } from '../../provenance/evidence/evidence.entity.ts';

/** A claim of a sheet and the record here that it is about. */
export interface ForeignClaim {
  readonly about: { readonly sourceId: string } | { readonly individualId: string };
  readonly claim: SheetClaim;
}

/**
 * Writes the claims of a sheet, stated by the other register, each with the sheet itself as a paper that waits for a registrar's review:
 * nothing counts as documented here because it did there. The journal tells of them with the import, as of all that it brings.
 */
export async function writeForeignClaims(
  manager: EntityManager,
  keeperId: string,
  registerName: string,
  sheet: Pick<SheetDocument, 'number' | 'issued'>,
  claims: readonly ForeignClaim[],
): Promise<void> {
  const issued = sheet.issued.slice(0, 10);
  for (const { about, claim } of claims) {
    const claimId = newId();
    await manager.insert(Claim, {
      id: claimId,
      keeperId,
      ...about,
      aspect: claim.aspect,
      value: claim.value,
      statedBy: registerName,
      ...dateColumns('statedOn', issued),
    });
    await manager.insert(Evidence, {
      id: newId(),
      keeperId,
      claimId,
      bearing: 'supports',
      kind: 'other-document',
      names: 'claim',
      reference: `provenance sheet ${sheet.number}`,
      issuedBy: registerName,
      ...dateColumns('dated', issued),
      notes: `There the claim stood as ${claim.standing}. ${claim.because}`.trim(),
    });
  }
}
