import { api } from '../api/client.ts';
import { Intent } from '../api/intent.ts';
import { ProblemError } from '../api/problem.ts';
import type { Merge, MergeComparison, MergeField, MovedCounts } from '../api/types.ts';
import { counted } from '../ui/figures.ts';
import { FormState } from '../ui/form-state.svelte.ts';

/** Two records of one animal on their way to becoming one. */
export class MergeState {
  readonly form = new FormState((pointer) => pointer === '/reason');
  comparison = $state.raw<MergeComparison | null>(null);
  /** Fields that the kept record takes over from the duplicate. */
  take = $state<MergeField[]>([]);
  reason = $state('');
  readonly #intent = new Intent();
  #questions = 0;

  readonly differences = $derived((this.comparison?.fields ?? []).filter((field) => field.isDifferent));
  readonly alike = $derived((this.comparison?.fields ?? []).filter((field) => !field.isDifferent));
  readonly blocking = $derived((this.comparison?.obstacles ?? []).filter((obstacle) => obstacle.blocks));
  readonly isAllowed = $derived(this.comparison !== null && this.blocking.length === 0);

  /** Reads both records side by side; what the kept one does not know is proposed to be taken over. */
  async compare(kept: string, duplicate: string): Promise<void> {
    const question = ++this.#questions;
    this.comparison = null;
    if (kept === '' || duplicate === '') return;
    this.form.clear();
    let answer: MergeComparison;
    try {
      answer = await api.get<MergeComparison>('/merges/comparison', { query: { kept, duplicate } });
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      if (question === this.#questions) await this.form.take(error);
      return;
    }
    if (question !== this.#questions) return;
    this.comparison = answer;
    this.take = this.differences.filter((field) => field.kept === null).map((field) => field.field);
  }

  /** Merges; gives the answer, or undefined where it was refused. */
  async merge(): Promise<Merge | undefined> {
    const { comparison } = this;
    if (!comparison) return undefined;
    if (this.reason.trim() === '') {
      await this.form.refuse({ '/reason': 'Say how you know that both are one animal; it stays with both records.' });
      return undefined;
    }
    const { kept, duplicate } = comparison;
    return this.form.run(() =>
      this.#intent.post<Merge>('/merges', {
        keptId: kept.id,
        duplicateId: duplicate.id,
        take: this.take,
        reason: this.reason.trim(),
        keptVersion: kept.version,
        duplicateVersion: duplicate.version,
      }),
    );
  }
}

/** What moves, as a sentence: "2 clutches, 1 stay and 3 claims move to RV-61." */
export function movesInWords(moves: MovedCounts, name: string): string {
  const parts = [
    moves.clutches > 0 ? counted(moves.clutches, ['clutch', 'clutches']) : '',
    moves.stays > 0 ? counted(moves.stays, ['stay in pairings', 'stays in pairings']) : '',
    moves.remarks > 0 ? counted(moves.remarks, ['remark', 'remarks']) : '',
    moves.claims > 0 ? counted(moves.claims, ['claim', 'claims']) : '',
    moves.photographs > 0 ? counted(moves.photographs, ['photograph', 'photographs']) : '',
    moves.confirmations > 0 ? counted(moves.confirmations, ['confirmed warning', 'confirmed warnings']) : '',
    moves.acknowledgements > 0 ? counted(moves.acknowledgements, ['acknowledged mark', 'acknowledged marks']) : '',
    moves.records > 0 ? counted(moves.records, ['record merged before', 'records merged before']) : '',
  ].filter((part) => part !== '');
  const last = parts.pop();
  if (last === undefined) return `Nothing hangs on the duplicate; nothing moves to ${name}.`;
  const total = Object.values(moves).reduce((sum, count) => sum + count, 0);
  const what = parts.length > 0 ? `${parts.join(', ')} and ${last}` : last;
  return total === 1 ? `${what} moves to ${name}.` : `${what} move to ${name}.`;
}
