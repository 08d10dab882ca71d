import type { EntityManager } from 'typeorm';
import { formatRegistryNumber, parseRegistryNumber } from '../../../shared/registry-number.ts';
import { authorize } from '../../people/permissions.ts';
import { seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { InvalidProblem, type ProblemError } from '../../platform/problem.ts';
import { readIssuable, type Issuable } from './sheet-facts.queries.ts';
import { say } from '../../platform/say.ts';

/** An animal that may go onto a sheet, as it was looked at. */
export type Chosen = Issuable;

/** How far ahead a sheet can be valid: an animal's lifetime and half of one. */
const LONGEST_YEARS = 30;

/** 422 where the last day of a sheet is none, over, or too far ahead. */
export function requireLastDay(validUntil: string | undefined, now = new Date()): void {
  if (validUntil === undefined) return;
  const pointer = '/validUntil';
  const time = Date.parse(`${validUntil}T00:00:00Z`);
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== validUntil)
    throw refused([{ pointer, detail: say`This is no day of the calendar.` }]);
  const latest = `${now.getUTCFullYear() + LONGEST_YEARS}${now.toISOString().slice(4, 10)}`;
  if (validUntil < now.toISOString().slice(0, 10) || validUntil > latest)
    throw refused([{ pointer, detail: say`Give a day from today to ${latest}, or leave it out.` }]);
}

/**
 * The animals that a request names by id or registry number, in its order. 422 for each that is not there (or may not be seen), is named
 * twice, was withdrawn, is private or is another keeper's than the first; 403 where they are not of whoever acts.
 */
export async function resolveChosen(manager: EntityManager, names: readonly string[]): Promise<Chosen[]> {
  if (names.length === 0) throw refused([{ pointer: '/animals', detail: say`Name at least one animal.` }]);
  const ids = await idsOf(manager, names);
  const found = new Map((await readIssuable(manager, [...new Set(ids.values())], false)).map((one) => [one.id, one]));
  const chosen: Chosen[] = [];
  const errors: ProblemError[] = [];
  for (const [place, name] of names.entries()) {
    const animal = found.get(ids.get(name) ?? '');
    const detail = animal ? whyNot(animal, chosen) : say`There is no animal with the id or registry number ${name}.`;
    if (detail !== null) errors.push({ pointer: `/animals/${place}`, detail });
    else if (animal) chosen.push(animal);
  }
  // a keeper is told first that an animal is not theirs, then what stands against it
  for (const id of ids.values()) {
    const animal = found.get(id);
    if (animal) authorize('change', 'individual', animal);
  }
  if (errors.length > 0) throw refused(errors);
  return chosen;
}

function whyNot(animal: Chosen, before: readonly Chosen[]): string | null {
  const number = formatRegistryNumber(animal.number);
  if (before.some(({ id }) => id === animal.id)) return say`${number} is named twice. Name each animal once.`;
  if (animal.isWithdrawn) return say`${number} was withdrawn. Restore it first, or leave it out.`;
  if (animal.visibility === 'private')
    return say`${number} is private, and a sheet is read by strangers. Let the club or anyone see it first.`;
  const [first] = before;
  return first && first.keeperId !== animal.keeperId
    ? say`${number} belongs to another keeper than the animals before it. Make a sheet for each keeper.`
    : null;
}

/** Holds the chosen animals until the transaction ends; false where one of them is not as it was looked at. */
export async function holdChosen(manager: EntityManager, chosen: readonly Chosen[]): Promise<boolean> {
  const now = await readIssuable(
    manager,
    chosen.map(({ id }) => id),
    true,
  );
  return chosen.every(({ id, version }) => now.some((one) => one.id === id && one.version === version));
}

/** Ids of the animals that may be seen, by the names that a request gives them (primary key, individual_number_unique). */
async function idsOf(manager: EntityManager, names: readonly string[]): Promise<Map<string, string>> {
  const rows = await manager.query<{ id: string; number: string }[]>(
    `select i.id, i.number::text from individual i where (i.id = any($1::uuid[]) or i.number = any($2::bigint[])) and ${seen('individual', 'i')}`,
    [names.filter(isId), names.map(parseRegistryNumber).filter((serial) => serial !== null)],
  );
  return new Map(
    names.flatMap((name) => {
      const serial = parseRegistryNumber(name);
      const row = rows.find(({ id, number }) => id === name.toLowerCase() || number === String(serial));
      return row ? [[name, row.id] as const] : [];
    }),
  );
}

const refused = (errors: readonly ProblemError[]): InvalidProblem =>
  new InvalidProblem(say`The sheet cannot be made so; see below.`, errors);
