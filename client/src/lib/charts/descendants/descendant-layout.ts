import type { YoungOfAnimal } from '$lib/api/types.ts';
import { measures, streamWidth } from '../ancestors/measures.ts';
import { verticalPath } from '../ancestors/streams.ts';

type YoungAnimal = YoungOfAnimal['animals'][number];

/** An animal as a chart of descendants needs it. */
export interface ChartDescendant {
  id: string;
  number: string | null;
  code: string | null;
  sex: YoungAnimal['sex'];
  status: YoungAnimal['status'];
  isPrivate: boolean;
  hasYoung: boolean;
}

export interface PlacedDescendant {
  kind: 'animal';
  key: string;
  animal: ChartDescendant;
  x: number;
  y: number;
  /** 0 is the animal asked about. */
  generation: number;
  /** Key of the animal above, null for the first. */
  above: string | null;
  /** Its young are drawn, could be drawn, or it has none. */
  young: 'drawn' | 'folded' | 'none';
}

/** Young of a clutch that have no young themselves, as a number. */
export interface FoldedSiblings {
  kind: 'folded';
  key: string;
  clutch: string;
  title: string;
  animals: ChartDescendant[];
  x: number;
  y: number;
  generation: number;
  above: string;
}

/** What can be stood on in the chart. */
export type DescendantItem = PlacedDescendant | FoldedSiblings;

export interface DescendantEgg {
  clutch: YoungOfAnimal['clutch'];
  mates: YoungOfAnimal['mates'];
  /** It has no young in the register. */
  isEmpty: boolean;
  x: number;
  y: number;
}

export interface DescendantStream {
  key: string;
  path: string;
  width: number;
  probability: number;
}

export interface DescendantLayout {
  width: number;
  height: number;
  items: DescendantItem[];
  eggs: DescendantEgg[];
  streams: DescendantStream[];
}

/** Sizes in CSS pixels. */
const row = { toEgg: 74, toYoung: 56, below: 46 };
const clutchLeast = 128;
/** Room that the words beside an egg take to its right. */
const eggText = 106;
const foldedWidth = 64;
const margin = 20;

/**
 * Lays out what descends from an animal, time running down: a row a generation, clutches from left to right by laying date, streams as
 * wide as the animal's expected part in its young. Of a clutch those are drawn that have young themselves; the others stand folded in
 * one diamond. A clutch of two descendants is drawn once, below the first of them. Pure; the same picture whatever the order of the input.
 *
 * @param youngOf what was read of an animal's clutches, by the animal's id
 * @param opened animals whose young are drawn
 * @param leastWidth filled when there is less, in pixels
 */
export function layoutDescendants(
  root: ChartDescendant,
  youngOf: ReadonlyMap<string, readonly YoungOfAnimal[]>,
  opened: ReadonlySet<string>,
  leastWidth = 0,
): DescendantLayout {
  const drawing = new Drawing(youngOf, opened);
  const tree = drawing.read(root);
  const width = Math.max(leastWidth, tree.width + 2 * margin);
  drawing.place(tree, (width - tree.width) / 2, margin + 16);
  drawing.joinSecondParents();
  const bottom = Math.max(...drawing.items.map(({ y }) => y), ...drawing.eggs.map(({ y }) => y));
  return {
    width,
    height: bottom + row.below + margin,
    items: drawing.items,
    eggs: drawing.eggs,
    streams: drawing.streams.sort((a, b) => a.width - b.width || (a.key < b.key ? -1 : 1)),
  };
}

interface Branch {
  animal: ChartDescendant;
  generation: number;
  above: string | null;
  /** Expected part of the first animal in its genome, 0 to 1. */
  share: number;
  clutches: ClutchBranch[];
  width: number;
}

interface ClutchBranch {
  young: YoungOfAnimal;
  members: Branch[];
  folded: ChartDescendant[];
  width: number;
}

