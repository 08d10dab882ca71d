import { columnOf, dateColumns, type SheetColumn } from '$shared/register-sheet.ts';
import { isMostlyOf, understood } from './cell-values.ts';
import { looksLikeDate } from './date-order.ts';
import { bareHeading, guessByName } from './heading-words.ts';

/** What a column of a keeper's sheet becomes: a column of the register, a line of each animal's notes, or nothing. */
export type Target = SheetColumn | 'own' | 'out';

/** How a guess was come by. */
export type Reason = 'same' | 'name' | 'contents' | 'kept' | 'none';

export interface Guess {
  readonly target: Target;
  readonly reason: Reason;
}

/**
 * Guesses what each column is: as it was chosen before, by its name, or by what stands in it. No two columns get the same guess.
 *
 * @param kept choices of earlier sheets, by bare heading
 */
export function guessColumns(
  headings: readonly string[],
  cells: readonly (readonly string[])[],
  kept: ReadonlyMap<string, { readonly target: Target }>,
): Guess[] {
  const guesses: (Guess | null)[] = headings.map(() => null);
  const taken = new Set<Target>();
  const give = (at: number, target: Target, reason: Reason): void => {
    if (guesses[at] || taken.has(target)) return;
    guesses[at] = { target, reason };
    if (target !== 'own' && target !== 'out') taken.add(target);
  };
  headings.forEach((heading, at) => {
    const before = kept.get(bareHeading(heading))?.target;
    if (before !== undefined && heading !== '') give(at, before, 'kept');
  });
  const named = headings.flatMap((heading, at) => {
    const guess = heading === '' ? null : guessByName(heading);
    return guess ? [{ at, ...guess }] : [];
  });
  named.sort((a, b) => a.rank - b.rank || a.at - b.at);
  for (const { at, column } of named) give(at, column, columnOf(headings[at] ?? '') === null ? 'name' : 'same');
  byContents(cells, (at) => guesses[at] === null, taken, give);
  return guesses.map((guess) => guess ?? { target: 'own', reason: 'none' });
}

type Give = (at: number, target: Target, reason: Reason) => void;

function byContents(
  columns: readonly (readonly string[])[],
  isFree: (at: number) => boolean,
  taken: ReadonlySet<Target>,
  give: Give,
): void {
  const free = columns.map((_, at) => at).filter(isFree);
  const offer = (target: SheetColumn, fits: (cells: readonly string[]) => boolean): void => {
    if (taken.has(target)) return;
    const at = free.find((each) => isFree(each) && fits(writtenIn(columns[each])));
    if (at !== undefined) give(at, target, 'contents');
  };
  offer('species', (cells) => mostly(cells, (cell) => /^\p{Lu}\p{Ll}+ \p{Ll}{3,}(?: \p{Ll}+)?$/u.test(cell)));
  offer('sex', (cells) => isMostlyOf('sex', cells));
  offer('status', (cells) => isMostlyOf('status', cells));
  offer('sourceKind', (cells) => isMostlyOf('sourceKind', cells));
  offer('code', (cells) => cells.length === writtenMost(columns) && isAllDifferent(cells) && mostly(cells, isCodeLike));
  parentsByContents(columns, free.filter(isFree), give);
  // One date alone is likely when the animal hatched; of several nobody can tell which is which.
  const dates = free.filter((at) => isFree(at) && mostly(writtenIn(columns[at]), looksLikeDate));
  const [only] = dates;
  if (dates.length === 1 && only !== undefined && !dateColumns.some((column) => taken.has(column)))
    give(only, 'hatched', 'contents');
}

/** Columns whose cells name animals of the sheet itself are parents; the sex of those named says of which side. */
function parentsByContents(columns: readonly (readonly string[])[], free: readonly number[], give: Give): void {
  const own = columns.find((cells) => isCodes(cells));
  if (!own) return;
  const codes = new Set(own.map((cell) => cell.trim()));
  const named = free.filter(
    (at) => at !== columns.indexOf(own) && mostly(writtenIn(columns[at]), (cell) => codes.has(cell)),
  );
  const sexes = columns.find((cells) => isMostlyOf('sex', writtenIn(cells)));
  const sexOf = new Map(own.map((code, row) => [code.trim(), understood('sex', sexes?.[row] ?? '')]));
  for (const at of named) {
    const parents = writtenIn(columns[at]).map((code) => sexOf.get(code));
    const males = parents.filter((sex) => sex === 'male').length;
    const females = parents.filter((sex) => sex === 'female').length;
    if (males !== females) give(at, males > females ? 'sire' : 'dam', 'contents');
  }
}

const isCodes = (cells: readonly string[]): boolean => {
  const written = writtenIn(cells);
  return written.length > 0 && isAllDifferent(written) && mostly(written, isCodeLike);
};
const isCodeLike = (cell: string): boolean => cell.length <= 20 && /\d/.test(cell) && !looksLikeDate(cell);
const isAllDifferent = (cells: readonly string[]): boolean => new Set(cells).size === cells.length;
const writtenIn = (cells: readonly string[] | undefined): string[] =>
  (cells ?? []).map((cell) => cell.trim()).filter((cell) => cell !== '');
const writtenMost = (columns: readonly (readonly string[])[]): number =>
  Math.max(...columns.map((cells) => writtenIn(cells).length));
const mostly = (cells: readonly string[], fits: (cell: string) => boolean): boolean =>
  cells.length > 0 && cells.filter(fits).length >= 0.9 * cells.length;
