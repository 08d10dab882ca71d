import { headerOf, sheetColumns } from '$shared/register-sheet.ts';
import { word } from '../../words/word.ts';
import { counted } from '../../ui/figures.ts';
import type { DateOrder } from './date-order.ts';
import { readDate } from './date-order.ts';
import type { Reason, Target } from './guess-columns.ts';
import type { ColumnChoices } from './column-choices.svelte.ts';
import type { Delimiter } from './sheet-cells.ts';

/** Why a column was taken for what it is. */
export const reasonWords: Record<Reason, string> = {
  same: 'so it is called here',
  name: 'by its name',
  contents: 'by what stands in it',
  kept: 'as you chose',
  none: 'not known by its name',
};

/** What a column of a sheet can be, the two that every sheet has a use for first. */
export const targetOptions: readonly { value: Target; label: string }[] = [
  { value: 'own', label: 'kept in the notes' },
  { value: 'out', label: 'left out' },
  ...sheetColumns.map((column) => ({ value: column, label: headerOf(column) })),
];

const delimiterWords: Record<Delimiter, string> = { ',': word('commas'), ';': word('semicolons'), '\t': word('tabs') };

/** What was found out about a sheet, in a sentence: how many rows, what divides its cells, how its letters are written. */
export function readingInWords({ cells, rows }: ColumnChoices): string {
  return `${counted(rows, ['row', 'rows'])}, divided by ${delimiterWords[cells.delimiter]}, letters as ${cells.encoding}.`;
}

/** What a date of three numbers means in each order, as boxes to choose from. */
export function orderOptions(
  example: string,
  possible: readonly DateOrder[],
): { value: DateOrder; label: string; beside: string }[] {
  return possible.map((order) => ({ value: order, label: orderWords[order], beside: readDate(example, order) }));
}

const orderWords: Record<DateOrder, string> = {
  'day-first': 'day first',
  'month-first': 'month first',
  'year-first': 'year first',
};
