import { collectAncestry } from '../lineage/kernel/ancestry.ts';
import type { LineageSnapshot } from '../lineage/lineage-snapshot.ts';
import type { ClaimFacts } from '../provenance/claim-facts.ts';

/**
 * Whether something of the label of some animals is disputed: a claim on themselves, or one on any founder or its source that they may
 * descend from. One pass over their ancestry; none where nothing in the register is disputed.
 *
 * @returns 1 or 0 for each of `animals`
 */
export function carriesDispute({ graph, inbreeding }: LineageSnapshot, animals: readonly number[]): Uint8Array {
  const sources = disputedAmong(graph.claims.source);
  const individuals = disputedAmong(graph.claims.individual);
  if (sources.size === 0 && individuals.size === 0) return new Uint8Array(animals.length);
  const { pedigree } = graph;
  const ancestry = collectAncestry(pedigree, inbreeding.order, animals);
  const carries = Uint8Array.from(ancestry.animals, (animal, local) =>
    local < ancestry.founders && (individuals.has(animal) || sources.has(pedigree.sourceOf[animal] ?? -1)) ? 1 : 0,
  );
  for (let clutch = 0; clutch < ancestry.clutches.length; clutch++) {
    const parents = ancestry.parents.subarray(ancestry.parentStart[clutch], ancestry.parentStart[clutch + 1]);
    const young = carries.subarray(ancestry.youngStart[clutch], ancestry.youngStart[clutch + 1]);
    if (parents.some((parent) => carries[parent] === 1)) young.fill(1);
  }
  return Uint8Array.from(animals, (animal, place) =>
    carries[ancestry.asked[place] ?? -1] === 1 || individuals.has(animal) ? 1 : 0,
  );
}

function disputedAmong(claims: ReadonlyMap<number, readonly ClaimFacts[]>): Set<number> {
  const disputed = new Set<number>();
  for (const [number, facts] of claims) if (facts.some(({ standing }) => standing === 'disputed')) disputed.add(number);
  return disputed;
}
