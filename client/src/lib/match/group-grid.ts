import type { Group, GroupMember, Kinship, Ref, YoungInbreeding } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { percent, percentRange } from '../ui/figures.ts';
import { youngDepthInWords } from './mate-words.ts';

/** An animal at the edge of a grid, with what is told of it there. */
export type GridAnimal = Ref & Partial<Pick<GroupMember, 'keeper' | 'meanKinship'>>;

/** One pair of a group. */
export interface GroupCell {
  readonly male: GridAnimal;
  readonly female: GridAnimal;
  /** Null for an animal with itself. */
  readonly expected: number | null;
  /** In words where parents are uncertain, else empty. */
  readonly range: string;
  /** How far back the young would be known, in words. */
  readonly depth: string;
  /** Whether 0 rests on an animal of which no ancestor is recorded. */
  readonly isBlind: boolean;
  readonly isAbove: boolean;
  /** Whether both are in the best group. */
  readonly isPencilled: boolean;
  /** All of it in words. */
  readonly words: string;
}

/** Every sire with every dam, both sides least related first; an animal that is not sexed may stand on both sides. */
export interface GroupGrid {
  readonly males: readonly GridAnimal[];
  readonly females: readonly GridAnimal[];
  /** Rows of males. */
  readonly cells: readonly (readonly GroupCell[])[];
}

/**
 * Orders a group's pairs for the grid: each side begins with the best group, then goes by the mean F that its animals' young would have,
 * then by registry number.
 *
 * @param limit F above which a pair is marked, 0 to 1
 */
export function groupGrid(group: Group, limit: number): GroupGrid {
  const { males, females, rows, best } = group;
  const expected = (row: number, column: number): number => rows[row]?.inbreeding[column]?.expected ?? 0;
  const chosen = new Set([...(best?.males ?? []), ...(best?.females ?? [])].map(({ id }) => id));
  const rank = (animal: GroupMember | undefined, values: readonly number[]): number =>
    (animal && chosen.has(animal.id) ? -1 : 0) + mean(values);
  const sires = ordered(males, (row) =>
    rank(
      males[row],
      females.map((_, column) => expected(row, column)),
    ),
  );
  const dams = ordered(females, (column) =>
    rank(
      females[column],
      males.map((_, row) => expected(row, column)),
    ),
  );
  const cell = (row: number, column: number): GroupCell => {
    const [male, female] = [males[row] as GroupMember, females[column] as GroupMember];
    const young = rows[row]?.inbreeding[column] ?? null;
    return cellOf(male, female, young, limit, chosen.has(male.id) && chosen.has(female.id));
  };
  return {
    males: sires.map((row) => males[row] as GroupMember),
    females: dams.map((column) => females[column] as GroupMember),
    cells: sires.map((row) => dams.map((column) => cell(row, column))),
  };
}

/**
 * The grid of animals that live together: males down, females across, those that are not sexed on both sides, since any two of them may be the
 * pair. Both sides go by the mean F that the young would have, then by registry number.
 *
 * @param kinship of all of them with each other, with what their young would be
 * @param limit F above which a pair is marked, 0 to 1
 */
export function housedGrid(housed: readonly Ref[], kinship: Kinship, limit: number): GroupGrid {
  const at = new Map(kinship.individuals.map(({ id }, place) => [id, place]));
  const young = (one: Ref, other: Ref): YoungInbreeding | null =>
    kinship.young?.[at.get(one.id) ?? -1]?.[at.get(other.id) ?? -1] ?? null;
  const males = housed.filter(({ sex }) => sex !== 'female');
  const females = housed.filter(({ sex }) => sex !== 'male');
  const sorted = (animals: readonly Ref[], others: readonly Ref[]): Ref[] =>
    ordered(animals, (place) =>
      mean(
        others.flatMap((other) => {
          const animal = animals[place];
          return (animal && young(animal, other)?.expected) ?? [];
        }),
      ),
    ).map((place) => animals[place] as Ref);
  const [sires, dams] = [sorted(males, females), sorted(females, males)];
  const cell = (male: Ref, female: Ref): GroupCell => cellOf(male, female, young(male, female), limit, false);
  return { males: sires, females: dams, cells: sires.map((male) => dams.map((female) => cell(male, female))) };
}

/** The cell of a pair, by what its young would be; null for an animal with itself. */
function cellOf(
  male: GridAnimal,
  female: GridAnimal,
  young: YoungInbreeding | null,
  limit: number,
  isPencilled: boolean,
): GroupCell {
  if (!young) {
    const itself = { expected: null, range: '', depth: '', isBlind: false, isAbove: false, isPencilled: false };
    return { male, female, ...itself, words: `${referenceName(male)}: the same animal` };
  }
  const { expected, least, greatest, nothingKnown: isBlind } = young;
  const isAbove = expected > limit + 1e-9;
  const range = greatest - least > 1e-9 ? percentRange(least, greatest) : '';
  const parts = [
    isBlind ? 'nothing known' : `young ${percent(expected)} inbred`,
    range === '' ? '' : `${range} by who the parents were`,
    youngDepthInWords(young),
    isAbove ? 'over the limit' : '',
    isPencilled ? 'in the best group' : '',
  ];
  return {
    male,
    female,
    expected,
    range: range.replace('\u202f%', ''),
    depth: youngDepthInWords(young),
    isBlind,
    isAbove,
    isPencilled,
    words: `${referenceName(male)} and ${referenceName(female)}: ${parts.filter((part) => part !== '').join(', ')}`,
  };
}

/** Places of animals, the one of the least value first. */
function ordered(animals: readonly Ref[], value: (place: number) => number): number[] {
  const numberOf = (place: number): string => animals[place]?.number ?? '';
  return [...animals.keys()]
    .map((place) => ({ place, value: value(place) }))
    .sort(
      (one, other) =>
        one.value - other.value || numberOf(one.place).localeCompare(numberOf(other.place), 'en', { numeric: true }),
    )
    .map(({ place }) => place);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