class Drawing {
  readonly items: DescendantItem[] = [];
  readonly eggs: DescendantEgg[] = [];
  readonly streams: DescendantStream[] = [];
  readonly #eggOf = new Map<string, { x: number; y: number }>();
  readonly #second: { parent: Branch; young: YoungOfAnimal }[] = [];

  constructor(
    private readonly youngOf: ReadonlyMap<string, readonly YoungOfAnimal[]>,
    private readonly opened: ReadonlySet<string>,
  ) {}

  /** Takes the tree down generation by generation, so that whatever comes twice stands where it is nearest. */
  read(root: ChartDescendant): Branch {
    const tree: Branch = { animal: root, generation: 0, above: null, share: 1, clutches: [], width: 0 };
    const clutches = new Set<string>();
    let level = [tree];
    while (level.length > 0) {
      const next: Branch[] = [];
      for (const branch of level)
        for (const young of this.#clutchesOf(branch.animal)) {
          if (clutches.has(young.clutch.id)) this.#second.push({ parent: branch, young });
          else {
            clutches.add(young.clutch.id);
            const clutch = clutchBranch(branch, young);
            branch.clutches.push(clutch);
            next.push(...clutch.members);
          }
        }
      level = next;
    }
    measure(tree);
    return tree;
  }

  #clutchesOf({ id }: ChartDescendant): YoungOfAnimal[] {
    if (!this.opened.has(id)) return [];
    const date = ({ clutch }: YoungOfAnimal): string => clutch.laid ?? '~';
    return [...(this.youngOf.get(id) ?? [])].sort((a, b) =>
      date(a) === date(b) ? (a.clutch.id < b.clutch.id ? -1 : 1) : date(a) < date(b) ? -1 : 1,
    );
  }

  /** Puts a branch into the strip that begins at `left`, its symbol at height `y`; gives the symbol's x. */
  place(branch: Branch, left: number, y: number): number {
    const { animal, generation, above } = branch;
    const item: PlacedDescendant = {
      kind: 'animal',
      key: animal.id,
      animal,
      x: 0,
      y,
      generation,
      above,
      young: branch.clutches.length > 0 || this.#leadsToDrawn(branch) ? 'drawn' : animal.hasYoung ? 'folded' : 'none',
    };
    this.items.push(item);
    const inner = branch.clutches.reduce((sum, { width }) => sum + width, 0);
    let at = left + Math.max(0, (branch.width - inner) / 2);
    const eggs: { x: number; clutch: ClutchBranch }[] = [];
    for (const clutch of branch.clutches) {
      eggs.push({ x: this.#placeClutch(branch, clutch, at, y + row.toEgg), clutch });
      at += clutch.width;
    }
    const [first] = eggs;
    const last = eggs[eggs.length - 1];
    const middle = first && last ? (first.x + last.x) / 2 : left;
    item.x = between(middle, left + measures.textLeft + 4, left + branch.width - measures.textRight - 4);
    for (const { x, clutch } of eggs) this.#join(branch, clutch.young, { x: item.x, y }, { x, y: y + row.toEgg });
    return item.x;
  }

  #leadsToDrawn(branch: Branch): boolean {
    return this.#second.some(({ parent }) => parent === branch);
  }

  /** Gives the x of the egg. */
  #placeClutch(parent: Branch, clutch: ClutchBranch, left: number, y: number): number {
    const ends: { x: number; y: number; share: number; key: string }[] = [];
    let at = left;
    for (const member of clutch.members) {
      const x = this.place(member, at, y + row.toYoung);
      ends.push({ x, y: y + row.toYoung - measures.symbol, share: member.share, key: member.animal.id });
      at += member.width;
    }
    const { id, title } = clutch.young.clutch;
    if (clutch.folded.length > 0) {
      const x = at + foldedWidth / 2;
      const share = parent.share / 2;
      const key = `folded ${id}`;
      const common = { clutch: id, title, animals: clutch.folded, generation: parent.generation + 1 };
      this.items.push({ kind: 'folded', key, ...common, x, y: y + row.toYoung, above: parent.animal.id });
      ends.push({ x, y: y + row.toYoung - 13, share, key });
    }
    const xs = ends.map(({ x }) => x);
    const middle = xs.length > 0 ? (Math.min(...xs) + Math.max(...xs)) / 2 : left;
    const x = between(middle, left + 14, left + clutch.width - eggText);
    this.eggs.push({ clutch: clutch.young.clutch, mates: clutch.young.mates, isEmpty: ends.length === 0, x, y });
    this.#eggOf.set(id, { x, y });
    for (const end of ends)
      this.streams.push({
        key: `${id} ${end.key}`,
        path: verticalPath([{ x, y }, end]),
        width: streamWidth(end.share),
        probability: 1,
      });
    return x;
  }

  #join(
    parent: Branch,
    { clutch }: YoungOfAnimal,
    from: { x: number; y: number },
    egg: { x: number; y: number },
  ): void {
    const start = { x: from.x, y: from.y + measures.symbol };
    this.streams.push({
      key: `${parent.animal.id} ${clutch.id}`,
      path: verticalPath([start, { x: from.x, y: from.y + 26 }, egg]),
      width: streamWidth((parent.share * clutch.probability) / 2),
      probability: clutch.probability,
    });
  }

  /** Where both parents of a clutch descend from the animal, the stream of the second one comes from aside. */
  joinSecondParents(): void {
    const places = new Map(this.items.map((item) => [item.key, item]));
    for (const { parent, young } of this.#second) {
      const from = places.get(parent.animal.id);
      const egg = this.#eggOf.get(young.clutch.id);
      if (from && egg) this.#join(parent, young, from, egg);
    }
  }
}

