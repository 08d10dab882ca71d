import type { EntityManager } from 'typeorm';
import { dateColumns } from '../../platform/dates.ts';
import { raiseTiers } from '../tiers.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import type { NewIndividualRequest } from './individual.dto.ts';
import { Individual } from './individual.entity.ts';

/** A new animal, the id it will have, and the rank in time of the clutch that it names. */
export type PlacedIndividual = NewIndividualRequest & { readonly id: string; readonly clutchTier: number | null };

/**
 * Writes new animals in one statement, each ranked above its clutch. Callers hold the lock of the lineage and have checked
 * that what the animals name is there.
 */
export async function insertIndividuals(
  manager: EntityManager,
  keeperId: string,
  animals: readonly PlacedIndividual[],
): Promise<void> {
  await manager.insert(
    Individual,
    animals.map(
      ({ sexedOn = null, hatched = null, outOfWater = null, died = null, clutchId = null, status, ...animal }) => ({
        ...animal,
        keeperId,
        status: status ?? (died === null ? ('alive' as const) : ('died' as const)),
        clutchId,
        tier: animal.clutchTier === null ? 0 : animal.clutchTier + 1,
        ...dateColumns('sexedOn', sexedOn),
        ...dateColumns('hatched', hatched),
        ...dateColumns('outOfWater', outOfWater),
        ...dateColumns('died', died),
      }),
    ),
  );
}

/**
 * The columns that give an existing animal another clutch, or none. Everything below the animal is raised first; 409 with the
 * members of the loop where the clutch is the animal's own offspring.
 */
export async function originOf(
  manager: EntityManager,
  individual: Individual,
  clutchId: string | null,
): Promise<Partial<Individual>> {
  if (clutchId === null) return { clutchId: null, clutchTier: null };
  const clutchTier = await tierOf(manager, clutchId);
  await raiseTiers(manager, { kind: 'individual', id: individual.id }, clutchTier + 1, [
    { kind: 'clutch', id: clutchId },
  ]);
  return { clutchId, clutchTier };
}

/** The rank in time of a clutch. */
export async function tierOf(manager: EntityManager, clutchId: string): Promise<number> {
  const clutch = await manager.findOneOrFail(Clutch, { where: { id: clutchId }, select: { id: true, tier: true } });
  return clutch.tier;
}
