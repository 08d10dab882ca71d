import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { isLiving, sexOf } from '../../lineage/register-graph.ts';
import type { BreedingGroup } from './breeding-scheme.ts';
import type { HousedAnimal } from './standing-groups.queries.ts';

/** The groups of a line that can breed as they stand. */
export interface StandingGroups {
  /** By dense numbers. */
  readonly groups: readonly BreedingGroup[];
  /** Groups that cannot: with animals of one sex only, or a single one. */
  readonly idle: number;
}

/**
 * Sorts animals that live together into groups that breed. Unsexed animals stand for the sex that a group lacks, for either one where no
 * sex is known; beside a known male and female they are left out.
 */
export function standingGroups(snapshot: LineageSnapshot, housed: readonly HousedAnimal[]): StandingGroups {
  const byPairing = new Map<string, number[]>();
  for (const { pairingId, individualId } of housed) {
    const animal = snapshot.find(individualId);
    if (animal < 0 || !isLiving(snapshot.graph, animal)) continue; // changed just now
    byPairing.set(pairingId, [...(byPairing.get(pairingId) ?? []), animal]);
  }
  const groups = [...byPairing.values()].map((animals) => breedingGroup(snapshot, animals));
  const breeding = groups.filter((group) => group !== null);
  return { groups: breeding, idle: groups.length - breeding.length };
}

function breedingGroup({ graph }: LineageSnapshot, animals: readonly number[]): BreedingGroup | null {
  const of = (sex: 'male' | 'female' | 'unsexed'): number[] => animals.filter((animal) => sexOf(graph, animal) === sex);
  const [males, females, unsexed] = [of('male'), of('female'), of('unsexed')];
  if (males.length === 0 && females.length === 0) return unsexed.length < 2 ? null : { sires: [], dams: [], unsexed };
  const sires = males.length > 0 ? males : unsexed;
  const dams = females.length > 0 ? females : unsexed;
  return sires.length === 0 || dams.length === 0 ? null : { sires, dams, unsexed: [] };
}
