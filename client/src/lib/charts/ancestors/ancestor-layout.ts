import { animalItem, eggOffset, founderBoxes, linkItems, memberOffset, needsMark, type Item } from './chart-items.ts';
import { guessInBands } from './band-order.ts';
import { eventTimes, type EventTimes } from './event-times.ts';
import { clutchShare, generations, genomeShares } from './genome-shares.ts';
import { measures } from './measures.ts';
import { readPedigree, type PedigreeGraph } from './pedigree-graph.ts';
import type { ClutchNode, IndividualNode, PedigreeView, SourceNode } from './pedigree-view.ts';
import { placeItems } from './place-items.ts';
import { layoutInRows } from './row-layout.ts';
import { buildStreams, type Stream } from './streams.ts';
import { timeScale, type Need, type Tick, type TimeScale } from './time-scale.ts';

export interface PlacedAnimal {
  animal: IndividualNode;
  x: number;
  y: number;
  share: number;
  /** Fewest steps up from the root. */
  generation: number;
  /** Probabilities with which it is a candidate parent, in the order of its streams; empty when certain. */
  probabilities: number[];
  /** What stands above the symbol. */
  above: 'unknown' | 'more' | null;
}

export interface PlacedEgg {
  clutch: ClutchNode;
  x: number;
  y: number;
  share: number;
  /** True when some part of the parents is not known: a "?" stands beside the egg. */
  parentsUnknown: boolean;
}

export interface Bracket {
  source: SourceNode;
  x: number;
  right: number;
  y: number;
  /** X of each founder that hangs from the bracket. */
  legs: number[];
}

export interface AncestorLayout {
  width: number;
  height: number;
  animals: PlacedAnimal[];
  eggs: PlacedEgg[];
  brackets: Bracket[];
  streams: Stream[];
  ticks: Tick[];
  /** A large pedigree stands in rows, each what happened between two times; else everything hangs at its own date. */
  inRows: boolean;
  graph: PedigreeGraph;
}

/** Most animals that hang each at its own date; more would spread over a chart that nobody can follow. */
const freeMost = 48;

/**
 * Lays out the ancestors of one animal: time runs down, each animal stands once, streams are as wide as their expected part in the
 * root's genome. Up to 48 animals hang at their true dates; more stand in rows by time, as many side by side as keeps the whole in a
 * good shape. Pure and deterministic: the same pedigree gives the same picture, in whatever order its nodes come. `leastWidth` (px) is
 * filled when the pedigree is narrower.
 */
export function layoutAncestors(view: PedigreeView, leastWidth = 0): AncestorLayout {
  const graph = readPedigree(view);
  const shares = genomeShares(graph);
  const times = eventTimes(graph);
  if (graph.individuals.size > freeMost) {
    const { items, itemOf, links, ticks, width, height } = layoutInRows(graph, shares, times, leastWidth);
    const streams = buildStreams(shares, items, links);
    return {
      width,
      height,
      animals: placeAnimals(graph, shares, itemOf, streams),
      eggs: items.flatMap((item) => placeEgg(graph, shares, item)),
      brackets: bracketsInRows(graph, items),
      streams,
      ticks,
      inRows: true,
      graph,
    };
  }
  const scale = buildScale(graph, times);
  const { items, itemOf } = buildItems(graph, times, scale);
  const { links, lanes } = linkItems(graph, shares, itemOf);
  guessInBands(graph, items, links, itemOf);
  placeItems([...items, ...lanes], links);
  const width = moveIntoFrame(items, lanes, leastWidth);
  const streams = buildStreams(shares, items, links);
  return {
    width,
    height: Math.max(...items.map((item) => item.y)) + measures.below + measures.bottom,
    animals: placeAnimals(graph, shares, itemOf, streams),
    eggs: items.flatMap((item) => placeEgg(graph, shares, item)),
    brackets: items.flatMap((item) => placeBracket(graph, item)),
    streams,
    ticks: times.dated ? scale.ticks : [],
    inRows: false,
    graph,
  };
}

/** Height that every step between generations needs, and a scale on which a usual step is comfortably tall. */
function buildScale(graph: PedigreeGraph, times: EventTimes): TimeScale {
  const needs: Need[] = [];
  for (const [clutch, parents] of graph.parentsOf) {
    const to = times.clutches.get(clutch)?.year ?? 0;
    for (const { parent, probability } of parents) {
      const birth = graph.birthClutch.get(parent);
      const from = (birth === undefined ? times.founders.get(parent) : times.clutches.get(birth))?.year ?? 0;
      const extra = probability < 1 ? measures.probability : 0;
      needs.push({ from, to, pixels: measures.reach + extra + (birth === undefined ? 0 : measures.drop) });
    }
  }
  needs.push(...roomBetweenSources(graph, times));
  const years = [...times.clutches.values(), ...times.founders.values()].map((time) => time.year);
  const first = Math.min(...years);
  const last = Math.max(...years);
  const levels = Math.max(...[...generations(graph).values()].map((one) => one.most), 1);
  const perYear = Math.min(90, Math.max(1.5, (levels * 128) / Math.max(last - first, 0.5)));
  return timeScale(first, last, perYear, needs);
}

/** Where there are many founders, sources of different years get a row each instead of standing side by side. */
function roomBetweenSources(graph: PedigreeGraph, times: EventTimes): Need[] {
  const groups = [...graph.foundersOf.values()].filter((ids) => ids.length > 2);
  if (groups.reduce((sum, ids) => sum + ids.length, 0) < 9) return [];
  const years = groups.map((ids) => times.founders.get(ids[0] ?? '')?.year ?? 0).sort((a, b) => a - b);
  const pixels = measures.bracket + measures.below + measures.probability + 4;
  return years.slice(1).flatMap((to, index) => {
    const from = years[index] ?? to;
    return to - from > 0.1 ? [{ from, to, pixels }] : [];
  });
}

