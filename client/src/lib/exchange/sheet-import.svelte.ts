import type { Visibility } from '$shared/vocabulary.ts';
import { ProblemError, type ProblemPlace } from '../api/problem.ts';
import type { ImportAnswer } from '../api/types.ts';
import { sendSheet } from '../api/upload.ts';

export type ImportStep = 'empty' | 'checking' | 'refused' | 'ready' | 'writing' | 'done';

/** A sheet on its way in: taken, checked as a whole without writing, then written as a whole. */
export class SheetImport {
  step = $state<ImportStep>('empty');
  name = $state('');
  sheet = $state.raw<Blob | null>(null);
  /** Share of the sheet that was sent; 1 while the service works on it. */
  sent = $state(0);
  answer = $state.raw<ImportAnswer | null>(null);
  /** What is wrong with the sheet as a whole, in a sentence. */
  problem = $state('');
  places = $state.raw<readonly ProblemPlace[]>([]);
  /** Who may see the animals and sources that the sheet makes. */
  visibility = $state<Visibility>('club');
  #stop: AbortController | undefined;

  /** Takes a dropped or chosen file, or pasted text, and checks it. */
  async take(sheet: Blob, name: string): Promise<void> {
    this.#clear();
    this.name = name;
    if (await isWorkbook(sheet)) {
      this.step = 'refused';
      this.problem = `“${name}” is a workbook. Save the sheet in it as CSV (UTF-8), and drop that file here.`;
      return;
    }
    this.sheet = sheet;
    await this.#run('checking', `/imports?dryRun=true&visibility=${this.visibility}`, 'ready');
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

  async #run(during: ImportStep, path: string, after: ImportStep): Promise<void> {
    if (!this.sheet) return;
    this.step = during;
    this.sent = 0;
    this.#stop = new AbortController();
    const { signal } = this.#stop;
    try {
      const onprogress = (share: number): void => void (this.sent = share);
      this.answer = await sendSheet<ImportAnswer>(path, this.sheet, { onprogress, signal });
      this.step = after;
    } catch (error) {
      if (signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.step = 'refused';
      this.problem = error.detail;
      this.places = error.errors;
    }
  }

  #clear(): void {
    this.step = 'empty';
    this.name = this.problem = '';
    this.sheet = this.answer = null;
    this.places = [];
  }
}

/** Workbooks (xlsx, ods) are zip archives and begin with their mark; old xls files with another. */
async function isWorkbook(sheet: Blob): Promise<boolean> {
  const [a, b] = new Uint8Array(await sheet.slice(0, 2).arrayBuffer());
  return (a === 0x50 && b === 0x4b) || (a === 0xd0 && b === 0xcf);
}
