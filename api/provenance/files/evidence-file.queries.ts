import type { EntityManager } from 'typeorm';
import { isId } from '../../platform/ids.ts';
import { seenIn } from '../../register/seen-records.ts';
import type { StoredFile } from './stored-file.entity.ts';

/** The file of a piece of evidence, if it has one. */
interface EvidenceFileRow {
  readonly hash: string | null;
  readonly mediaType: StoredFile['mediaType'] | null;
}

/** What lies under a piece of evidence (primary keys), or null where there is none or it may not be seen. */
export async function findEvidenceFile(manager: EntityManager, id: string): Promise<EvidenceFileRow | null> {
  if (!isId(id)) return null;
  const [row] = await manager.query<EvidenceFileRow[]>(
    `select f.hash, f.media_type as "mediaType" from evidence e left join stored_file f on f.hash = e.file_hash
     where e.id = $1 and ${seenIn.evidence('e')}`,
    [id],
  );
  return row ?? null;
}
