import { api } from '../api/client.ts';
import { Intent } from '../api/intent.ts';
import { ProblemError, type ProblemPlace } from '../api/problem.ts';
import { undoOffer } from '../ui/undo.svelte.ts';
import type { ForeignSheet } from './foreign-words.ts';

/** Most characters of a sheet file that the service takes. */
const mostCharacters = 700_000;

/** A sheet of another register on its way in: checked as a whole without writing, then taken in. */
export class ForeignSheetImport {
  name = $state('');
  prefix = $state('');
  /** What would come in. */
  checked = $state.raw<ForeignSheet | null>(null);
  /** What came in. */
  taken = $state.raw<ForeignSheet | null>(null);
  problem = $state('');
  places = $state.raw<readonly ProblemPlace[]>([]);
  busy = $state(false);
  #file = '';
  readonly #intent = new Intent();

  /** Reads a file and checks it. */
  async take(file: File): Promise<void> {
    this.name = file.name;
    this.taken = null;
    this.#file = file.size > 4 * mostCharacters ? '' : await file.text();
    if (this.#file === '' || this.#file.length > mostCharacters) {
      this.checked = null;
      this.problem = `“${file.name}” is no provenance sheet: choose the signed file that came with the animals.`;
      return;
    }
    await this.check();
  }

  /** Checks again, under another prefix. */
  async check(): Promise<void> {
    if (this.#file === '') return;
    this.checked = await this.#run(() => api.ask<ForeignSheet>('/foreign-sheets?dryRun=true', this.#body()));
  }

  /** Takes the animals in. */
  async write(): Promise<void> {
    const taken = await this.#run(() => this.#intent.post<ForeignSheet>('/foreign-sheets', this.#body()));
    this.taken = taken;
    if (taken) undoOffer.offer(`What “${this.name}” tells came in.`, taken, () => (this.taken = null));
  }

  #body(): { file: string; prefix?: string } {
    const prefix = this.prefix.trim();
    return { file: this.#file, ...(prefix === '' ? {} : { prefix }) };
  }

  async #run(ask: () => Promise<ForeignSheet>): Promise<ForeignSheet | null> {
    this.busy = true;
    this.problem = '';
    this.places = [];
    try {
      return await ask();
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
      this.places = error.errors;
      return null;
    } finally {
      this.busy = false;
    }
  }
}
