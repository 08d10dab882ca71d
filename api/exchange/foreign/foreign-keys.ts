import { createHash } from 'node:crypto';
import { canonicalText } from '../../../shared/sheet/canonical-json.ts';
import type {
  SheetAncestor,
  SheetAnimal,
  SheetClutch,
  SheetDocument,
  SheetSource,
} from '../../../shared/sheet/sheet-document.ts';

/** An animal of a sheet, one that is sold or one of its ancestors. */
export type ToldAnimal = SheetAnimal | SheetAncestor;

/** All animals of a sheet by their refs. */
export function animalsOf({ animals, ancestors }: SheetDocument): Map<string, ToldAnimal> {
  return new Map([...animals, ...ancestors].map((animal) => [animal.ref, animal]));
}

/** By what an animal is known again: its number there; a private one by its place on the sheet, which no other sheet tells. */
export function animalKey({ number, ref }: Pick<ToldAnimal, 'number' | 'ref'>, sheetNumber: string): string {
  return number ?? `${sheetNumber} ${ref}`;
}

/**
 * By what a clutch is known again on another sheet: the day it was laid and its candidate parents with their odds. Null where it was laid
 * on a day that is not told, or where a parent is private: two clutches of one pair could not be told apart.
 */
export function clutchKey(clutch: SheetClutch, animals: ReadonlyMap<string, ToldAnimal>): string | null {
  const numbers = clutch.parents.map(({ animal }) => animals.get(animal)?.number ?? null);
  if (clutch.laid === null || clutch.isPrivate || numbers.length === 0 || numbers.includes(null)) return null;
  const parents = clutch.parents.map(({ as, probability }, place) => ({ number: numbers[place], as, probability }));
  parents.sort((one, other) => (String(one.number) + one.as < String(other.number) + other.as ? -1 : 1));
  return digestOf({ laid: clutch.laid, parents });
}

/** By what a source is known again: all that a sheet tells of how its animals came into captivity. Null for a private one. */
export function sourceKey(source: SheetSource): string | null {
  if (source.isPrivate) return null;
  const { title, kind, date, countryOfExport, labelAsReceived } = source;
  return digestOf({ title, kind, date, countryOfExport, labelAsReceived });
}

const digestOf = (value: unknown): string => createHash('sha256').update(canonicalText(value)).digest('hex');
