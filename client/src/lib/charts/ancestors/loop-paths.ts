import type { InbreedingLoop, InbreedingLoops, LoopStep } from '$lib/api/types.ts';
import { parentLinks, type PedigreeGraph } from './pedigree-graph.ts';

/** What of some loops stands in a chart. */
export interface LoopPaths {
  /** Animals and clutches, by their ids in the chart. */
  nodes: Set<string>;
  /** Keys of the streams ("from to"). */
  streams: Set<string>;
  /** Whether all of it is drawn; a chart ends after some generations. */
  isWhole: boolean;
}

/** One way up as the chart has it: the animals above the root, as many as are drawn. */
interface Way {
  animals: string[];
  isWhole: boolean;
  /** It ends in the clutch of the last one, of which nobody knows a parent. */
  endsInClutch?: boolean;
}

/** The loops of an answer in a chart, exactly these: their animals, clutches and streams. */
export function pathsOfLoops(
  graph: PedigreeGraph,
  answer: InbreedingLoops,
  loops: readonly InbreedingLoop[],
): LoopPaths {
  const paths: LoopPaths = { nodes: new Set(), streams: new Set(), isWhole: true };
  const hidden = hiddenIn(answer);
  for (const loop of loops) for (const way of waysOf(graph, hidden, loop)) add(paths, graph, way);
  return paths;
}

/** The animal of a chart in which a loop closes; null where it closes elsewhere, or is not drawn as far as that. */
export function topOfLoop(graph: PedigreeGraph, answer: InbreedingLoops, loop: InbreedingLoop): string | null {
  if (!answer.ancestors[loop.commonAncestor]?.ancestor) return null;
  const [one, other] = waysOf(graph, hiddenIn(answer), loop);
  const top = one.isWhole ? one : other;
  return top.isWhole ? (top.animals.at(-1) ?? null) : null;
}

/** Ids of an answer that stand for private animals: they mean another animal in each answer. */
function hiddenIn({ animals }: InbreedingLoops): Set<string> {
  return new Set(animals.filter(({ isPrivate }) => isPrivate).map(({ id }) => id));
}

function waysOf(graph: PedigreeGraph, hidden: ReadonlySet<string>, { first, second }: InbreedingLoop): [Way, Way] {
  const known = new Map<string, string>();
  const one = wayUp(graph, hidden, known, graph.root, first);
  one.animals.forEach((id, at) => {
    const name = first[at]?.animal;
    if (name && hidden.has(name)) known.set(name, id);
  });
  return [one, wayUp(graph, hidden, known, graph.root, second)];
}

/**
 * Follows a path up from an animal of the chart. A private animal is recognised by where it stands: as what, with what probability, and with whom
 * above it. Where two private ones are alike in all of that, either is followed: they are the same to whoever reads.
 */
function wayUp(
  graph: PedigreeGraph,
  hidden: ReadonlySet<string>,
  known: ReadonlyMap<string, string>,
  from: string,
  steps: readonly LoopStep[],
): Way {
  const [step, ...above] = steps;
  if (!step) return { animals: [], isWhole: true };
  if (step.animal === null) return { animals: [], isWhole: graph.birthClutch.has(from), endsInClutch: true };
  let best: Way = { animals: [], isWhole: false };
  for (const parent of parentsLike(graph, hidden, known, from, step)) {
    const way = wayUp(graph, hidden, known, parent, above);
    const found = { ...way, animals: [parent, ...way.animals] };
    if (found.isWhole) return found;
    if (found.animals.length > best.animals.length) best = found;
  }
  return best;
}

function parentsLike(
  graph: PedigreeGraph,
  hidden: ReadonlySet<string>,
  known: ReadonlyMap<string, string>,
  young: string,
  { animal, as, probability }: LoopStep,
): string[] {
  const links = parentLinks(graph, young);
  const name = animal ?? '';
  if (!hidden.has(name)) return links.filter(({ parent }) => parent === name).map(({ parent }) => parent);
  const met = known.get(name);
  return links
    .filter(({ parent, role }) => role === as && graph.individuals.get(parent)?.isPrivate === true)
    .filter(({ parent }) => met === undefined || parent === met)
    .filter((link) => Math.abs(link.probability - probability) < 1e-9)
    .map(({ parent }) => parent);
}

function add(paths: LoopPaths, graph: PedigreeGraph, { animals, isWhole, endsInClutch = false }: Way): void {
  const { nodes, streams } = paths;
  let below = graph.root;
  nodes.add(below);
  for (const animal of animals) {
    const clutch = graph.birthClutch.get(below) ?? '';
    nodes.add(clutch).add(animal);
    streams.add(`${animal} ${clutch}`).add(`${clutch} ${below}`);
    below = animal;
  }
  const clutch = graph.birthClutch.get(below);
  if (endsInClutch && clutch !== undefined) {
    nodes.add(clutch);
    streams.add(`${clutch} ${below}`);
  }
  paths.isWhole &&= isWhole;
}
