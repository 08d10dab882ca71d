import fc from 'fast-check';
import { expect, it } from 'vitest';
import { commonAncestors } from '../../../client/src/lib/charts/ancestors/loops.ts';
import { readPedigree } from '../../../client/src/lib/charts/ancestors/pedigree-graph.ts';
import type { PedigreeView } from '../../../client/src/lib/charts/ancestors/pedigree-view.ts';
import { inventedPedigree } from './invented-pedigree.ts';

interface Parent {
  id: string;
  probability: number;
}

/**
 * Expected inbreeding of every animal with certain parents or listed candidates, by going through every possible choice
 * of true sires: for each, the plain recursion of kinship (Malécot 1948). Slow and obviously right.
 */
function expectedInbreeding(view: PedigreeView): Map<string, number> {
  const clutchOf = new Map(view.edges.filter((edge) => edge.kind === 'young').map((edge) => [edge.to, edge.from]));
  const sides = (clutch: string, role: string): Parent[] =>
    view.edges
      .filter((edge) => edge.kind === 'parent' && edge.to === clutch && edge.role === role)
      .map((edge) => ({ id: edge.from, probability: edge.probability ?? 1 }));
  const clutches = [...new Set(clutchOf.values())];
  const sum = new Map<string, number>();
  const choose = (at: number, sireOf: Map<string, string>, probability: number): void => {
    const clutch = clutches[at];
    if (clutch !== undefined) {
      for (const sire of sides(clutch, 'sire'))
        choose(at + 1, new Map(sireOf).set(clutch, sire.id), probability * sire.probability);
      return;
    }
    const parents = (id: string): [string, string] | null => {
      const own = clutchOf.get(id);
      return own === undefined ? null : [sireOf.get(own) ?? '', sides(own, 'dam')[0]?.id ?? ''];
    };
    for (const [id, value] of inbreedingOf(view, parents)) sum.set(id, (sum.get(id) ?? 0) + probability * value);
  };
  choose(0, new Map(), 1);
  return sum;
}

function inbreedingOf(view: PedigreeView, parents: (id: string) => [string, string] | null): Map<string, number> {
  const depths = new Map<string, number>();
  const depth = (id: string): number => {
    const own = parents(id);
    const value = depths.get(id) ?? (own ? 1 + Math.max(depth(own[0]), depth(own[1])) : 0);
    depths.set(id, value);
    return value;
  };
  const known = new Map<string, number>();
  const kinship = (a: string, b: string): number => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const old = known.get(key);
    if (old !== undefined) return old;
    const [young, other] = depth(a) >= depth(b) ? [a, b] : [b, a];
    const own = parents(young);
    let value: number;
    if (young === other) value = own ? (1 + kinship(own[0], own[1])) / 2 : 0.5;
    else value = own ? (kinship(own[0], other) + kinship(own[1], other)) / 2 : 0;
    known.set(key, value);
    return value;
  };
  const animals = view.nodes.filter((node) => node.kind === 'individual').map((node) => node.id);
  return new Map(
    animals.map((id) => {
      const own = parents(id);
      return [id, own ? kinship(own[0], own[1]) : 0];
    }),
  );
}

it('adds up, over all common ancestors, to the expected F of the animal, candidates and full siblings included', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 2, max: 5 }), (seed, generations) => {
      const view = inventedPedigree({ seed, generations, breeders: 3, founders: 4, uncertain: 0.3 });
      const inbreeding = expectedInbreeding(view);
      for (const node of view.nodes) if (node.kind === 'individual') node.inbreeding = inbreeding.get(node.id) ?? 0;
      const sum = commonAncestors(readPedigree(view)).reduce((total, one) => total + one.part, 0);
      expect(sum).toBeCloseTo(inbreeding.get(view.root) ?? NaN, 10);
    }),
    { numRuns: 60 },
  );
});
