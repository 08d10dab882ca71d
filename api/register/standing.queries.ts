import type { EntityManager } from 'typeorm';
import { seenIn } from './seen-records.ts';
import { InvalidProblem } from '../platform/problem.ts';
import { say } from '../platform/say.ts';

const words = {
  species: 'species',
  line: 'line',
  source: 'source',
  individual: 'animal',
  pairing: 'pairing',
  clutch: 'clutch',
  claim: 'claim',
  evidence: 'evidence',
} as const;

/**
 * Checks that a record which a request names is there, may be seen and is not withdrawn (primary key). 422 at `pointer` where not.
 * Callers hold the lock of the lineage, so that it cannot be withdrawn before they are done.
 */
export async function requireStanding(
  manager: EntityManager,
  table: keyof typeof words,
  id: string | null | undefined,
  pointer: string,
): Promise<void> {
  if (id === null || id === undefined) return;
  const [row] = await manager.query<{ withdrawn: boolean }[]>(
    `select withdrawn_at is not null as withdrawn from ${table} r where id = $1 and ${seenIn[table]('r')}`,
    [id],
  );
  if (row && !row.withdrawn) return;
  const detail = row
    ? say`This ${words[table]} was withdrawn. Restore it first, or choose another.`
    : say`There is no ${words[table]} with this id.`;
  throw new InvalidProblem(detail, [{ pointer, detail }]);
}

/**
 * Holds records until the transaction ends, so that nobody withdraws or merges them meanwhile, without holding up others who
 * only name them too (primary key). For changes that do not hold the lock of the lineage. 422 where one was withdrawn a moment ago.
 */
export async function holdStanding(
  manager: EntityManager,
  table: keyof typeof words,
  ids: readonly string[],
  pointerOf: (index: number) => string,
): Promise<void> {
  const rows = await manager.query<{ id: string; withdrawn: boolean }[]>(
    `select id, withdrawn_at is not null as withdrawn from ${table} where id = any($1::uuid[]) order by id for share`,
    [ids],
  );
  const errors = rows
    .filter(({ withdrawn }) => withdrawn)
    .map(({ id }) => ({
      pointer: pointerOf(ids.indexOf(id)),
      detail: say`This ${words[table]} was withdrawn a moment ago. Look again, then choose another or restore it.`,
    }));
  if (errors.length > 0) throw new InvalidProblem(say`Some records stand no longer; each is named below.`, errors);
}
