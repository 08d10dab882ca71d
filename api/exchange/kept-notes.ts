import type { SheetColumn } from '../../shared/register-sheet.ts';
import { headerOf } from '../../shared/register-sheet.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { sourceColumns } from './planned-sources.ts';
import { say } from '../platform/say.ts';

/**
 * @param clutchOf clutch of each animal, −1 for none
 * @returns the notes of an animal: its own, and the cells for which the register has no place because the animal has no such origin
 * (a label on a row with parents, a date of laying on a row without any), as lines "column: value".
 */
export function notesOf(table: SheetTable, clutchOf: Int32Array, animal: number): string {
  let notes = table.text('notes', animal);
  for (const column of homelessColumns(clutchOf[animal] ?? -1)) {
    const text = table.text(column, animal);
    if (text !== '') notes += `${notes === '' ? '' : '\n'}${headerOf(column)}: ${text}`;
  }
  return notes;
}

/** Tells, once a column, that cells are kept as notes. */
export function warnOfKept(table: SheetTable, clutchOf: Int32Array, report: SheetReport): void {
  const kept = new Map<SheetColumn, { first: number; count: number }>();
  for (let animal = 0; animal < table.length; animal++)
    for (const column of homelessColumns(clutchOf[animal] ?? -1)) {
      if (table.textNumber(column, animal) === 0) continue;
      const before = kept.get(column);
      if (before) before.count += 1;
      else kept.set(column, { first: animal, count: 1 });
    }
  for (const [column, { first, count }] of kept)
    report.warn(
      first,
      column,
      column === 'laid'
        ? say`${count} animals have a date of laying and no parents or clutch, this one first. The date is kept in their notes.`
        : say`${count} animals that hatched from parents have "${headerOf(column)}", which tells of a source, this one first. It is kept in their notes.`,
    );
}

const ofSource: readonly SheetColumn[] = sourceColumns;
const ofClutch: readonly SheetColumn[] = ['laid'];

const homelessColumns = (clutch: number): readonly SheetColumn[] => (clutch >= 0 ? ofSource : ofClutch);
