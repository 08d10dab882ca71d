import type { EntityManager } from 'typeorm';
import { hidden } from '../../people/visibility.ts';
import { seenClutch } from '../seen-records.ts';
import type { ClutchItemView } from '../clutches/clutch.view.ts';
import { readClutchItems } from '../clutches/clutch.queries.ts';
import { readHousing } from '../clutches/housing.queries.ts';
import { animalsIn, correctionOf } from './parent-corrections.ts';
import type { ParentCorrectionView } from './parent-correction.view.ts';

/** How many corrections are listed at once; those after them follow once these are made. */
const mostCorrections = 200;

/**
 * The clutches of a pairing whose recorded parents the housing contradicts, newest first, at most `mostCorrections`; the rules
 * are those of `correctionOf` (clutch_pairing_index). Where an animal ever lived there that whoever asks may not see, nothing is
 * offered: a proposal without it would be wrong, and one with it would tell of its sex and its stay.
 */
export async function findParentCorrections(
  manager: EntityManager,
  pairingId: string,
): Promise<ParentCorrectionView[]> {
  if (await hasPrivateMember(manager, pairingId)) return [];
  const rows = await manager.query<{ id: string }[]>(
    `select id from clutch c where pairing_id = $1 and withdrawn_at is null and laid is not null and ${seenClutch('c')}
     order by laid_earliest desc, id desc`,
    [pairingId],
  );
  const order = rows.map((row) => row.id);
  const clutches = new Map((await readClutchItems(manager, order)).map((clutch) => [clutch.id, clutch]));
  const housing = await readHousing(manager, pairingId);
  const corrections: ParentCorrectionView[] = [];
  for (const clutch of order.flatMap((id) => clutches.get(id) ?? [])) {
    const correction = namesPrivate(clutch.parents) ? null : correctionOf(clutch, housing);
    if (!correction) continue;
    const { id, title, version, laid, parentsFromPairing, parents } = clutch;
    corrections.push({ clutch: { id, title, version, laid, parentsFromPairing }, recorded: parents, ...correction });
    if (corrections.length === mostCorrections) break;
  }
  return corrections;
}

/** Whether an animal lives or lived in a pairing that may not be seen (pairing_member_pairing_index). */
async function hasPrivateMember(manager: EntityManager, pairingId: string): Promise<boolean> {
  const found = await manager.query<unknown[]>(
    `select 1 from pairing_member m join individual i on i.id = m.individual_id
     where m.pairing_id = $1 and ${hidden('individual', 'i')} limit 1`,
    [pairingId],
  );
  return found.length > 0;
}

function namesPrivate(parents: ClutchItemView['parents']): boolean {
  return animalsIn(parents).some((animal) => animal.isPrivate);
}
