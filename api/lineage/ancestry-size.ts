import type { LineageSnapshot } from './lineage-snapshot.ts';

/** Candidate pairs of all ancestors beyond which F is taken apart in a thread: some milliseconds. */
const HERE_MOST = 300;

/** Whether an animal has so few ancestors, and these so few candidate parents, that its F is taken apart while others wait. */
export function hasFewAncestors(snapshot: LineageSnapshot, individual: number): boolean {
  const { pairStart } = snapshot.graph.pedigree;
  let pairs = 0;
  for (const clutch of snapshot.flowTo(individual).clutches)
    pairs += (pairStart[clutch + 1] ?? 0) - (pairStart[clutch] ?? 0);
  return pairs <= HERE_MOST;
}
