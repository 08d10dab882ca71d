import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Clutch, ClutchParents, ParentCorrection } from '../api/types.ts';
import { FormState } from '../ui/form-state.svelte.ts';
import { undoOffer } from '../ui/undo.svelte.ts';

/** The clutches of a pairing whose recorded parents the housing contradicts, and what the keeper does about them. */
export class ParentCorrections {
  readonly form = new FormState(() => false);
  #items = $state.raw<ParentCorrection[]>([]);
  #questions = 0;
  #left = $state.raw<readonly string[]>([]);
  /** Those not yet taken, nor left as they are during this visit. */
  readonly items = $derived(this.#items.filter(({ clutch }) => !this.#left.includes(clutch.id)));

  /** Reads them anew; the answer to the latest question stands. */
  async read(pairingId: string): Promise<void> {
    const question = ++this.#questions;
    try {
      const { items } = await api.get<{ items: ParentCorrection[] }>(`/pairings/${pairingId}/parent-corrections`);
      if (question === this.#questions) this.#items = items;
    } catch (problem) {
      if (!(problem instanceof ProblemError)) throw problem;
      await this.form.take(problem);
    }
  }

  /** Leaves a clutch as it is recorded; it is offered again at the next visit. */
  leave({ clutch }: ParentCorrection): void {
    this.#left = [...this.#left, clutch.id];
    undoOffer.say(`The ${clutch.title} stays as it is recorded.`, () => {
      this.#left = this.#left.filter((id) => id !== clutch.id);
      return Promise.resolve();
    });
  }

  /** Takes the parents that are shown, if the clutch is still as it was shown; can be undone. */
  async take({ clutch, housed }: ParentCorrection, pairingId: string): Promise<void> {
    const path = `/clutches/${clutch.id}`;
    const taken = await this.form.run(() => api.patch<Clutch>(path, asRequest(housed), { version: clutch.version }));
    await this.read(pairingId);
    if (!taken) return;
    undoOffer.offer(`The parents of the ${clutch.title} are corrected.`, taken, () => this.read(pairingId));
  }
}

/** Recorded parents as a change of a clutch names them. */
function asRequest(parents: ClutchParents): object {
  if (parents.mode === 'pairs')
    return {
      pairs: parents.pairs.map(({ a, b, probability, reason }) => ({ a: a.id, b: b.id, weight: probability, reason })),
    };
  const side = (candidates: typeof parents.sires): object[] =>
    candidates.map(({ individual, probability, reason }) => ({
      individualId: individual?.id ?? null,
      weight: probability,
      reason,
    }));
  return { sires: side(parents.sires), dams: side(parents.dams) };
}
