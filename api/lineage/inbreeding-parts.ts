import { longTaskModule } from '../platform/long-task.ts';
import type { LongWork } from '../platform/long-work.ts';
import { ancestralDescent } from './kernel/ancestral-descent.ts';
import { ancestralInbreeding } from './kernel/ancestral-inbreeding.ts';
import { partialInbreeding, type PartialInbreeding } from './kernel/partial-inbreeding.ts';
import type { Pedigree } from './kernel/pedigree.ts';
import type { FounderShare } from './kernel/shares.ts';
import { founderInbreedingOf } from './kernel/sources.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { AncestralInbreedingView } from './measures.view.ts';
import type { PartialInbreedingInput } from './tasks/partial-inbreeding.task.ts';

/** Clutches of ancestors beyond which F is taken apart in a thread: some milliseconds. */
const HERE_MOST = 1500;
/** Ways of descent up to which all of them are counted: under a millisecond. Each clutch has two choices for a young at least. */
const WAYS_MOST = 2 ** 12;
const CLUTCHES_MOST = 6;

const task = longTaskModule<PartialInbreedingInput, PartialInbreeding>(
  './tasks/partial-inbreeding.task.ts',
  import.meta.url,
);

/**
 * The parts of an animal's F by origin, as shares by origin are told: founders of one source together with what the source's base
 * kinship gives. The largest first; they sum to F.
 *
 * @param clutches those of its ancestors and its own, parents first
 * @throws BusyProblem for an animal with very many ancestors while too many computations wait
 */
export async function inbreedingParts(
  work: LongWork,
  snapshot: LineageSnapshot,
  individual: number,
  clutches: Int32Array,
): Promise<FounderShare[]> {
  const { pedigree } = snapshot.graph;
  const pairs = snapshot.pairsOf(individual);
  if (pairs.length === 0) return ofFounder(pedigree, individual);
  if (snapshot.inbreedingOf(individual).expected === 0) return [];
  const above = clutches.slice(0, -1); // a copy: a view would take the whole array to the thread
  const parts =
    above.length > HERE_MOST
      ? await work.run(task, { pedigree, clutches: above, pairs })
      : partialInbreeding(pedigree, above, pairs);
  return byOrigin(pedigree, parts);
}

/** Ancestral inbreeding by the recursion, and by counting all ways of descent where they are few. */
export function ancestralInbreedingOf(
  { graph: { pedigree }, inbreeding }: LineageSnapshot,
  individual: number,
  clutches: Int32Array,
): AncestralInbreedingView {
  const recursion = ancestralInbreeding(pedigree, inbreeding, clutches).at(-1) ?? 0;
  const uncounted = { recursion, exact: null, oldInbreeding: null, newInbreeding: null };
  if (clutches.length > CLUTCHES_MOST) return uncounted;
  const counted = ancestralDescent(pedigree, inbreeding.order, individual, { exactUpTo: WAYS_MOST, samples: 0 });
  if (!counted.isExact) return uncounted;
  return {
    recursion,
    exact: counted.ancestral.value,
    oldInbreeding: counted.oldInbreeding.value,
    newInbreeding: counted.newInbreeding.value,
  };
}

function byOrigin(pedigree: Pedigree, { founders, sources, unknownParents }: PartialInbreeding): FounderShare[] {
  const bySource = new Map(sources);
  const parts: FounderShare[] = [];
  for (const [founder, share] of founders) {
    const source = pedigree.sourceOf[founder] ?? -1;
    if (source >= 0) bySource.set(source, (bySource.get(source) ?? 0) + share);
    else parts.push({ kind: 'individual', individual: founder, share });
  }
  for (const [source, share] of bySource) parts.push({ kind: 'source', source, share });
  for (const [clutch, share] of unknownParents) parts.push({ kind: 'unknown parent', clutch, share });
  return parts.filter(({ share }) => share > 0).sort((one, other) => other.share - one.share);
}

/** A founder is as inbred as its source says. */
function ofFounder(pedigree: Pedigree, individual: number): FounderShare[] {
  const share = founderInbreedingOf(pedigree, individual);
  return share > 0 ? [{ kind: 'source', source: pedigree.sourceOf[individual] ?? -1, share }] : [];
}
