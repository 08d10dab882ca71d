import { measures } from '../ancestors/measures.ts';
import { timeScale, type Need, type Tick } from '../ancestors/time-scale.ts';
import { heights } from './descendant-heights.ts';
import type { ChartDescendant, Family, YoungOf } from './families.ts';
import {
  bendOf,
  familyStreams,
  foldedKey,
  leftFirst,
  type DescendantStream,
  type HeightsOf,
} from './family-streams.ts';
import { familyTimes, type FamilyTimes } from './family-times.ts';
import { growTree, measureTree, oddsOf, type Branch, type ClutchBranch, type FamilyTree } from './family-tree.ts';
import { placeAcross } from './places-across.ts';

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
  clutch: Family['clutch'];
  mates: Family['mates'];
  /** Odds of the parents drawn that are not certain, from left to right. */
  odds: number[];
  /** It has no young in the register. */
  isEmpty: boolean;
  x: number;
  y: number;
  /** Room for the words beside it, in pixels. */
  room: number;
}

export interface DescendantLayout {
  width: number;
  height: number;
  items: DescendantItem[];
  eggs: DescendantEgg[];
  streams: DescendantStream[];
  /** Years beside it; none where no date is known. */
  ticks: Tick[];
}

/** Usual height of a generation. */
const perGeneration = 128;

/**
 * Lays out what descends from an animal, time running down: each clutch hangs at its own date, its young below it, streams as wide as the
 * animal's expected part in its young. Every animal has a strip for itself and all below it, and in it every clutch one, from left to
 * right by date, so that nothing stands over anything else whatever its date; a stream turns aside right below the parent and falls
 * through the strip of its clutch. Of a clutch those are drawn that have young themselves; the others stand folded in one diamond. A
 * clutch of two descendants is drawn once, below the first of them. Pure; the same picture whatever the order of the input.
 *
 * @param opened animals whose young are drawn
 * @param leastWidth filled when there is less, in pixels; what is only a little wider is made to fit
 */
export function layoutDescendants(
  root: ChartDescendant,
  youngOf: YoungOf,
  opened: ReadonlySet<string>,
  leastWidth = 0,
): DescendantLayout {
  const tree = growTree(root, youngOf, opened);
  const times = familyTimes(tree);
  const left = times.dated ? measures.ruler + 8 : 20;
  const sizes = measureTree(tree, leastWidth - left);
  const width = Math.max(leastWidth, left + tree.root.width + sizes.right);
  placeAcross(tree, sizes, left + (width - left - sizes.right - tree.root.width) / 2);
  const { y, ticks } = scaleOf(tree, times);
  const heightOf = heightsOf(tree, times, y);
  const placing = new Placing(heightOf);
  placing.put(tree.root);
  const { items, eggs } = placing;
  const bottom = Math.max(...items.map((item) => item.y), ...eggs.map((egg) => egg.y));
  return { width, height: bottom + heights.below, items, eggs, streams: familyStreams(tree, times, heightOf), ticks };
}

function heightsOf(tree: FamilyTree, times: FamilyTimes, y: (year: number) => number): HeightsOf {
  const egg = (clutch: string): number => y(times.clutches.get(clutch) ?? times.root);
  const animals = new Map([[tree.root, y(times.root)]]);
  for (const { family, members } of tree.clutches)
    for (const member of members) animals.set(member, egg(family.clutch.id) + heights.toYoung);
  return { egg, animal: (branch) => animals.get(branch) ?? 0 };
}

/** Where years are on the page, with room for every step down. */
function scaleOf(tree: FamilyTree, times: FamilyTimes): { y: (year: number) => number; ticks: Tick[] } {
  const hatched = hatchings(tree, times);
  const needs: Need[] = [];
  const step = (parent: Branch, { clutch }: Family, bend: number): void => {
    const from = hatched.get(parent) ?? times.root;
    const pixels = heights.leave + bend + heights.aboveEgg + (parent === tree.root ? 0 : heights.toYoung);
    needs.push({ from, to: times.clutches.get(clutch.id) ?? from, pixels });
  };
  for (const branch of tree.branches) for (const { family } of branch.clutches) step(branch, family, bendOf(branch));
  for (const { others } of tree.clutches) for (const { parent, family } of others) step(parent, family, heights.bend);
  const years = [times.root, ...times.clutches.values()];
  const [first, last] = [Math.min(...years), Math.max(...years)];
  const parents = tree.branches.filter(({ clutches }) => clutches.length > 0);
  const generations = Math.max(1, ...parents.map(({ generation }) => generation + 1));
  const perYear = Math.min(90, Math.max(1.5, (generations * perGeneration) / Math.max(last - first, 0.5)));
  const scale = timeScale(first, last, perYear, needs);
  return {
    y: (year) => heights.top + scale.y(year),
    ticks: times.dated ? scale.ticks.map((tick) => ({ ...tick, y: tick.y + heights.top })) : [],
  };
}

/** The year of each animal: that of its clutch. */
function hatchings(tree: FamilyTree, times: FamilyTimes): Map<Branch, number> {
  const years = new Map([[tree.root, times.root]]);
  for (const { family, members } of tree.clutches)
    for (const member of members) years.set(member, times.clutches.get(family.clutch.id) ?? times.root);
  return years;
}

/** Puts an animal and all below it on the page, from left to right. */
class Placing {
  readonly items: DescendantItem[] = [];
  readonly eggs: DescendantEgg[] = [];

  constructor(private readonly heightOf: HeightsOf) {}

  put(branch: Branch): void {
    const { animal, generation, above, x, clutches, feedsOther } = branch;
    const young = clutches.length > 0 || feedsOther ? 'drawn' : animal.hasYoung ? 'folded' : 'none';
    const y = this.heightOf.animal(branch);
    this.items.push({ kind: 'animal', key: animal.id, animal, x, y, generation, above, young });
    for (const clutch of clutches) {
      for (const member of clutch.members) this.put(member);
      this.#putClutch(branch, clutch);
    }
  }

  #putClutch(parent: Branch, { family, others, folded, x, foldedX, room }: ClutchBranch): void {
    const { clutch, mates } = family;
    const y = this.heightOf.egg(clutch.id);
    const odds = oddsOf([{ parent, family }, ...others].sort(leftFirst).map((one) => one.family));
    this.eggs.push({ clutch, mates, odds, isEmpty: family.animals.length === 0, x, y, room });
    if (folded.length === 0) return;
    const told = { clutch: clutch.id, title: clutch.title, animals: folded, generation: parent.generation + 1 };
    const place = { x: foldedX, y: y + heights.toYoung };
    this.items.push({ kind: 'folded', key: foldedKey(clutch.id), ...told, ...place, above: parent.animal.id });
  }
}
