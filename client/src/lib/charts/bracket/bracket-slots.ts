import { parentLinks, readPedigree, type ParentLink, type PedigreeGraph } from '../ancestors/pedigree-graph.ts';
import type { IndividualNode, PedigreeView } from '../ancestors/pedigree-view.ts';

/** A candidate for a place of the bracket. */
export interface Candidate {
  animal: IndividualNode;
  /** Odds that it stands there, above 0, at most 1. */
  probability: number;
}

/** How far the pedigree of an animal is known. */
export interface KnownDepth {
  /** Generations back in which every ancestor is known, and in which any is. */
  full: number;
  most: number;
  /** It goes on above what was read. */
  goesOn: boolean;
}

/** One place of the bracket that something is written in. */
export interface BracketSlot {
  /** 1 is the animal; the sire of n is 2n, the dam 2n + 1. */
  number: number;
  /** 0 is the animal, 1 its parents. */
  generation: number;
  /** Whoever stands here; the likeliest where several may. Null: a parent that nobody knows. */
  animal: IndividualNode | null;
  /** Odds of the animal; 1 where it is certain. */
  probability: number;
  /** Others who may stand here, likeliest first. */
  others: Candidate[];
  /** Where the same animal is written with its parents; then nothing stands above it here. */
  see: number | null;
  depth: KnownDepth | null;
  /** What nobody knows is above, or the parents are recorded but lie beyond the bracket. */
  above: 'unknown' | 'more' | null;
  /** Title of the source it came from; null for young of a clutch. */
  source: string | null;
}

/**
 * The places of a bracket over so many generations. Each animal is written once with its parents, where it is nearest; where it comes
 * again, the place says where to see it. Of uncertain parents the likeliest leads on upwards, the others are named with their odds.
 */
export function bracketSlots(view: PedigreeView, generations: number): BracketSlot[] {
  const graph = readPedigree(view);
  const places = new Map<number, Place>([[1, { animal: view.root, probability: 1, others: [] }]]);
  const shownAt = new Map<string, number>();
  const depths = new Map<string, KnownDepth>();
  const slots: BracketSlot[] = [];
  for (let number = 1; number < 2 ** (generations + 1); number++) {
    const place = places.get(number);
    if (!place) continue;
    const animal = place.animal === null ? null : (graph.individuals.get(place.animal) ?? null);
    const see = animal === null ? null : (shownAt.get(animal.id) ?? null);
    const generation = Math.floor(Math.log2(number));
    const parents = animal === null || see !== null ? null : parentPlaces(graph, animal.id);
    if (animal !== null && see === null) shownAt.set(animal.id, number);
    if (parents && generation < generations) {
      places.set(2 * number, parents[0]);
      places.set(2 * number + 1, parents[1]);
    }
    const source = graph.sources.get(graph.sourceOf.get(animal?.id ?? '') ?? '');
    slots.push({
      number,
      generation,
      animal,
      probability: place.probability,
      others: place.others,
      see,
      depth: animal === null ? null : knownDepth(graph, depths, animal.id),
      above: animal === null || see !== null ? null : marked(graph, animal, generation === generations),
      source: source?.title ?? null,
    });
  }
  return slots;
}

interface Place {
  animal: string | null;
  probability: number;
  others: Candidate[];
}

function marked(graph: PedigreeGraph, animal: IndividualNode, isLast: boolean): 'unknown' | 'more' | null {
  if (animal.hasMoreAncestors || (isLast && parentLinks(graph, animal.id).length > 0)) return 'more';
  return animal.unknownOrigin ? 'unknown' : null;
}

/** Sire's place and dam's place; null where no parent is recorded. */
function parentPlaces(graph: PedigreeGraph, id: string): [Place, Place] | null {
  const links = parentLinks(graph, id);
  if (links.length === 0) return null;
  const either = links.filter(({ role }) => role === 'either');
  if (either.length > 0) return placesOfPairs(graph, id, either);
  const one = (role: 'sire' | 'dam'): Place =>
    placeOf(
      graph,
      links.filter((link) => link.role === role),
    );
  return [one('sire'), one('dam')];
}

function placeOf(graph: PedigreeGraph, links: readonly ParentLink[]): Place {
  const [first, ...others] = likeliestFirst(links);
  if (!first) return { animal: null, probability: 1, others: [] };
  return { animal: first.parent, probability: first.probability, others: candidates(graph, others) };
}

function likeliestFirst(links: readonly ParentLink[]): ParentLink[] {
  return [...links].sort((a, b) => b.probability - a.probability || (a.parent < b.parent ? -1 : 1));
}

function candidates(graph: PedigreeGraph, links: readonly ParentLink[]): Candidate[] {
  return likeliestFirst(links).flatMap(({ parent, probability }) => {
    const animal = graph.individuals.get(parent);
    return animal ? [{ animal, probability }] : [];
  });
}

/** Where sexes are not known the likeliest pair leads; whoever may be with one of the two stands in the place of the other. */
function placesOfPairs(graph: PedigreeGraph, id: string, links: readonly ParentLink[]): [Place, Place] {
  const pairs = [...(graph.clutches.get(graph.birthClutch.get(id) ?? '')?.pairs ?? [])].sort(
    (a, b) => b.probability - a.probability || (a.a + a.b < b.a + b.b ? -1 : 1),
  );
  const sorted = likeliestFirst(links);
  const [a = sorted[0]?.parent ?? '', b = sorted[1]?.parent ?? ''] = pairs[0] ? [pairs[0].a, pairs[0].b] : [];
  const isTurned = graph.individuals.get(a)?.sex === 'female' || graph.individuals.get(b)?.sex === 'male';
  const [first, second] = isTurned ? [b, a] : [a, b];
  const mates = new Set(pairs.flatMap((pair) => (pair.a === first ? [pair.b] : pair.b === first ? [pair.a] : [])));
  const led = (lead: string, others: readonly ParentLink[]): Place => {
    const own = links.find(({ parent }) => parent === lead);
    return { animal: own?.parent ?? null, probability: own?.probability ?? 1, others: candidates(graph, others) };
  };
  const rest = links.filter(({ parent }) => parent !== first && parent !== second);
  return [
    led(
      first,
      rest.filter(({ parent }) => !mates.has(parent)),
    ),
    led(
      second,
      rest.filter(({ parent }) => mates.has(parent)),
    ),
  ];
}

function knownDepth(graph: PedigreeGraph, known: Map<string, KnownDepth>, id: string): KnownDepth {
  const found = known.get(id);
  if (found) return found;
  const links = parentLinks(graph, id);
  const above = links.map((link) => knownDepth(graph, known, link.parent));
  const total = links.reduce((sum, { probability }) => sum + probability, 0);
  const isFull = total > 2 - 1e-6;
  const depth: KnownDepth = {
    full: isFull ? 1 + Math.min(...above.map(({ full }) => full)) : 0,
    most: above.length === 0 ? 0 : 1 + Math.max(...above.map(({ most }) => most)),
    goesOn: (graph.individuals.get(id)?.hasMoreAncestors ?? false) || above.some(({ goesOn }) => goesOn),
  };
  known.set(id, depth);
  return depth;
}
