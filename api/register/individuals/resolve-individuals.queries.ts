import type { EntityManager } from 'typeorm';
import { formatRegistryNumber, parseRegistryNumber } from '../../../shared/registry-number.ts';
import type { Sex } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { say } from '../../platform/say.ts';

/** An animal that a request named by its id or its registry number, and where it did. */
export interface Named {
  readonly text: string;
  readonly pointer: string;
}

/** What a request may need to know of an animal that it named. */
export interface ResolvedIndividual {
  readonly id: string;
  readonly number: string;
  readonly sex: Sex;
  readonly tier: number;
}

/**
 * Finds animals by their ids or registry numbers (primary key, individual_number_unique), in the order named. 422 that names
 * each one that is not there (or may not be seen) or was withdrawn.
 */
export async function resolveIndividuals(
  manager: EntityManager,
  named: readonly Named[],
): Promise<ResolvedIndividual[]> {
  const keptNumber = `(select k.number::text from individual k where k.id = i.merged_into_id and ${seen('individual', 'k')}) as kept`;
  const ids = named.filter(({ text }) => isId(text)).map(({ text }) => text);
  const serials = named.flatMap(({ text }) => (isId(text) ? [] : (parseRegistryNumber(text) ?? [])));
  const rows = await manager.query<(ResolvedIndividual & { withdrawn: boolean; kept: string | null })[]>(
    `select id, number::text, sex, tier, withdrawn_at is not null as withdrawn, ${keptNumber} from individual i
       where id = any($1::uuid[]) and ${seen('individual', 'i')}
     union select id, number::text, sex, tier, withdrawn_at is not null, ${keptNumber} from individual i
       where number = any($2::bigint[]) and ${seen('individual', 'i')}`,
    [ids, serials],
  );
  const byId = new Map(rows.map((row) => [row.id, row]));
  const byNumber = new Map(rows.map((row) => [Number(row.number), row]));
  const errors: ProblemError[] = [];
  const found = named.flatMap(({ text, pointer }) => {
    const row = isId(text) ? byId.get(text.toLowerCase()) : byNumber.get(parseRegistryNumber(text) ?? -1);
    if (row && !row.withdrawn) return [row];
    errors.push({
      pointer,
      detail: row ? whyWithdrawn(text, row.kept) : reasonFor(text),
    });
    return [];
  });
  if (errors.length > 0)
    throw new InvalidProblem(say`Some animals are not in the register; each is named below.`, errors);
  return found;
}

function whyWithdrawn(text: string, kept: string | null): string {
  return kept === null
    ? say`The animal ${text} was withdrawn. Restore it first, or choose another.`
    : say`The record ${text} was merged into ${formatRegistryNumber(kept)}, which is the same animal. Name that one.`;
}

function reasonFor(text: string): string {
  if (isId(text)) return say`There is no animal with this id.`;
  if (parseRegistryNumber(text) !== null) return say`There is no animal with the registry number ${text}.`;
  return say`${text} is neither the id of an animal nor a registry number: the check character of a number must fit.`;
}
