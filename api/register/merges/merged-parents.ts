import type { ParentRole } from '../../../shared/vocabulary.ts';

/** A row of the possible parents of a clutch: a candidate (with a role, `b` null) or a pair (without). */
export interface ParentRow {
  readonly id: string;
  readonly role: ParentRole | null;
  /** The candidate, null for a frog nobody knows; of a pair the one whose id comes first. */
  readonly a: string | null;
  readonly b: string | null;
  readonly probability: number;
  readonly reason: string | null;
}

/** Why two records cannot be one animal, as the parents of a clutch tell. */
export type ParentsObstacle = 'pair-of-both' | 'both-sides';

/** What stands against naming one animal in place of two among these parents, or null. */
export function obstacleIn(rows: readonly ParentRow[], keptId: string, duplicateId: string): ParentsObstacle | null {
  const both = [keptId, duplicateId];
  if (rows.some(({ role, a, b }) => role === null && both.includes(a ?? '') && both.includes(b ?? '')))
    return 'pair-of-both';
  const roleOf = (id: string): ParentRole | null => rows.find(({ role, a }) => role !== null && a === id)?.role ?? null;
  const [ofKept, ofDuplicate] = [roleOf(keptId), roleOf(duplicateId)];
  return ofKept !== null && ofDuplicate !== null && ofKept !== ofDuplicate ? 'both-sides' : null;
}

/** Whether both records are named among these parents. */
export function namesBoth(rows: readonly ParentRow[], keptId: string, duplicateId: string): boolean {
  return [keptId, duplicateId].every((id) => rows.some(({ a, b }) => a === id || b === id));
}

/**
 * The parents with the kept animal in place of the duplicate. Where both were named in one place their probabilities are added and
 * their reasons put side by side, so that the odds of every other animal stay as they were.
 */
export function mergedParents(rows: readonly ParentRow[], keptId: string, duplicateId: string): ParentRow[] {
  const merged = new Map<string, ParentRow>();
  const inOrder = [...rows].sort((one, other) => Number(names(one, duplicateId)) - Number(names(other, duplicateId)));
  for (const row of inOrder) {
    const renamed = withKept(row, keptId, duplicateId);
    const place = `${renamed.role ?? 'pair'} ${renamed.a ?? ''} ${renamed.b ?? ''}`;
    const other = merged.get(place);
    merged.set(place, other ? added(other, renamed) : renamed);
  }
  return [...merged.values()];
}

const names = ({ a, b }: ParentRow, id: string): boolean => a === id || b === id;

function withKept(row: ParentRow, keptId: string, duplicateId: string): ParentRow {
  const kept = (id: string | null): string | null => (id === duplicateId ? keptId : id);
  const [a, b] = [kept(row.a), kept(row.b)];
  return a !== null && b !== null && b < a ? { ...row, a: b, b: a } : { ...row, a, b };
}

function added(one: ParentRow, other: ParentRow): ParentRow {
  const reasons = [...new Set([one.reason, other.reason].filter((reason) => reason !== null))];
  return {
    ...one,
    probability: Math.min(1, one.probability + other.probability),
    reason: reasons.length === 0 ? null : reasons.join('; '),
  };
}

/** Whether two statements of parents say the same, whatever the ids of their rows. */
export function isSameRows(one: readonly ParentRow[], other: readonly ParentRow[]): boolean {
  const texts = (rows: readonly ParentRow[]): string =>
    rows
      .map(({ role, a, b, probability, reason }) => JSON.stringify([role, a, b, probability, reason]))
      .sort()
      .join();
  return texts(one) === texts(other);
}
