import type { PedigreeOrder } from '../lineage/kernel/order.ts';
import type { AnimalLookup } from './animal-lookup.ts';
import { nobody } from './animal-lookup.ts';
import type { ClutchesOfSheet } from './planned-clutches.ts';

/** Ranks in time, see `migrations/0001-register.ts`: a parent's is below its clutch's, a clutch's below its young's. */
export interface Tiers {
  /** Of each clutch of the sheet. */
  readonly ofClutch: Int32Array;
  /** Of each animal of the sheet; founders have 0. */
  readonly ofAnimal: Int32Array;
}

/** Ranks the clutches and animals of a sheet, beginning above the parents that the registry has already. */
export function planTiers({ clutches, clutchOf }: ClutchesOfSheet, order: PedigreeOrder, animals: AnimalLookup): Tiers {
  const ofClutch = new Int32Array(clutches.length);
  const tierOf = (animal: number): number => {
    if (animal === nobody) return 0;
    if (animal < 0) return animals.tierOfRegistered(animal);
    const clutch = clutchOf[animal] ?? -1;
    return clutch < 0 ? 0 : (ofClutch[clutch] ?? 0) + 1;
  };
  for (const clutch of order.clutches) {
    const planned = clutches[clutch];
    if (planned === undefined) continue;
    let highest = 0;
    for (const candidates of [planned.sires, planned.dams, planned.group])
      for (const { parent } of candidates) highest = Math.max(highest, tierOf(parent));
    ofClutch[clutch] = planned.existing?.tier ?? highest + 1;
  }
  return { ofClutch, ofAnimal: Int32Array.from(clutchOf, (_, animal) => tierOf(animal)) };
}
