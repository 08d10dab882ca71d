import { dateBounds } from '$shared/edtf.ts';
import type { PairingMember, Ref } from '../api/types.ts';

/**
 * Animals that may have been housed on a date: joined not certainly later, left not certainly earlier. A member without a date
 * of joining has been there since before anybody wrote it down. Animals that may not be seen are left out: their days are not told.
 */
export function housedOn(members: readonly PairingMember[], date: string): Ref[] {
  const day = date.trim() === '' ? null : dateBounds(date.trim());
  const housed = members.filter((member) => {
    if (member.individual.isPrivate) return false;
    if (!day) return member.left === null;
    const joined = member.joined === null ? null : dateBounds(member.joined);
    const left = member.left === null ? null : dateBounds(member.left);
    const isLater = joined?.earliest != null && day.latest !== null && joined.earliest > day.latest;
    const isEarlier = left?.latest != null && day.earliest !== null && left.latest < day.earliest;
    return !isLater && !isEarlier;
  });
  return eachOnce(housed.map((member) => member.individual));
}

/** The animals of a list in its order, each once. */
export function eachOnce(animals: readonly Ref[]): Ref[] {
  return [...new Map(animals.map((animal) => [animal.id, animal])).values()];
}

/** All couples of a group. Two animals known to be of one sex are none. */
export function couplesOf(group: readonly Ref[]): { a: Ref; b: Ref }[] {
  return group.flatMap((a, at) =>
    group
      .slice(at + 1)
      .filter((b) => a.sex === 'unsexed' || b.sex === 'unsexed' || a.sex !== b.sex)
      .map((b) => ({ a, b })),
  );
}
