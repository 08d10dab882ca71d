import { InvalidProblem, type ProblemError } from '../platform/problem.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';

/** An animal as a request names it, and where it stands in the request. */
export interface NamedAnimal {
  readonly text: string;
  /** JSON pointer. */
  readonly pointer: string;
}

/**
 * Dense numbers of the animals that a request names by id or by registry number.
 *
 * @throws InvalidProblem naming each that does not exist and each that is named twice
 */
export function resolveAnimals(snapshot: LineageSnapshot, named: readonly NamedAnimal[]): number[] {
  const firstPointer = new Map<number, string>();
  const errors: ProblemError[] = [];
  const numbers = named.map(({ text, pointer }) => {
    const number = snapshot.find(text);
    const first = firstPointer.get(number);
    if (number < 0) errors.push({ pointer, detail: `There is no animal with the id or registry number ${text}.` });
    else if (first !== undefined)
      errors.push({ pointer, detail: `${text} is the same animal as the one at ${first}. Name each animal once.` });
    else firstPointer.set(number, pointer);
    return number;
  });
  if (errors.length > 0) throw new InvalidProblem('Some of the animals cannot be taken; each is named below.', errors);
  return numbers;
}

/** The entries of a list in a request, with their pointers. */
export function namedIn(list: readonly string[], name: string): NamedAnimal[] {
  return list.map((text, place) => ({ text, pointer: `/${name}/${place}` }));
}
