import type { EntityManager } from 'typeorm';
import { dateBounds } from '../../shared/edtf.ts';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import { seen } from '../people/visibility.ts';
import { seenClutch } from '../register/seen-records.ts';
import type { ParentFacts } from '../register/warnings/facts.ts';

/** Those of these sources that stand and may be seen (primary key). */
export async function standingSources(manager: EntityManager, ids: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await manager.query<{ id: string }[]>(
    `select o.id from source o where o.id = any($1::uuid[]) and o.withdrawn_at is null and ${seen('source', 'o')}`,
    [ids],
  );
  return new Set(rows.map(({ id }) => id));
}

/** When those of these clutches were laid that stand and may be seen (primary key); null where that is not recorded. */
export async function standingClutches(
  manager: EntityManager,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string | null>> {
  const rows = await manager.query<{ id: string; laid: string | null }[]>(
    `select c.id, c.laid from clutch c where c.id = any($1::uuid[]) and c.withdrawn_at is null and ${seenClutch('c')}`,
    [ids],
  );
  return new Map(rows.map(({ id, laid }) => [id, laid]));
}

/** What is known of possible parents, as far as it decides whether they can be (primary key); those that may not be seen decide nothing. */
export async function readHatchingOf(manager: EntityManager, ids: readonly string[]): Promise<ParentFacts[]> {
  const rows = await manager.query<{ number: string; hatched: string | null }[]>(
    `select i.number::text, i.hatched from individual i where i.id = any($1::uuid[]) and ${seen('individual', 'i')} order by i.number`,
    [ids],
  );
  return rows.map(({ number, hatched }) => ({
    name: formatRegistryNumber(number),
    role: 'either',
    speciesId: null,
    lineId: null,
    line: null,
    hatched: hatched === null ? null : dateBounds(hatched),
    died: null,
    ranges: {},
  }));
}
