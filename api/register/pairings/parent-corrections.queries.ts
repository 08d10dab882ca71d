import type { EntityManager } from 'typeorm';
import { readClutchItems } from '../clutches/clutch.queries.ts';
import { readHousing } from '../clutches/housing.queries.ts';
import { correctionOf } from './parent-corrections.ts';
import type { ParentCorrectionView } from './parent-correction.view.ts';

/** How many corrections are listed at once; those after them follow once these are made. */
const mostCorrections = 200;

/**
 * The clutches of a pairing whose recorded parents the housing contradicts, newest first, at most `mostCorrections`; the rules
 * are those of `correctionOf` (clutch_pairing_index).
 */
export async function findParentCorrections(
  manager: EntityManager,
  pairingId: string,
): Promise<ParentCorrectionView[]> {
  const rows = await manager.query<{ id: string }[]>(
    `select id from clutch where pairing_id = $1 and withdrawn_at is null and laid is not null
     order by laid_earliest desc, id desc`,
    [pairingId],
  );
  const order = rows.map((row) => row.id);
  const clutches = new Map((await readClutchItems(manager, order)).map((clutch) => [clutch.id, clutch]));
  const housing = await readHousing(manager, pairingId);
  const corrections: ParentCorrectionView[] = [];
  for (const clutch of order.flatMap((id) => clutches.get(id) ?? [])) {
    const correction = correctionOf(clutch, housing);
    if (!correction) continue;
    const { id, title, version, laid, parentsFromPairing, parents } = clutch;
    corrections.push({ clutch: { id, title, version, laid, parentsFromPairing }, recorded: parents, ...correction });
    if (corrections.length === mostCorrections) break;
  }
  return corrections;
}
