import type { Figures, Group, GroupMember } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { percent, percentRange } from '../ui/figures.ts';

/** One pair of a group. */
export interface GroupCell {
  readonly male: GroupMember;
  readonly female: GroupMember;
  readonly expected: number;
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

/** Every sire with every dam, both sides least related first. */
export interface GroupGrid {
  readonly males: readonly GroupMember[];
  readonly females: readonly GroupMember[];
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
      words: cellWords({ male, female, figure, range, isBlind, isAbove, isPencilled }),
    };
  };
  return {
    males: sires.map((row) => males[row] as GroupMember),
    females: dams.map((column) => females[column] as GroupMember),
    cells: sires.map((row) => dams.map((column) => cell(row, column))),
  };
}

function cellWords(cell: {
  male: GroupMember;
  female: GroupMember;
  figure: number;
  range: string;
  isBlind: boolean;
  isAbove: boolean;
  isPencilled: boolean;
}): string {
  const { male, female, figure, range, isBlind, isAbove, isPencilled } = cell;
  const parts = [
    isBlind ? 'nothing known' : `young ${percent(figure)} inbred`,
    range === '' ? '' : `${range} by who the parents were`,
    isAbove ? 'over the limit' : '',
    isPencilled ? 'in the best group' : '',
  ];
  return `${referenceName(male)} and ${referenceName(female)}: ${parts.filter((part) => part !== '').join(', ')}`;
}

/** Places of animals, the one of the least value first. */
function ordered(animals: readonly GroupMember[], value: (place: number) => number): number[] {
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
