import type { EntityManager } from 'typeorm';
import { dateColumns } from '../../platform/dates.ts';
import { raiseTiers } from '../tiers.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import type { NewIndividualRequest } from './individual.dto.ts';
import { Individual } from './individual.entity.ts';

/** A new animal and the id it will have. */
export type IdentifiedIndividual = NewIndividualRequest & { readonly id: string };

/**
 * Writes new animals in one statement, each ranked above its clutch. Callers hold the lock of the lineage and have checked
 * that what the animals name is there.
 */
export async function insertIndividuals(
  manager: EntityManager,
  keeperId: string,
  animals: readonly IdentifiedIndividual[],
): Promise<void> {
  const tiers = new Map<string, number>();
  for (const clutchId of new Set(animals.map((animal) => animal.clutchId ?? null)))
    if (clutchId !== null) tiers.set(clutchId, await tierOf(manager, clutchId));
  await manager.insert(
    Individual,
    animals.map(
      ({ sexedOn = null, hatched = null, outOfWater = null, died = null, clutchId = null, status, ...animal }) => ({
        ...animal,
        keeperId,
        status: status ?? (died === null ? ('alive' as const) : ('died' as const)),
        ...placeAbove(clutchId, clutchId === null ? null : (tiers.get(clutchId) ?? null)),
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

async function tierOf(manager: EntityManager, clutchId: string): Promise<number> {
  const clutch = await manager.findOneOrFail(Clutch, { where: { id: clutchId }, select: { id: true, tier: true } });
  return clutch.tier;
}

function placeAbove(
  clutchId: string | null,
  clutchTier: number | null,
): Pick<Individual, 'clutchId' | 'clutchTier' | 'tier'> {
  return { clutchId, clutchTier, tier: clutchTier === null ? 0 : clutchTier + 1 };
}
