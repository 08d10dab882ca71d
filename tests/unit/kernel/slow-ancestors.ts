import type { Pedigree } from '../../../api/lineage/kernel/pedigree.ts';

/**
 * Marginal contributions of ancestors as Boichard, Maignel and Verrier (1997) describe them, two passes over everything for each
 * pick. Clutches must be numbered parents first; individuals founders first, then clutch by clutch.
 *
 * @returns the contributions in the order of the picks
 */
export function pickAncestorsSlowly(pedigree: Pedigree, members: Int32Array): number[] {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
  const animals = clutchOf.length;
  const clutches = pairStart.length - 1;
  // parents that nobody knows stand behind the animals, two a clutch
  const nodes = animals + 2 * clutches;
  const picked = new Set<number>();
  const parentsOf = (clutch: number): { node: number; weight: number }[] => {
    const found: { node: number; weight: number }[] = [];
    for (let pair = pairStart[clutch] ?? 0; pair < (pairStart[clutch + 1] ?? 0); pair++) {
      const weight = 0.5 * (pairProbability[pair] ?? NaN);
      const sire = pairSire[pair] ?? -1;
      const dam = pairDam[pair] ?? -1;
      found.push({ node: sire < 0 ? animals + 2 * clutch : sire, weight });
      found.push({ node: dam < 0 ? animals + 2 * clutch + 1 : dam, weight });
    }
    return found;
  };
  const clutchOfNode = (node: number): number => (node < animals ? (clutchOf[node] ?? -1) : -1);
  const shares: number[] = [];
  for (;;) {
    const through = new Float64Array(nodes);
    for (const member of members) through[member] = (through[member] ?? 0) + 1 / members.length;
    for (let node = animals - 1; node >= 0; node--) {
      const clutch = clutchOfNode(node);
      if (clutch < 0 || picked.has(node)) continue;
      for (const parent of parentsOf(clutch))
        through[parent.node] = (through[parent.node] ?? 0) + parent.weight * (through[node] ?? 0);
    }
    const explained = new Float64Array(nodes);
    const byOthers = new Float64Array(nodes);
    const order = [...Array.from({ length: 2 * clutches }, (_, at) => animals + at), ...clutchOf.keys()];
    for (const node of order) {
      const clutch = clutchOfNode(node);
      if (clutch >= 0)
        for (const parent of parentsOf(clutch))
          byOthers[node] = (byOthers[node] ?? 0) + parent.weight * (explained[parent.node] ?? 0);
      explained[node] = picked.has(node) ? 1 : (byOthers[node] ?? 0);
    }
    const isMember = new Set(members);
    let best = -1;
    let most = 1e-12;
    const candidates = [...clutchOf.keys()].filter((node) => clutchOfNode(node) < 0 || !isMember.has(node));
    for (const node of [...candidates, ...Array.from({ length: 2 * clutches }, (_, at) => animals + at)]) {
      const share = picked.has(node) ? 0 : (through[node] ?? 0) * (1 - (byOthers[node] ?? 0));
      if (share > most + 1e-12) [best, most] = [node, share];
    }
    if (best < 0) return shares;
    picked.add(best);
    shares.push(most);
  }
}
