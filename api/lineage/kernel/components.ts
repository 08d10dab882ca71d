import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { sourcesWithKinship } from './sources.ts';

/**
 * Splits a sequence of clutches into connected components without changing the order within any of them.
 *
 * @param sequence all clutches with parents first, or null for 0, 1, 2, …
 */
export function groupByComponent(pedigree: Pedigree, sequence: Int32Array | null): PedigreeOrder {
  const clutches = pedigree.pairStart.length - 1;
  const root = joinClutches(pedigree);
  const componentOf = new Int32Array(clutches).fill(-1); // of a root: its number, given on first sight
  const sizes: number[] = [];
  for (let place = 0; place < clutches; place++) {
    const top = findRoot(root, sequence === null ? place : (sequence[place] as number));
    if ((componentOf[top] as number) < 0) componentOf[top] = sizes.push(0) - 1;
    const component = componentOf[top] as number;
    sizes[component] = (sizes[component] as number) + 1;
  }
  const componentStart = new Int32Array(sizes.length + 1);
  sizes.forEach((size, component) => (componentStart[component + 1] = (componentStart[component] as number) + size));
  const next = componentStart.slice();
  const ordered = new Int32Array(clutches);
  const positionOf = new Int32Array(clutches);
  for (let place = 0; place < clutches; place++) {
    const clutch = sequence === null ? place : (sequence[place] as number);
    const component = componentOf[findRoot(root, clutch)] as number;
    const position = next[component] as number;
    next[component] = position + 1;
    ordered[position] = clutch;
    positionOf[clutch] = position;
  }
  return { clutches: ordered, positionOf, componentStart };
}

/** Joins each clutch with the clutches its candidate parents hatched from, or that share a founder or a related source with it. */
function joinClutches(pedigree: Pedigree): Int32Array {
  const { clutchOf, sourceOf, pairStart, pairSire, pairDam } = pedigree;
  const clutches = pairStart.length - 1;
  const root = new Int32Array(clutches);
  for (let clutch = 0; clutch < clutches; clutch++) root[clutch] = clutch;
  const firstOfFounder = new Int32Array(clutchOf.length).fill(-1);
  const firstOfSource = new Int32Array(pedigree.baseKinship.length).fill(-1);
  const isNode = sourcesWithKinship(pedigree);
  const joinParent = (clutch: number, parent: number): void => {
    if (parent < 0) return;
    const from = clutchOf[parent] as number;
    const first = from >= 0 ? from : (firstOfFounder[parent] as number);
    if (first >= 0) {
      join(root, first, clutch);
      return;
    }
    firstOfFounder[parent] = clutch;
    const source = sourceOf[parent] as number;
    if (source < 0 || isNode[source] === 0) return;
    if ((firstOfSource[source] as number) < 0) firstOfSource[source] = clutch;
    else join(root, firstOfSource[source] as number, clutch);
  };
  for (let clutch = 0; clutch < clutches; clutch++)
    for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++) {
      joinParent(clutch, pairSire[pair] as number);
      joinParent(clutch, pairDam[pair] as number);
    }
  for (const { a, b, kinship } of pedigree.sourceKinships ?? []) {
    const first = firstOfSource[a] as number;
    const second = firstOfSource[b] as number;
    if (kinship > 0 && first >= 0 && second >= 0) join(root, first, second);
  }
  return root;
}

function join(root: Int32Array, first: number, second: number): void {
  const a = findRoot(root, first);
  const b = findRoot(root, second);
  if (a < b) root[b] = a;
  else root[a] = b;
}

function findRoot(root: Int32Array, clutch: number): number {
  let at = clutch;
  for (;;) {
    const above = root[at] as number;
    if (above === at) return at;
    const further = root[above] as number;
    root[at] = further; // halve the path for the next one who asks
    at = further;
  }
}
