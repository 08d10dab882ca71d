import { setImmediate as breathe } from 'node:timers/promises';
import type { MeasuredSet } from './kernel/set-measures.ts';
import type { SetDepthView } from './lineage-set.view.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { SetMembers } from './set-members.queries.ts';

/** How many animals are looked at before others get their turn: a few milliseconds. */
const AT_ONCE = 10_000;

/** A set as the kernel measures it, and what the snapshot says of its animals together. */
export interface SetAnimals {
  readonly set: MeasuredSet;
  readonly depth: SetDepthView;
  /** Whether the figures of all its animals follow every change of the register. */
  readonly isCurrent: boolean;
}

/** Dense numbers and years of the animals found; those that the snapshot knows to be gone since are left out. */
export async function numberMembers(
  snapshot: LineageSnapshot,
  found: SetMembers,
): Promise<{ members: Int32Array; years: Int16Array }> {
  const members = new Int32Array(found.count);
  const years = new Int16Array(found.count);
  let standing = 0;
  for (let place = 0; place < found.count; place++) {
    if (place % AT_ONCE === AT_ONCE - 1) await breathe();
    const [id, year] = found.at(place);
    const number = snapshot.find(id);
    if (number < 0) continue;
    members[standing] = number;
    years[standing++] = year;
  }
  return { members: members.slice(0, standing), years: years.slice(0, standing) };
}

/** Gathers what the snapshot says of each animal of a set, letting others have their turn meanwhile. */
export async function gatherSet(
  snapshot: LineageSnapshot,
  members: Int32Array,
  years: Int16Array,
): Promise<SetAnimals> {
  const count = members.length;
  const generationEquivalents = new Float64Array(count);
  let [sum, full, equivalents, greatest] = [0, 0, 0, 0];
  let isCurrent = true;
  for (let place = 0; place < count; place++) {
    if (place % AT_ONCE === AT_ONCE - 1) await breathe();
    const member = members[place] ?? -1;
    const reach = snapshot.depthOf(member);
    generationEquivalents[place] = reach.generationEquivalents;
    sum += reach.depth;
    full += reach.fullDepth;
    equivalents += reach.generationEquivalents;
    greatest = Math.max(greatest, reach.depth);
    isCurrent &&= snapshot.isCurrent(member);
  }
  const depth =
    count === 0
      ? { mean: null, greatest: null, full: null, generationEquivalents: null }
      : { mean: sum / count, greatest, full: full / count, generationEquivalents: equivalents / count };
  const apart = new Set(snapshot.graph.claims.individual.keys());
  return { set: { members, years, generationEquivalents, apart }, depth, isCurrent };
}
