import { clutchShare } from './genome-shares.ts';
import { measures, streamWidth } from './measures.ts';
import type { ParentLink, PedigreeGraph } from './pedigree-graph.ts';

/** A rectangle around an item's x, in page pixels downwards and relative pixels sideways. */
export interface Extent {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** What is moved sideways as one piece: a clutch with its young, founders of one source, or a lane of a long stream. */
export interface Item {
  key: string;
  /** Animals side by side, each at `x + index * pitch`; empty for a lane. */
  members: string[];
  clutch: string | null;
  source: string | null;
  /** Height of the middle of the symbols, of the top end for a lane. */
  y: number;
  extents: Extent[];
  x: number;
}

/** A possible parent's stream down to an egg. */
export interface Link {
  key: string;
  link: ParentLink;
  upper: Item;
  lower: Item;
  lane: Item | null;
  /** In a chart of rows: how it passes the rows between. */
  way?: RowWay;
  share: number;
}

/** The way of a stream between two rows: straight down out of the upper one, past each row between, straight down into the lower one. */
export interface RowWay {
  /** Lower edge of the upper row, and upper edge of the lower one. */
  leaves: number;
  enters: number;
  past: { x: number; top: number; bottom: number }[];
}

/** Sideways place of an animal inside its item. */
export function memberOffset(item: Item, id: string): number {
  return Math.max(0, item.members.indexOf(id)) * measures.pitch;
}

/** Sideways place of the egg inside its item: above the middle of its young. */
export function eggOffset(item: Item): number {
  return ((item.members.length - 1) * measures.pitch) / 2;
}

/** Rough width of a line of text, for room only; the drawing may be a little narrower. */
export function textWidth(text: string, size: number): number {
  return text.length * size * 0.54;
}

/** A text cut to a width in pixels, with an ellipsis where something is cut off. */
export function shortened(text: string, width: number, size: number): string {
  const letters = Math.max(1, Math.floor(width / (size * 0.54)));
  return text.length <= letters ? text : `${text.slice(0, letters - 1).trimEnd()}…`;
}

export interface FounderBox {
  key: string;
  source: string | null;
  members: string[];
}

/** Founders in the boxes they share: one for each source, one for each animal without a source. */
export function founderBoxes(graph: PedigreeGraph): FounderBox[] {
  const boxes: FounderBox[] = [];
  for (const [source, members] of graph.foundersOf) boxes.push({ key: `source ${source}`, source, members });
  for (const id of graph.individuals.keys())
    if (!graph.birthClutch.has(id) && !graph.sourceOf.has(id))
      boxes.push({ key: `founder ${id}`, source: null, members: [id] });
  return boxes;
}

/** An item for animals side by side whose symbols hang at height `y`; `narrow` gives the name of its source no more room than the animals. */
export function animalItem(
  graph: PedigreeGraph,
  key: string,
  members: string[],
  origin: { clutch?: string; source?: string },
  y: number,
  room: 'whole name' | 'narrow' = 'whole name',
): Item {
  const uncertain = members.some((id) => (graph.clutchesOf.get(id) ?? []).some((link) => link.probability < 1));
  const marked = members.some((id) => needsMark(graph, id));
  const right = (members.length - 1) * measures.pitch + measures.textRight;
  const extents: Extent[] = [
    {
      left: -measures.textLeft,
      right,
      top: y - (marked ? measures.mark : 14),
      bottom: y + measures.below + (uncertain ? measures.probability : 0),
    },
  ];
  if (origin.clutch !== undefined) {
    const middle = ((members.length - 1) * measures.pitch) / 2;
    const half = members.length > 1 ? middle + 4 : 12;
    extents.push({ left: middle - half, right: middle + half, top: y - measures.drop - 8, bottom: y - 12 });
  }
  if (origin.source !== undefined) {
    const name = textWidth(graph.sources.get(origin.source)?.title ?? '', 15) + 34;
    extents.push({
      left: -12,
      right: room === 'narrow' ? right : Math.max(right, name),
      top: y - measures.bracket,
      bottom: y - 14,
    });
  }
  return { key, members, clutch: origin.clutch ?? null, source: origin.source ?? null, y, extents, x: 0 };
}

/** Whether something stands above the symbol: "?" for an unknown origin, a mark for ancestors not drawn. */
export function needsMark(graph: PedigreeGraph, id: string): boolean {
  const animal = graph.individuals.get(id);
  return Boolean(animal && !graph.sourceOf.has(id) && (animal.unknownOrigin || animal.hasMoreAncestors));
}

/** The links between items, with a straight lane in those that have a long way down. */
export function linkItems(
  graph: PedigreeGraph,
  shares: Map<string, number>,
  itemOf: Map<string, Item>,
): { links: Link[]; lanes: Item[] } {
  const links: Link[] = [];
  const lanes: Item[] = [];
  for (const [clutch, parents] of graph.parentsOf) {
    const lower = itemOf.get((graph.youngOf.get(clutch) ?? [])[0] ?? '');
    if (!lower) continue;
    const through = clutchShare(graph, shares, clutch);
    for (const link of parents) {
      const upper = itemOf.get(link.parent);
      if (!upper) continue;
      const share = (through * link.probability) / 2;
      const key = `${link.parent} ${clutch}`;
      const lane = laneBetween(key, upper, lower, streamWidth(share));
      if (lane) lanes.push(lane);
      links.push({ key, link, upper, lower, lane, share });
    }
  }
  return { links, lanes };
}

function laneBetween(key: string, upper: Item, lower: Item, width: number): Item | null {
  const top = upper.y + measures.below + measures.turn;
  const bottom = lower.y - measures.drop - measures.turn;
  if (bottom - top < 24) return null;
  const extents = [{ left: -width / 2, right: width / 2, top, bottom }];
  return { key: `lane ${key}`, members: [], clutch: null, source: null, y: top, extents, x: 0 };
}
