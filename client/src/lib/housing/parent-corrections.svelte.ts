import { api } from '../api/client.ts';
import type { Clutch, ClutchParents, ParentCorrection } from '../api/types.ts';
import { FormState } from '../ui/form-state.svelte.ts';
import { undoOffer } from '../ui/undo.svelte.ts';

/** The clutches of a pairing whose recorded parents and the housing do not agree, and what the keeper does about them. */
export class ParentCorrections {
  readonly form = new FormState(() => false);
  #items = $state.raw<ParentCorrection[]>([]);
  #left = $state.raw<readonly string[]>([]);
  /** Those not yet taken, nor left as they are during this visit. */
  readonly items = $derived(this.#items.filter(({ clutch }) => !this.#left.includes(clutch.id)));

  async read(pairingId: string): Promise<void> {
    await this.form.run(async () => {
      this.#items = (await api.get<{ items: ParentCorrection[] }>(`/pairings/${pairingId}/parent-corrections`)).items;
    });
  }

  /** Leaves a clutch as it is recorded; asked again at the next visit. */
  leave({ clutch }: ParentCorrection): void {
    this.#left = [...this.#left, clutch.id];
  }

  /** Takes the housed animals as the parents of a clutch; can be undone. */
  async take({ clutch }: ParentCorrection, pairingId: string): Promise<void> {
    const path = `/clutches/${clutch.id}`;
    const taken = await this.form.run(() =>
      api.patch<Clutch>(path, { parentsFromPairing: true }, { version: clutch.version }),
    );
    await this.read(pairingId);
    if (!taken) return;
    undoOffer.say(`The parents of the ${clutch.title} are corrected.`, async () => {
      await api.patch(path, asRequest(clutch.parents), { version: taken.version });
      await this.read(pairingId);
      undoOffer.say(`The parents of the ${clutch.title} are as they were.`);
    });
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
