import type { Pair } from './kernel/genome-flow.ts';
import { partialInbreeding } from './kernel/partial-inbreeding.ts';
import type { Pedigree } from './kernel/pedigree.ts';
import type { FounderShare } from './kernel/shares.ts';
import { founderInbreedingOf } from './kernel/sources.ts';

/**
 * The parts of an animal's F by origin, as shares by origin are told: founders of one source together with what the source's base
 * kinship gives. The largest first; they sum to F.
 *
 * @param clutches those of its ancestors and its own, parents first
 * @param pairs its candidate parents; none for a founder
 */
export function originParts(
  pedigree: Pedigree,
  individual: number,
  clutches: Int32Array,
  pairs: readonly Pair[],
): FounderShare[] {
  if (pairs.length === 0) return ofFounder(pedigree, individual);
  const { founders, sources, unknownParents } = partialInbreeding(pedigree, clutches.subarray(0, -1), pairs);
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
