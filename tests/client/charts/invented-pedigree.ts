import type {
  IndividualNode,
  PedigreeEdge,
  PedigreeNode,
  PedigreeView,
} from '../../../client/src/lib/charts/ancestors/pedigree-view.ts';

/** A small repeatable source of numbers from 0 to 1 (mulberry32), so that every run draws the same pedigree. */
export function repeatable(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export interface Wanted {
  seed: number;
  generations: number;
  /** Animals that breed in each generation; few make many loops. */
  breeders: number;
  founders: number;
  /** Part of the clutches with candidate parents. */
  uncertain?: number;
  /** Part of the dates that nobody wrote down. */
  undated?: number;
}

/**
 * An invented club line: founders of three sources and some of unknown origin, breeders of each generation paired at
 * random, candidates, undated clutches. The view holds the ancestors of the last animal.
 */
export function inventedPedigree(wanted: Wanted): PedigreeView {
  const random = repeatable(wanted.seed);
  const nodes = new Map<string, PedigreeNode>();
  const edges: PedigreeEdge[] = [];
  let above = founders(wanted, random, nodes, edges);
  for (let generation = 1; generation <= wanted.generations; generation++) {
    const count = generation === wanted.generations ? 1 : wanted.breeders;
    const level = Array.from({ length: count }, (_, index) =>
      breed(wanted, random, { nodes, edges, above, name: `g${generation}-${index}`, year: 2003 + generation * 1.9 }),
    );
    above = [...level, ...above.slice(0, Math.floor(wanted.breeders / 3))];
  }
  return ancestorsOnly(`g${wanted.generations}-0`, nodes, edges);
}

function animal(id: string, random: () => number, extra: Partial<IndividualNode>): IndividualNode {
  const sex = (['male', 'female'] as const)[random() < 0.5 ? 0 : 1];
  return {
    kind: 'individual',
    id,
    number: `${1000 + Math.floor(random() * 9000)}-${Math.floor(random() * 10)}`,
    code: id.toUpperCase(),
    sex,
    status: random() < 0.6 ? 'died' : 'alive',
    unknownOrigin: false,
    hasMoreAncestors: false,
    standings: [
      { standing: 'stated', share: 0.75 },
      { standing: 'unknown', share: 0.25 },
    ],
    inbreeding: 0,
    ...extra,
  };
}

function founders(
  wanted: Wanted,
  random: () => number,
  nodes: Map<string, PedigreeNode>,
  edges: PedigreeEdge[],
): string[] {
  const years = ['2001', '2003', null];
  years.forEach((year, index) =>
    nodes.set(`s${index}`, {
      kind: 'source',
      id: `s${index}`,
      title: year === null ? 'Purchase, no date' : `Import, about ${year}`,
      sourceKind: year === null ? 'purchase' : 'import',
      label: index === 2 ? null : 'Quebrada Tornasol',
      earliest: year === null ? null : `${year}-01-01`,
      latest: year === null ? null : `${year}-12-31`,
      standing: index === 2 ? 'unknown' : 'stated',
      baseKinship: 0,
    }),
  );
  return Array.from({ length: wanted.founders }, (_, index) => {
    const id = `f${index}`;
    const origin = index % 5;
    nodes.set(id, animal(id, random, { unknownOrigin: origin === 4 }));
    if (origin < 4) edges.push({ from: `s${Math.min(origin, 2)}`, to: id, kind: 'founder' });
    return id;
  });
}

interface Breeding {
  nodes: Map<string, PedigreeNode>;
  edges: PedigreeEdge[];
  above: string[];
  name: string;
  year: number;
}

function breed(wanted: Wanted, random: () => number, { nodes, edges, above, name, year }: Breeding): string {
  const pick = () => above[Math.floor(random() * above.length)] ?? '';
  const sires = [pick()];
  let dam = pick();
  while (dam === sires[0] && above.length > 1) dam = pick();
  const other = pick();
  if (random() < (wanted.uncertain ?? 0) && other !== sires[0] && other !== dam) sires.push(other);
  const dated = random() >= (wanted.undated ?? 0);
  const when = year + random() * 0.8;
  const month = String(1 + Math.floor((when % 1) * 12)).padStart(2, '0');
  const laid = `${Math.floor(when)}-${month}-11`;
  const clutch = `c-${name}`;
  nodes.set(clutch, {
    kind: 'clutch',
    id: clutch,
    title: dated ? `clutch of ${laid}` : 'clutch, no date',
    laid: dated ? laid : null,
    earliest: dated ? laid : null,
    latest: dated ? laid : null,
  });
  sires.forEach((from, index) => {
    const probability = sires.length === 1 ? 1 : index === 0 ? 0.75 : 0.25;
    edges.push({ from, to: clutch, kind: 'parent', role: 'sire', probability });
  });
  edges.push({ from: dam, to: clutch, kind: 'parent', role: 'dam', probability: 1 });
  edges.push({ from: clutch, to: name, kind: 'young' });
  nodes.set(name, animal(name, random, {}));
  return name;
}

/** Cuts a register down to what stands above one animal. */
export function ancestorsOnly(root: string, nodes: Map<string, PedigreeNode>, edges: PedigreeEdge[]): PedigreeView {
  const kept = new Set([root]);
  const queue = [root];
  for (let id = queue.pop(); id !== undefined; id = queue.pop())
    for (const edge of edges)
      if (edge.to === id && !kept.has(edge.from)) {
        kept.add(edge.from);
        queue.push(edge.from);
      }
  return {
    root,
    nodes: [...nodes.values()].filter((node) => kept.has(node.id)),
    edges: edges.filter((edge) => kept.has(edge.from) && kept.has(edge.to)),
    truncated: false,
  };
}
