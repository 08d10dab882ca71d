import type { ChartKey } from '$lib/keys/actions/chart.ts';
import type { LineKin } from './line-kin.ts';
import type { LineLayout } from './line-layout.ts';
import { sizes } from './line-sizes.ts';

/**
 * The animal that a key leads to: up to the likeliest parent, down to the young that one came from or the first one, aside to the
 * next of the family and, at its end, to the next family at about that time. Null where there is none.
 *
 * @param came the animal that one was at before the last step upwards
 */
export function stepFrom(
  layout: LineLayout,
  kin: LineKin,
  animal: number,
  key: ChartKey,
  came: number | null,
): number | null {
  if (key === 'stepUp') return kin.parentsOf(animal)[0]?.animal ?? null;
  if (key === 'stepDown') {
    const young = kin.familiesBelow(animal).flatMap((family) => [...kin.membersOf(family)]);
    return came !== null && young.includes(came) ? came : (young[0] ?? null);
  }
  if (key === 'stepLeft') return aside(layout, kin, animal, -1);
  return key === 'stepRight' ? aside(layout, kin, animal, 1) : null;
}

/** The first animal of the line in time, where a walk begins. */
export function firstOf({ families }: LineLayout): number | null {
  const order = families.id.map((_, family) => family);
  order.sort(
    (one, other) =>
      (families.y[one] ?? 0) - (families.y[other] ?? 0) || (families.x[one] ?? 0) - (families.x[other] ?? 0),
  );
  const [first] = order;
  return first === undefined ? null : (families.animals[families.start[first] ?? 0] ?? null);
}

function aside(layout: LineLayout, kin: LineKin, animal: number, step: 1 | -1): number | null {
  const family = layout.animals.family[animal] ?? -1;
  const members = kin.membersOf(family);
  const beside = members[members.indexOf(animal) + step];
  if (beside !== undefined) return beside;
  const next = familyBeside(layout, family, step);
  if (next < 0) return null;
  const others = kin.membersOf(next);
  return (step > 0 ? others[0] : others[others.length - 1]) ?? null;
}

/** The nearest family at that side; a step up or down counts three times, and families of another time are not beside. */
function familyBeside({ families: { x, y } }: LineLayout, family: number, step: 1 | -1): number {
  const [hereX, hereY] = [x[family] ?? 0, y[family] ?? 0];
  let [best, least] = [-1, Infinity];
  x.forEach((middle, other) => {
    const across = (middle - hereX) * step;
    const along = Math.abs((y[other] ?? 0) - hereY);
    if (across <= 1 || along > 2 * sizes.lane) return;
    const way = across + 3 * along;
    if (way < least) [best, least] = [other, way];
  });
  return best;
}
