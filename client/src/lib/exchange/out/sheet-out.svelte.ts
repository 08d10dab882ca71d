import { api } from '../../api/client.ts';
import { readFile } from '../../api/download.ts';
import type { Page } from '../../api/types.ts';
import { FormState } from '../../ui/form-state.svelte.ts';
import { saveFile } from '../../ui/save-file.ts';

export type Which = 'all' | 'mine' | 'line' | 'shown' | 'picked';

/** Which animals go out in a register sheet. */
export class SheetOut {
  which = $state<Which>('all');
  line = $state('');
  ancestors = $state(true);
  /** How many animals were asked for, without ancestors; null until it is known. */
  count = $state<number | null>(null);
  readonly form = new FormState(() => false);
  readonly #keeper: string;
  readonly #shown: string;
  readonly #picked: string;

  /**
   * @param keeper name of whoever exports
   * @param shown filters of the register that this page was opened from, as an address has them; else empty
   * @param picked animals chosen there, with commas; else empty
   */
  constructor(keeper: string, shown: string, picked: string) {
    this.#keeper = keeper;
    this.#shown = shown;
    this.#picked = picked;
    if (picked !== '') this.which = 'picked';
    else if (shown !== '') this.which = 'shown';
  }

  /** The filters of the service for what was chosen. */
  readonly filters = $derived.by(() => {
    if (this.which === 'mine') return `keeper=${encodeURIComponent(this.#keeper)}`;
    if (this.which === 'line') return `line=${encodeURIComponent(this.line)}`;
    if (this.which === 'picked') return `animals=${encodeURIComponent(this.#picked)}`;
    return this.which === 'shown' ? this.#shown : '';
  });

  /** Whether enough was said to write the sheet. */
  get isReady(): boolean {
    return this.which !== 'line' || this.line !== '';
  }

  /** Counts the animals that filters ask for, as long as these are the ones. */
  async countThem(filters = this.filters): Promise<void> {
    this.count = this.which === 'picked' ? this.#picked.split(',').length : null;
    if (!this.isReady || this.which === 'picked') return;
    const page = await this.form.run(() => api.get<Page<unknown>>(`/individuals?${filters}&limit=1&total=true`));
    if (filters === this.filters) this.count = page?.total ?? null;
  }

  /** Writes the sheet and hands it over. */
  async save(): Promise<void> {
    const ancestors = this.ancestors ? '&ancestors=true' : '';
    const file = await this.form.run(() => readFile(`/exports/register-sheet?${this.filters}${ancestors}`));
    if (file) saveFile(file, 'register sheet.csv');
  }
}
