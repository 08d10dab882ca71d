import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Clutch, Individual } from '../api/types.ts';
import { goUnlessElsewhere } from '../keys/opening.ts';
import { undoOffer } from '../ui/undo.svelte.ts';

/** Opens the young of the same clutch that comes after an animal, or before it; says so where there is none. */
export async function openMate(id: string, step: 1 | -1): Promise<void> {
  const open = goUnlessElsewhere();
  try {
    const animal = await api.get<Individual>(`/individuals/${id}`);
    const clutch = animal.clutch && !animal.clutch.isPrivate ? animal.clutch.id : null;
    if (clutch === null) {
      undoOffer.say('Of this animal no clutch is known that you may see.');
      return;
    }
    const young = (await api.get<Clutch>(`/clutches/${clutch}`)).young;
    const mate = young[young.findIndex((one) => one.id === id) + step];
    if (mate) await open(`/animals/${mate.id}`);
    else undoOffer.say(step === 1 ? 'This is the last of its clutch.' : 'This is the first of its clutch.');
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    undoOffer.say(error.detail);
  }
}
