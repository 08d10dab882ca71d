import type { Sex } from '$shared/vocabulary.ts';
import { dateProblem } from '../ui/typed-dates.ts';

export interface YoungRow {
  code: string;
  sex: Sex;
  notes: string;
}

/** Froglets about to be raised from a clutch: so many alike, or one by one. */
export class YoungDraft {
  mode = $state<'count' | 'each'>('count');
  count = $state('');
  rows = $state<YoungRow[]>([{ code: '', sex: 'unsexed', notes: '' }]);
  hatched = $state('');
  outOfWater = $state('');
  /** Needed only where the parents do not tell it. */
  speciesId = $state('');

  /** How many will be written; 0 while nothing sensible is typed. */
  total = $derived(
    this.mode === 'each' ? this.rows.length : /^\d{1,4}$/.test(this.count.trim()) ? Number(this.count) : 0,
  );

  addRow(): void {
    this.rows.push({ code: nextCode(this.rows.at(-1)?.code ?? ''), sex: 'unsexed', notes: '' });
  }

  removeRow(row: YoungRow): void {
    this.rows = this.rows.filter((other) => other !== row);
  }

  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    if (this.mode === 'count' && this.total === 0) found['/count'] = 'Write how many froglets, in digits.';
    const hatched = dateProblem(this.hatched);
    if (hatched) found['/animals/0/hatched'] = hatched;
    const out = dateProblem(this.outOfWater);
    if (out) found['/animals/0/outOfWater'] = out;
    return found;
  }

  body(): { speciesId?: string; count?: number; animals?: Record<string, string>[] } {
    return { ...(this.speciesId === '' ? {} : { speciesId: this.speciesId }), ...this.#young() };
  }

  #young(): { count: number } | { animals: Record<string, string>[] } {
    const dates = {
      ...(this.hatched.trim() === '' ? {} : { hatched: this.hatched.trim() }),
      ...(this.outOfWater.trim() === '' ? {} : { outOfWater: this.outOfWater.trim() }),
    };
    if (this.mode === 'count')
      return Object.keys(dates).length === 0
        ? { count: this.total }
        : { animals: Array.from({ length: this.total }, () => dates) };
    return {
      animals: this.rows.map((row) => ({
        ...(row.code.trim() === '' ? {} : { code: row.code.trim() }),
        sex: row.sex,
        ...(row.notes.trim() === '' ? {} : { notes: row.notes.trim() }),
        ...dates,
      })),
    };
  }

  clear(): void {
    this.count = '';
    this.rows = [{ code: '', sex: 'unsexed', notes: '' }];
  }
}

/** The code after a code that ends in digits, `IH-97` after `IH-96`; empty after any other. */
export function nextCode(code: string): string {
  const match = /^(.*?)(\d+)$/.exec(code.trim());
  if (!match?.[2]) return '';
  return `${match[1] ?? ''}${String(Number(match[2]) + 1).padStart(match[2].length, '0')}`;
}
