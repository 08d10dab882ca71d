import type { EntityManager } from 'typeorm';
import type { IndividualQuery } from '../register/individuals/individual.dto.ts';
import { individualConditions } from '../register/individuals/individual-filters.queries.ts';

/** An animal of a set as the register has it: its id, and its year of hatching or 0. */
export type SetMember = readonly [id: string, year: number];

/** An id of 36 letters and a year of four. */
const WIDTH = 40;

/**
 * Animals of a set as one text of equal parts: a million rows would take the driver seconds, and as many texts at once would
 * hold everybody else up.
 */
export class SetMembers {
  readonly count: number;
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
    this.count = text.length / WIDTH;
  }

  /** The animal at a place, 0 to count − 1. */
  at(place: number): SetMember {
    const from = place * WIDTH;
    return [this.#text.slice(from, from + 36), Number(this.#text.slice(from + 36, from + WIDTH))];
  }
}

/** Year of hatching where the date, however vague, leaves no other; four digits. */
const year = `case when date_trunc('year', i.hatched_earliest) = date_trunc('year', i.hatched_latest)
  then to_char(i.hatched_earliest, 'YYYY') else '0000' end`;

/**
 * The animals that a list of the register would show under the same filters, in the order of their numbers: only those that whoever
 * asks may see.
 */
export async function findSetMembers(manager: EntityManager, query: IndividualQuery): Promise<SetMembers> {
  const conditions = await individualConditions(manager, query);
  return readMembers(manager, conditions.sql, conditions.parameters);
}

/** The years of hatching of animals by their ids (primary key). */
export async function readHatchYears(manager: EntityManager, ids: readonly string[]): Promise<Map<string, number>> {
  const members = await readMembers(manager, 'i.id = any($1::uuid[])', [ids]);
  return new Map(Array.from({ length: members.count }, (_, place) => members.at(place)));
}

async function readMembers(manager: EntityManager, where: string, parameters: unknown[]): Promise<SetMembers> {
  const [row] = await manager.query<{ members: string | null }[]>(
    `select string_agg(i.id || ${year}, '' order by i.number) as members from individual i where ${where}`,
    parameters,
  );
  return new SetMembers(row?.members ?? '');
}
