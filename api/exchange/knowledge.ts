import type { DateBounds } from '../../shared/edtf.ts';
import type { RangesFacts } from '../register/warnings/facts.ts';
import type { Sex } from '../../shared/vocabulary.ts';

/** An animal that the registry holds already and a sheet may name as a parent. */
export interface KnownAnimal {
  readonly id: string;
  /** Registry number as written, `10704-4`. */
  readonly number: string;
  readonly code: string | null;
  readonly sex: Sex;
  /** Scientific name. */
  readonly species: string;
  readonly speciesId: string;
  /** Name of its line, or null. */
  readonly line: string | null;
  readonly lineId: string | null;
  /** Its rank in time, see `migrations/0001-register.ts`. */
  readonly tier: number;
  /** When it hatched, or null where that is not recorded. */
  readonly hatched: DateBounds | null;
  readonly died: DateBounds | null;
}

/** A clutch that the registry holds already; rows of a sheet may add young to it. */
export interface KnownClutch {
  readonly id: string;
  readonly tier: number;
  readonly laid: DateBounds | null;
  /** Species that its candidate parents and young share, or null. */
  readonly species: string | null;
}

/** A species or line that the registry holds already. */
export interface KnownName {
  readonly id: string;
  readonly isWithdrawn: boolean;
}

/** What the registry knows that bears on a sheet. All texts are compared ignoring case. */
export interface RegisterKnowledge {
  /** The animal that a cell means: by the code of the same keeper, else by registry number. */
  animal(name: string): KnownAnimal | undefined;
  /** The animal of the same keeper that has this code. */
  animalWithCode(code: string): KnownAnimal | undefined;
  /** The clutch of the same keeper that has this code. */
  clutch(code: string): KnownClutch | undefined;
  /** The id of the source of the same keeper that has this code. */
  source(code: string): string | undefined;
  /** The species of this name. */
  species(name: string): KnownName | undefined;
  /** The line of this name of a species of the registry. */
  line(speciesId: string, name: string): KnownName | undefined;
  /** The life-history ranges of a species of the registry. */
  ranges(speciesId: string): RangesFacts;
}

/** What is known where there is no registry: nothing. */
export const nothingKnown: RegisterKnowledge = {
  animal: () => undefined,
  animalWithCode: () => undefined,
  clutch: () => undefined,
  source: () => undefined,
  species: () => undefined,
  line: () => undefined,
  ranges: () => ({}),
};

/** What two codes or names have in common that count as the same. */
export function sameKey(text: string): string {
  return text.toLowerCase();
}
