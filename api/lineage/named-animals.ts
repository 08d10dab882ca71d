import type { EntityManager } from 'typeorm';
import { InvalidProblem, NotFoundProblem, type ProblemError } from '../platform/problem.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { seenAmong } from './seen-animals.queries.ts';
import { say } from '../platform/say.ts';

/** An animal as a request names it, and where it stands in the request. */
export interface NamedAnimal {
  readonly text: string;
  /** JSON pointer. */
  readonly pointer: string;
}

/**
 * Dense numbers of the animals that a request names by id or by registry number.
 *
 * @throws InvalidProblem naming each that does not exist (or may not be seen) and each that is named twice
 */
export async function resolveAnimals(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  named: readonly NamedAnimal[],
): Promise<number[]> {
  const found = await findSeen(
    manager,
    snapshot,
    named.map(({ text }) => text),
  );
  const firstPointer = new Map<number, string>();
  const errors: ProblemError[] = [];
  const numbers = named.map(({ text, pointer }, place) => {
    const number = found[place] ?? -1;
    const first = firstPointer.get(number);
    if (number < 0) errors.push(unknownAnimal(text, pointer));
    else if (first !== undefined)
      errors.push({ pointer, detail: say`${text} is the same animal as the one at ${first}. Name each animal once.` });
    else firstPointer.set(number, pointer);
    return number;
  });
  if (errors.length > 0)
    throw new InvalidProblem(say`Some of the animals cannot be taken; each is named below.`, errors);
  return numbers;
}

/**
 * Dense numbers of animals that a request may name several times, by their names.
 *
 * @throws InvalidProblem naming each that does not exist or may not be seen
 */
export async function resolveMentioned(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  named: readonly NamedAnimal[],
): Promise<Map<string, number>> {
  const found = await findSeen(
    manager,
    snapshot,
    named.map(({ text }) => text),
  );
  const errors = named.flatMap(({ text, pointer }, place) =>
    (found[place] ?? -1) < 0 ? [unknownAnimal(text, pointer)] : [],
  );
  if (errors.length > 0)
    throw new InvalidProblem(say`Some of the animals cannot be taken; each is named below.`, errors);
  return new Map(named.map(({ text }, place) => [text, found[place] ?? -1]));
}

function unknownAnimal(text: string, pointer: string): ProblemError {
  return { pointer, detail: say`There is no animal with the id or registry number ${text}.` };
}

/**
 * Dense number of the animal that an address names by id or by registry number.
 *
 * @throws NotFoundProblem if there is none or it may not be seen
 */
export async function resolveAnimal(manager: EntityManager, snapshot: LineageSnapshot, text: string): Promise<number> {
  const [number = -1] = await findSeen(manager, snapshot, [text]);
  if (number < 0) throw new NotFoundProblem(say`animal`, text);
  return number;
}

/** Dense numbers of animals by their names; −1 for one that does not exist or may not be seen. */
async function findSeen(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  texts: readonly string[],
): Promise<number[]> {
  const numbers = texts.map((text) => snapshot.find(text));
  const idOf = (number: number): string => snapshot.idOf(number);
  const seen = await seenAmong(manager, numbers.filter((number) => number >= 0).map(idOf));
  return numbers.map((number) => (seen.has(idOf(number)) ? number : -1));
}

/** The entries of a list in a request, with their pointers. */
export function namedIn(list: readonly string[], name: string): NamedAnimal[] {
  return list.map((text, place) => ({ text, pointer: `/${name}/${place}` }));
}