function clutchBranch(parent: Branch, young: YoungOfAnimal): ClutchBranch {
  const sorted = [...young.animals].sort((a, b) => (nameKey(a) < nameKey(b) ? -1 : 1));
  const share = (parent.share * young.clutch.probability) / 2;
  const common = { generation: parent.generation + 1, above: parent.animal.id, share, width: 0 };
  return {
    young,
    members: sorted.filter(({ hasYoung }) => hasYoung).map((animal) => ({ animal, ...common, clutches: [] })),
    folded: sorted.filter(({ hasYoung }) => !hasYoung),
    width: 0,
  };
}

const between = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));

const nameKey = ({ number, id }: ChartDescendant): string => `${(number ?? '').padStart(12, '0')} ${id}`;

function measure(branch: Branch): number {
  for (const clutch of branch.clutches) {
    const members = clutch.members.reduce((sum, member) => sum + measure(member), 0);
    clutch.width = Math.max(clutchLeast, members + (clutch.folded.length > 0 ? foldedWidth : 0));
  }
  const clutches = branch.clutches.reduce((sum, { width }) => sum + width, 0);
  branch.width = Math.max(measures.pitch + 12, clutches);
  return branch.width;
}

/** What an arrow key leads to: up to the animal above, down to the first of its young, sideways to the next one of the same row. */
export function moveAmong({ items }: DescendantLayout, from: string, key: string): string | null {
  const here = items.find((item) => item.key === from);
  if (!here) return null;
  if (key === 'ArrowUp') return here.above;
  if (key === 'Home') return items[0]?.key ?? null;
  const byPlace = (a: DescendantItem, b: DescendantItem): number => a.x - b.x;
  if (key === 'ArrowDown') return items.filter(({ above }) => above === from).sort(byPlace)[0]?.key ?? null;
  const step = key === 'ArrowLeft' ? -1 : key === 'ArrowRight' ? 1 : 0;
  if (step === 0) return null;
  const besides = items.filter(({ generation }) => generation === here.generation).sort(byPlace);
  return besides[besides.indexOf(here) + step]?.key ?? null;
}
