import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { seen } from '../../people/visibility.ts';
import type { ParentRole, Sex } from '../../../shared/vocabulary.ts';
import { newId } from '../../platform/ids.ts';
import { raiseTiers } from '../tiers.ts';
import { tiersOf } from '../tier.queries.ts';
import { ClutchCandidate } from './clutch-candidate.entity.ts';
import { ClutchPair } from './clutch-pair.entity.ts';
import { animalsOf, probabilities, type Candidate, type ParentAnimal, type Parents } from './parents.ts';

/** The candidates of both sides as they stand (clutch_candidate_once); a clutch with pairs has none. */
export async function readSides(manager: EntityManager, clutchId: string): Promise<Record<ParentRole, Candidate[]>> {
  const rows = await manager.query<
    {
      role: ParentRole;
      id: string | null;
      number: string;
      sex: Sex;
      tier: number;
      probability: number;
      reason: string | null;
      isSeen: boolean;
    }[]
  >(
    `select d.role, i.id, i.number::text, i.sex, i.tier, d.probability, d.reason, ${seen('individual', 'i')} as "isSeen"
     from clutch_candidate d left join individual i on i.id = d.individual_id where d.clutch_id = $1`,
    [clutchId],
  );
  const side = (role: ParentRole): Candidate[] =>
    rows
      .filter((row) => row.role === role)
      .map((row) => ({
        animal:
          row.id === null
            ? null
            : {
                id: row.id,
                number: row.isSeen ? formatRegistryNumber(row.number) : null,
                sex: row.sex,
                tier: row.tier,
              },
        weight: row.probability,
        reason: row.reason,
      }));
  return { sire: side('sire'), dam: side('dam') };
}

/**
 * Replaces the possible parents of a clutch, raising the clutch above them. 409 with the members of the loop where one of them
 * descends from the clutch. Callers hold the lock of the lineage.
 */
export async function writeParents(manager: EntityManager, clutchId: string, parents: Parents): Promise<void> {
  await manager.delete(ClutchCandidate, { clutchId });
  await manager.delete(ClutchPair, { clutchId });
  await raiseTiers(
    manager,
    { kind: 'clutch', id: clutchId },
    tierAbove(parents),
    animalsOf(parents).map((animal) => ({ kind: 'individual', id: animal.id })),
  );
  const [clutch] = await tiersOf(manager, 'clutch', [clutchId]);
  if (clutch) await insertParents(manager, clutchId, clutch.tier, parents);
}

/** The least rank in time of a clutch that these may be the parents of. */
export function tierAbove(parents: Parents): number {
  return 1 + Math.max(-1, ...animalsOf(parents).map((animal) => animal.tier));
}

/**
 * Writes the possible parents of a clutch that has none and ranks above them. All rows go in by one statement: the database checks that
 * their probabilities sum to 1 after each statement.
 */
export async function insertParents(
  manager: EntityManager,
  clutchId: string,
  clutchTier: number,
  parents: Parents,
): Promise<void> {
  if (parents.mode === 'pairs') {
    const odds = probabilities(parents.pairs);
    const rows = parents.pairs.map(({ a, b, reason }, index) => ({
      id: newId(),
      clutchId,
      clutchTier,
      ...orderedPair(a, b),
      probability: odds[index] ?? 0,
      reason,
    }));
    if (rows.length > 0) await manager.insert(ClutchPair, rows);
    return;
  }
  const rows = (['sire', 'dam'] as const).flatMap((role) => {
    const side = role === 'sire' ? parents.sires : parents.dams;
    const odds = probabilities(side);
    return side.map(({ animal, reason }, index) => ({
      id: newId(),
      clutchId,
      clutchTier,
      role,
      individualId: animal?.id ?? null,
      individualTier: animal?.tier ?? null,
      probability: odds[index] ?? 0,
      reason,
    }));
  });
  if (rows.length > 0) await manager.insert(ClutchCandidate, rows);
}

function orderedPair(a: ParentAnimal, b: ParentAnimal): Pick<ClutchPair, 'aId' | 'aTier' | 'bId' | 'bTier'> {
  const [first, second] = a.id < b.id ? [a, b] : [b, a];
  return { aId: first.id, aTier: first.tier, bId: second.id, bTier: second.tier };
}