function buildItems(
  graph: PedigreeGraph,
  times: EventTimes,
  scale: TimeScale,
): { items: Item[]; itemOf: Map<string, Item> } {
  const items: Item[] = [];
  for (const { key, source, members } of founderBoxes(graph)) {
    const y = scale.y(times.founders.get(members[0] ?? '')?.year ?? 0);
    items.push(animalItem(graph, key, [...members], source === null ? {} : { source }, y));
  }
  for (const [clutch, young] of graph.youngOf) {
    const y = scale.y(times.clutches.get(clutch)?.year ?? 0) + measures.drop;
    items.push(animalItem(graph, `clutch ${clutch}`, [...young], { clutch }, y));
  }
  const top = Math.min(...items.flatMap((item) => item.extents.map((extent) => extent.top)));
  const shift = measures.top - top;
  for (const item of items) {
    item.y += shift;
    for (const extent of item.extents) {
      extent.top += shift;
      extent.bottom += shift;
    }
  }
  for (const tick of scale.ticks) tick.y += shift;
  const itemOf = new Map(items.flatMap((item) => item.members.map((id) => [id, item] as const)));
  return { items, itemOf };
}

/** Moves everything right of the ruler, spread to the frame where there is room; gives the chart's width. */
function moveIntoFrame(items: Item[], lanes: Item[], leastWidth: number): number {
  const all = [...items, ...lanes];
  const left = Math.min(...all.map((item) => item.x + Math.min(...item.extents.map((extent) => extent.left))));
  const right = Math.max(...all.map((item) => item.x + Math.max(...item.extents.map((extent) => extent.right))));
  const room = leastWidth - measures.ruler - measures.right;
  const fixed = measures.pitch;
  const factor = Math.max(1, Math.min(1.5, (room - fixed) / Math.max(1, right - left - fixed)));
  for (const item of all) item.x = (item.x - left) * factor;
  const used = Math.max(...all.map((item) => item.x + Math.max(...item.extents.map((extent) => extent.right))));
  const spare = Math.max(0, room - used);
  for (const item of all) item.x = item.x + measures.ruler + 8 + spare / 2;
  return Math.max(leastWidth, used + measures.ruler + 8 + measures.right);
}

function placeAnimals(
  graph: PedigreeGraph,
  shares: Map<string, number>,
  itemOf: Map<string, Item>,
  streams: Stream[],
): PlacedAnimal[] {
  const levels = generations(graph);
  const uncertain = new Map<string, Stream[]>();
  for (const stream of streams)
    if (stream.probability < 1) uncertain.set(stream.from, [...(uncertain.get(stream.from) ?? []), stream]);
  return [...graph.individuals.values()].flatMap((animal) => {
    const item = itemOf.get(animal.id);
    if (!item) return [];
    const own = [...(uncertain.get(animal.id) ?? [])].sort((a, b) => (a.points[0]?.x ?? 0) - (b.points[0]?.x ?? 0));
    return {
      animal,
      x: item.x + memberOffset(item, animal.id),
      y: item.y,
      share: shares.get(animal.id) ?? 0,
      generation: levels.get(animal.id)?.least ?? 0,
      probabilities: own.map((stream) => stream.probability),
      above: needsMark(graph, animal.id) ? (animal.hasMoreAncestors ? 'more' : 'unknown') : null,
    };
  });
}

function placeEgg(graph: PedigreeGraph, shares: Map<string, number>, item: Item): PlacedEgg[] {
  const clutch = graph.clutches.get(item.clutch ?? '');
  if (!clutch) return [];
  const known = (graph.parentsOf.get(clutch.id) ?? []).reduce((sum, link) => sum + link.probability, 0);
  return [
    {
      clutch,
      x: item.x + eggOffset(item),
      y: item.y - measures.drop,
      share: clutchShare(graph, shares, clutch.id),
      parentsUnknown: known < 2 - 1e-6,
    },
  ];
}

function placeBracket(graph: PedigreeGraph, item: Item): Bracket[] {
  const source = graph.sources.get(item.source ?? '');
  if (!source) return [];
  const legs = item.members.map((_, index) => item.x + index * measures.pitch);
  const right = item.x + (item.members.length - 1) * measures.pitch + measures.textRight - 6;
  return [{ source, x: item.x - 10, right, y: item.y - 22, legs }];
}

/** Founders of one source that stand next to each other in a row share a bracket. */
function bracketsInRows(graph: PedigreeGraph, items: Item[]): Bracket[] {
  const founders = items.filter((item) => item.source !== null).sort((a, b) => a.y - b.y || a.x - b.x);
  const runs: Item[][] = [];
  for (const item of founders) {
    const run = runs[runs.length - 1];
    const before = run?.[run.length - 1];
    if (run && before?.source === item.source && before.y === item.y && isBeside(items, before, item)) run.push(item);
    else runs.push([item]);
  }
  return runs.flatMap((run) => {
    const [first] = run;
    const last = run[run.length - 1];
    const source = graph.sources.get(first?.source ?? '');
    if (!first || !last || !source) return [];
    const legs = run.map((item) => item.x);
    return [{ source, x: first.x - 10, right: last.x + measures.textRight - 6, y: first.y - 22, legs }];
  });
}

function isBeside(items: Item[], left: Item, right: Item): boolean {
  return !items.some((other) => other.y === left.y && other.x > left.x && other.x < right.x);
}
