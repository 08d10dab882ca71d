import type { EntityManager } from 'typeorm';
import type { IndividualQuery } from '../register/individuals/individual.dto.ts';
import { individualConditions } from '../register/individuals/individual-filters.queries.ts';

/** An animal of a set as the register has it: its id, and its year of hatching or 0. */
export type SetMember = readonly [id: string, year: number];

/** Year of hatching where the date, however vague, leaves no other. */
const year = `case when date_trunc('year', i.hatched_earliest) = date_trunc('year', i.hatched_latest)
  then extract(year from i.hatched_earliest)::integer else 0 end`;

/**
 * The animals that a list of the register would show under the same filters, in the order of their numbers: only those that whoever
 * asks may see. One text instead of a million rows, which would take the driver seconds.
 */
export async function findSetMembers(manager: EntityManager, query: IndividualQuery): Promise<SetMember[]> {
  const conditions = await individualConditions(manager, query);
  return readMembers(manager, conditions.sql, conditions.parameters);
}

/** The years of hatching of animals by their ids (primary key). */
export async function readHatchYears(manager: EntityManager, ids: readonly string[]): Promise<Map<string, number>> {
  return new Map(await readMembers(manager, 'i.id = any($1::uuid[])', [ids]));
}

async function readMembers(manager: EntityManager, where: string, parameters: unknown[]): Promise<SetMember[]> {
  const [row] = await manager.query<{ members: string | null }[]>(
    `select string_agg(i.id || ' ' || ${year}, ',' order by i.number) as members from individual i where ${where}`,
    parameters,
  );
  const text = row?.members ?? '';
  return text === '' ? [] : text.split(',').map((member) => [member.slice(0, 36), Number(member.slice(37))]);
}
