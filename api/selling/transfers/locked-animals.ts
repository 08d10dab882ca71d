import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Status } from '../../../shared/vocabulary.ts';
import { ConflictProblem } from '../../platform/problem.ts';
import { lockPairingsOf } from '../../register/merges/merged-rows.queries.ts';
import { say } from '../../platform/say.ts';

/** An animal that is locked because it passes. */
export interface PassingAnimal {
  readonly id: string;
  /** Registry number with its check character. */
  readonly number: string;
  readonly code: string | null;
  readonly keeperId: string;
  readonly status: Status;
  readonly isWithdrawn: boolean;
  readonly isMerged: boolean;
}

/**
 * Locks animals until the transaction ends, after the pairings in which they live, in the order in which every change of them locks
 * (primary key). They come in the order of their ids.
 */
export async function lockAnimals(manager: EntityManager, ids: readonly string[]): Promise<PassingAnimal[]> {
  await lockPairingsOf(manager, ids);
  const rows = await manager.query<PassingAnimal[]>(
    `select id, number::text, code, keeper_id as "keeperId", status, withdrawn_at is not null as "isWithdrawn",
       merged_into_id is not null as "isMerged"
     from individual where id = any($1::uuid[]) order by id for update`,
    [ids],
  );
  return rows.map((row) => ({ ...row, number: formatRegistryNumber(row.number) }));
}

/** Locks the animals of a transfer (transfer_animal_pkey). */
export async function lockAnimalsOf(manager: EntityManager, transferId: string): Promise<PassingAnimal[]> {
  const rows = await manager.query<{ id: string }[]>(
    'select individual_id as id from transfer_animal where transfer_id = $1',
    [transferId],
  );
  return lockAnimals(
    manager,
    rows.map(({ id }) => id),
  );
}

/** Something about an animal that stands against passing it, or putting it back. */
export interface Obstacle {
  readonly individualId: string;
  readonly number: string;
  readonly detail: string;
}

/** Why an animal of `keeperId` cannot pass to anybody; null where it can. */
export function whyNotToGive(animal: PassingAnimal, keeperId: string): string | null {
  if (animal.isMerged) return say`Its record was merged into another of the same animal.`;
  if (animal.isWithdrawn) return say`Its record was withdrawn.`;
  if (animal.keeperId !== keeperId) return say`Another keeper keeps it now.`;
  return animal.status === 'alive' ? null : say`It is recorded as ${animal.status}.`;
}

/** Refuses with 409 what some animals stand against; the sentence names the first, `changed` all. */
export function refuse(found: readonly Obstacle[], what: string, remedy: string): void {
  const [first] = found;
  if (first) throw new ConflictProblem(say`${what} ${first.number}: ${first.detail} ${remedy}`, { changed: found });
}

/** 409 where not all animals of an offer can change hands any more. */
export function refuseUnlessGivable(animals: readonly PassingAnimal[], keeperId: string): void {
  const found = animals.flatMap((animal) => {
    const detail = whyNotToGive(animal, keeperId);
    return detail === null ? [] : [{ individualId: animal.id, number: animal.number, detail }];
  });
  refuse(
    found,
    say`Not all of these animals can change hands any more.`,
    say`Let the giver withdraw this offer and offer the others anew.`,
  );
}
