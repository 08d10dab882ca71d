import type { Figures, Group, GroupMember, Kinship, Ref } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { percent, percentRange } from '../ui/figures.ts';

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
export function groupGrid(group: Group, figures: ReadonlyMap<string, Figures>, limit: number): GroupGrid {
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
  const isNothingKnown = ({ id }: GroupMember): boolean => figures.get(id)?.inbreeding.nothingKnown ?? false;
  const cell = (row: number, column: number): GroupCell => {
    const [male, female] = [males[row] as GroupMember, females[column] as GroupMember];
    const { least, greatest } = rows[row]?.inbreeding[column] ?? { least: 0, greatest: 0 };
    const figure = expected(row, column);
    const isBlind = figure < 1e-9 && (isNothingKnown(male) || isNothingKnown(female));
    const isAbove = figure > limit + 1e-9;
    const range = greatest - least > 1e-9 ? percentRange(least, greatest) : '';
    const isPencilled = chosen.has(male.id) && chosen.has(female.id);
    return {
      male,
      female,
      expected: figure,
      range: range.replace('\u202f%', ''),
      isBlind,
      isAbove,
      isPencilled,
      words: cellWords({ male, female, expected: figure, range, isBlind, isAbove, isPencilled }),
    };
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
 * @param kinship of all of them with each other
 * @param isUnknown whether nothing is recorded above an animal, by its id
 * @param limit F above which a pair is marked, 0 to 1
 */
export function housedGrid(
  housed: readonly Ref[],
  kinship: Kinship,
  isUnknown: (id: string) => boolean,
  limit: number,
): GroupGrid {
  const at = new Map(kinship.individuals.map(({ id }, place) => [id, place]));
  const expected = (one: Ref, other: Ref): number | null =>
    one.id === other.id ? null : (kinship.kinship[at.get(one.id) ?? -1]?.[at.get(other.id) ?? -1] ?? null);
  const males = housed.filter(({ sex }) => sex !== 'female');
  const females = housed.filter(({ sex }) => sex !== 'male');
  const sorted = (animals: readonly Ref[], others: readonly Ref[]): Ref[] =>
    ordered(animals, (place) =>
      mean(
        others.flatMap((other) => {
          const animal = animals[place];
          return (animal && expected(animal, other)) ?? [];
        }),
      ),
    ).map((place) => animals[place] as Ref);
  const [sires, dams] = [sorted(males, females), sorted(females, males)];
  const cell = (male: Ref, female: Ref): GroupCell => {
    const figure = expected(male, female);
    const isBlind = figure !== null && figure < 1e-9 && (isUnknown(male.id) || isUnknown(female.id));
    const facts = { isBlind, isAbove: (figure ?? 0) > limit + 1e-9, isPencilled: false, range: '' };
    return { male, female, expected: figure, ...facts, words: cellWords({ male, female, expected: figure, ...facts }) };
  };
  return { males: sires, females: dams, cells: sires.map((male) => dams.map((female) => cell(male, female))) };
}

function cellWords(cell: Omit<GroupCell, 'words'>): string {
  const { male, female, expected, range, isBlind, isAbove, isPencilled } = cell;
  if (expected === null) return `${referenceName(male)}: the same animal`;
  const parts = [
    isBlind ? 'nothing known' : `young ${percent(expected)} inbred`,
    range === '' ? '' : `${range} by who the parents were`,
    isAbove ? 'over the limit' : '',
    isPencilled ? 'in the best group' : '',
  ];
  return `${referenceName(male)} and ${referenceName(female)}: ${parts.filter((part) => part !== '').join(', ')}`;
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
