import type { EntityManager } from 'typeorm';
import { readClutchItems } from '../clutches/clutch.queries.ts';
import type { ClutchItemView } from '../clutches/clutch.view.ts';
import { housedParents } from '../clutches/housed-parents.queries.ts';
import { animalsOf } from '../clutches/parents.ts';
import type { AnimalStatusView } from '../individuals/individual.view.ts';
import type { ParentCorrectionView } from './parent-correction.view.ts';
import type { PairingView } from './pairing.view.ts';

/**
 * The clutches of a pairing whose parents a corrected stay or laying date touches. A clutch whose parents came from the housing is
 * listed whenever the housing says otherwise now; one whose parents the keeper named, only where one of them was not there. Looks at
 * the clutches that the pairing shows, at most 200.
 */
export async function findParentCorrections(
  manager: EntityManager,
  pairing: PairingView,
): Promise<ParentCorrectionView[]> {
  const members = new Map(pairing.members.map((member) => [member.individual.id, member.individual]));
  const clutches = await readClutchItems(
    manager,
    pairing.clutches.map((clutch) => clutch.id),
  );
  const items = new Map(clutches.map((clutch) => [clutch.id, clutch]));
  const corrections: ParentCorrectionView[] = [];
  for (const { id } of pairing.clutches) {
    const clutch = items.get(id);
    if (!clutch || clutch.withdrawn !== null) continue;
    const recorded = recordedAnimals(clutch);
    const housed = new Set(animalsOf(await housedParents(manager, pairing.id, clutch.laid)).map((animal) => animal.id));
    const leaving = recorded.filter((animal) => !housed.has(animal.id));
    const known = new Set(recorded.map((animal) => animal.id));
    const joining = [...housed].flatMap((animal) => (known.has(animal) ? [] : (members.get(animal) ?? [])));
    if (leaving.length > 0 || (clutch.parentsFromPairing && joining.length > 0))
      corrections.push({ clutch, leaving, joining });
  }
  return corrections;
}

function recordedAnimals({ parents }: ClutchItemView): AnimalStatusView[] {
  const all =
    parents.mode === 'pairs'
      ? parents.pairs.flatMap((pair) => [pair.a, pair.b])
      : [...parents.sires, ...parents.dams].flatMap((candidate) => candidate.individual ?? []);
  return [...new Map(all.map((animal) => [animal.id, animal])).values()];
}
