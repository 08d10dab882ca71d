import type { Visibility } from '$shared/vocabulary.ts';
import { ProblemError, type ProblemPlace } from '../api/problem.ts';
import type { ImportAnswer } from '../api/types.ts';
import { sendSheet } from '../api/upload.ts';
import { session } from '../people/session.svelte.ts';
import { sizeInWords } from '../ui/file-sizes.ts';
import { ColumnChoices } from './mapping/column-choices.svelte.ts';
import { ColumnMemory } from './mapping/column-memory.ts';
import { mappedSheet, refusedNumbers, refusedRows } from './mapping/mapped-sheet.ts';
import { largestRead, readCells } from './mapping/sheet-cells.ts';

export type ImportStep = 'empty' | 'reading' | 'mapping' | 'checking' | 'refused' | 'ready' | 'writing' | 'done';

/** A sheet on its way in: taken, its columns understood, checked as a whole without writing, then written as a whole. */
export class SheetImport {
  step = $state<ImportStep>('empty');
  name = $state('');
  /** What is sent: the sheet as it was taken, or with the register's columns, dates and words. */
  sheet = $state.raw<Blob | null>(null);
  /** What the columns are; null where the sheet is too large to be read here. */
  choices = $state.raw<ColumnChoices | null>(null);
  /** Rows that the keeper leaves out, since they were refused. */
  without = $state.raw<readonly number[]>([]);
  /** Share of the sheet that was sent; 1 while the service works on it. */
  sent = $state(0);
  answer = $state.raw<ImportAnswer | null>(null);
  /** What is wrong with the sheet as a whole, in a sentence. */
  problem = $state('');
  places = $state.raw<readonly ProblemPlace[]>([]);
  /** The connection broke while the sheet was written, so nobody here knows whether it was. */
  isUnsure = $state(false);
  /** The service did not answer; the same can be tried again. */
  isUnanswered = $state(false);
  /** Who may see the animals and sources that the sheet makes. */
  visibility = $state<Visibility>('club');
  #stop: AbortController | undefined;

  /** Takes a dropped or chosen file, or pasted text, and checks it, once it is clear what its columns are. */
  async take(sheet: Blob, name: string): Promise<void> {
    this.#clear();
    this.name = name;
    if (await isWorkbook(sheet)) {
      this.#refuse(`“${name}” is a workbook. Save the sheet in it as CSV, and drop that file here.`);
      return;
    }
    this.sheet = sheet;
    if (sheet.size > largestRead) return this.#check();
    this.step = 'reading';
    let choices: ColumnChoices;
    try {
      choices = new ColumnChoices(await readCells(sheet), new ColumnMemory(session.keeper?.id ?? ''));
    } catch {
      return this.#check(); // the service says where the quotation marks are wrong
    }
    this.choices = choices;
    if (choices.isPlain || choices.rows === 0) return this.#check();
    this.step = 'mapping';
  }

  /** Checks the sheet with its columns as they were chosen. */
  async check(): Promise<void> {
    const choices = this.choices;
    if (!choices || choices.faults.length > 0) return;
    choices.remember();
    this.sheet = mappedSheet(choices.cells, choices.mapping(this.without));
    await this.#check();
  }

  /** Goes back to the columns; nothing was written. */
  chooseColumns(): void {
    this.places = [];
    this.step = 'mapping';
  }

  /** The numbers of the rows that were refused; empty where something is wrong with the sheet itself. */
  readonly refused = $derived(this.choices ? refusedNumbers(this.choices.cells, this.places) : []);

  /** Leaves the refused rows out, and checks the others. */
  async leaveRowsOut(): Promise<void> {
    this.without = [...this.without, ...this.refused];
    await this.check();
  }

  /** The refused rows as a file, with what is wrong behind each; rows left out before stand in it no more. */
  refusedFile(): Blob | null {
    return this.choices && refusedRows(this.choices.cells, this.places);
  }

  /** The sheet's own name for a column that a problem names. */
  columnName = (header: string): string => this.choices?.nameOf(header) ?? header;

  /** Checks the sheet once more, as it was sent before. */
  async again(): Promise<void> {
    await this.#check();
  }

  /** Writes the checked sheet. */
  async write(): Promise<void> {
    if (this.step === 'ready') await this.#run('writing', `/imports?visibility=${this.visibility}`, 'done');
  }

  /** Puts the sheet away; nothing was written. */
  leave(): void {
    this.#stop?.abort();
    this.#clear();
  }

  #check(): Promise<void> {
    return this.#run('checking', `/imports?dryRun=true&visibility=${this.visibility}`, 'ready');
  }

  async #run(during: ImportStep, path: string, after: ImportStep): Promise<void> {
    if (!this.sheet) return;
    this.step = during;
    this.sent = 0;
    this.isUnsure = this.isUnanswered = false;
    this.#stop = new AbortController();
    const { signal } = this.#stop;
    try {
      const onprogress = (share: number): void => void (this.sent = share);
      this.answer = await sendSheet<ImportAnswer>(path, this.sheet, { onprogress, signal });
      this.step = after;
    } catch (error) {
      if (signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.#refuse(`${error.detail} ${this.#sizeNote()}`.trim(), error.errors);
      this.isUnanswered = error.status === 0;
      this.isUnsure = error.status === 0 && during === 'writing';
    }
  }

  #sizeNote(): string {
    if (!this.sheet || this.sheet.size <= largestRead) return '';
    return `Columns with other names can be chosen for sheets up to ${sizeInWords(largestRead)}; this one has ${sizeInWords(this.sheet.size)}.`;
  }

  #refuse(problem: string, places: readonly ProblemPlace[] = []): void {
    this.step = 'refused';
    this.problem = problem;
    this.places = places;
  }

  #clear(): void {
    this.step = 'empty';
    this.isUnsure = this.isUnanswered = false;
    this.name = this.problem = '';
    this.sheet = this.answer = this.choices = null;
    this.places = [];
    this.without = [];
  }
}

/** Workbooks (xlsx, ods) are zip archives and begin with their mark; old xls files with another. */
async function isWorkbook(sheet: Blob): Promise<boolean> {
  const [a, b] = new Uint8Array(await sheet.slice(0, 2).arrayBuffer());
  return (a === 0x50 && b === 0x4b) || (a === 0xd0 && b === 0xcf);
}
