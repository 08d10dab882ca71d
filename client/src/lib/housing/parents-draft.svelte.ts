import type { ClutchParents, Ref } from '../api/types.ts';
import { couplesOf, eachOnce } from './housed.ts';

/** One candidate on a side: an animal, or null for "some other animal". The weight is text while it is typed. */
export interface CandidateDraft {
  animal: Ref | null;
  weight: string;
  reason: string;
}

export interface PairDraft {
  a: Ref;
  b: Ref;
  weight: string;
  reason: string;
}

interface ParentsBody {
  sires?: { individualId: string | null; weight: number; reason?: string }[];
  dams?: { individualId: string | null; weight: number; reason?: string }[];
  pairs?: { a: string; b: string; weight: number; reason?: string }[];
}

export type Side = 'sires' | 'dams';

/**
 * Who may be the parents of a clutch: two lists of candidates, or pairs where the sexes are not known. Nothing on a side means
 * that this parent is unknown.
 */
export class ParentsDraft {
  mode = $state<'lists' | 'pairs'>('lists');
  sires = $state<CandidateDraft[]>([]);
  dams = $state<CandidateDraft[]>([]);
  pairs = $state<PairDraft[]>([]);

  /** Animals of the group that the pairs are made of, each once. */
  group = $derived(eachOnce(this.pairs.flatMap((pair) => [pair.a, pair.b])));

  /** The animals housed together: males may be sires, females dams; with one unsexed among them, any two may be the pair. */
  preset(housed: readonly Ref[]): void {
    const fresh = (animal: Ref): CandidateDraft => ({ animal, weight: '1', reason: '' });
    if (housed.some((animal) => animal.sex === 'unsexed') && housed.length > 1) {
      this.mode = 'pairs';
      this.sires = this.dams = [];
      this.pairs = couplesOf(housed).map((couple) => ({ ...couple, weight: '1', reason: '' }));
      return;
    }
    this.mode = 'lists';
    this.pairs = [];
    this.sires = housed.filter((animal) => animal.sex === 'male').map(fresh);
    this.dams = housed.filter((animal) => animal.sex === 'female').map(fresh);
  }

  /** Takes over what stands in the register. */
  read(parents: ClutchParents): void {
    this.mode = parents.mode;
    const draft = (candidate: {
      individual: Ref | null;
      probability: number;
      reason?: string | null;
    }): CandidateDraft => ({
      animal: candidate.individual,
      weight: String(candidate.probability),
      reason: candidate.reason ?? '',
    });
    this.sires = parents.mode === 'lists' ? parents.sires.map(draft) : [];
    this.dams = parents.mode === 'lists' ? parents.dams.map(draft) : [];
    this.pairs =
      parents.mode === 'pairs'
        ? parents.pairs.map((pair) => ({
            a: pair.a,
            b: pair.b,
            weight: String(pair.probability),
            reason: pair.reason ?? '',
          }))
        : [];
  }

  add(side: Side, animal: Ref | null): void {
    if (this[side].some((candidate) => candidate.animal?.id === animal?.id)) return;
    this[side].push({ animal, weight: '1', reason: '' });
  }

  remove(side: Side, candidate: CandidateDraft): void {
    this[side] = this[side].filter((other) => other !== candidate);
  }

  /** Leaves one candidate on a side, or all of the given ones with equal odds. */
  settle(side: Side, animals: readonly Ref[]): void {
    this[side] = animals.map((animal) => ({ animal, weight: '1', reason: '' }));
  }

  /** Adds an animal to a group that cannot be sexed: it may pair with each of the others. */
  addToGroup(animal: Ref, others: readonly Ref[]): void {
    for (const other of others)
      if (other.id !== animal.id) this.pairs.push({ a: other, b: animal, weight: '1', reason: '' });
  }

  removeFromGroup(animal: Ref): void {
    this.pairs = this.pairs.filter((pair) => pair.a.id !== animal.id && pair.b.id !== animal.id);
  }

  /** Odds of each row of a list in order, 0 to 1; null where a weight is no positive number. */
  static odds(rows: readonly { weight: string }[]): (number | null)[] {
    const weights = rows.map((row) => weightOf(row.weight));
    const sum = weights.reduce<number>((total, weight) => total + (weight ?? 0), 0);
    return weights.map((weight) => (weight === null || sum === 0 ? null : weight / sum));
  }

  /** What is wrong with the weights, by pointer. */
  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    for (const side of ['sires', 'dams', 'pairs'] as const)
      this[side].forEach((row, at) => {
        if (weightOf(row.weight) === null) found[`/${side}/${at}/weight`] = 'Write odds above 0, such as 2 or 0.7.';
      });
    return found;
  }

  /**
   * The parents as the service takes them: both sides said, so that what is shown is what is written; but a side with an animal that
   * may not be seen is left out, and so stays as it is: it could not be named.
   */
  body(): ParentsBody {
    const row = (draft: { weight: string; reason: string }): { weight: number; reason?: string } => ({
      weight: weightOf(draft.weight) ?? 1,
      ...(draft.reason.trim() === '' ? {} : { reason: draft.reason.trim() }),
    });
    if (this.mode === 'pairs' && this.group.some((animal) => animal.isPrivate)) return {};
    if (this.mode === 'pairs')
      return { pairs: this.pairs.map((pair) => ({ a: pair.a.id, b: pair.b.id, ...row(pair) })) };
    const side = (candidates: readonly CandidateDraft[]) =>
      candidates.map((candidate) => ({ individualId: candidate.animal?.id ?? null, ...row(candidate) }));
    const isSayable = (candidates: readonly CandidateDraft[]): boolean =>
      candidates.every((candidate) => !candidate.animal?.isPrivate);
    return {
      ...(isSayable(this.sires) ? { sires: side(this.sires) } : {}),
      ...(isSayable(this.dams) ? { dams: side(this.dams) } : {}),
    };
  }
}

function weightOf(text: string): number | null {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && Number.isFinite(value) && value > 0 ? value : null;
}
