import { probabilitiesInWords } from '../ancestors/ancestor-table.ts';
import { textWidth } from '../ancestors/chart-items.ts';
import type { ChartDescendant, Family, YoungOf } from './families.ts';

/** An animal that is drawn, and what is drawn below it. */
export interface Branch {
  animal: ChartDescendant;
  /** 0 is the animal asked about. */
  generation: number;
  /** The animal above it, null for the first. */
  above: string | null;
  clutches: ClutchBranch[];
  /** A clutch of its own stands below another parent. */
  feedsOther: boolean;
  /** Width of the strip that it and all below it have for themselves. */
  width: number;
  x: number;
}

/** A clutch, below the first of its parents. */
export interface ClutchBranch {
  family: Family;
  /** Other animals of the tree that are or may be its parents too. */
  others: { parent: Branch; family: Family }[];
  members: Branch[];
  /** Young without young of their own. */
  folded: ChartDescendant[];
  width: number;
  /** Room for the words to the right of the egg. */
  room: number;
  /** Of its egg. */
  x: number;
  /** Of the diamond for its young without young. */
  foldedX: number;
}

/** Everything that is drawn, each once. */
export interface FamilyTree {
  root: Branch;
  branches: Branch[];
  clutches: ClutchBranch[];
}

/** Room of what stands side by side, in CSS pixels. */
export interface Sizes {
  clutch: number;
  animal: number;
  folded: number;
  /** Right of everything. */
  right: number;
}

const easy: Sizes = { clutch: 128, animal: 110, folded: 64, right: 20 };
const tight: Sizes = { clutch: 106, animal: 100, folded: 48, right: 6 };
/** From the left end of a clutch's strip to the words beside its egg. */
export const eggLeft = { egg: 14, words: 23 };

/**
 * Takes the tree down generation by generation, so that whatever comes twice stands where it is nearest: clutches by laying date, of
 * their young those that have young themselves, by number. The same tree whatever the order of the input.
 *
 * @param opened animals whose young are drawn
 */
export function growTree(root: ChartDescendant, youngOf: YoungOf, opened: ReadonlySet<string>): FamilyTree {
  const first: Branch = { animal: root, generation: 0, above: null, clutches: [], feedsOther: false, width: 0, x: 0 };
  const tree: FamilyTree = { root: first, branches: [first], clutches: [] };
  const met = new Map<string, ClutchBranch>();
  let level = [first];
  while (level.length > 0) {
    const next: Branch[] = [];
    for (const parent of level)
      for (const family of opened.has(parent.animal.id) ? byDate(youngOf.get(parent.animal.id) ?? []) : []) {
        const known = met.get(family.clutch.id);
        if (known) {
          known.others.push({ parent, family });
          parent.feedsOther = true;
          continue;
        }
        const clutch = clutchBelow(parent, family);
        met.set(family.clutch.id, clutch);
        parent.clutches.push(clutch);
        tree.clutches.push(clutch);
        next.push(...clutch.members);
      }
    tree.branches.push(...next);
    level = next;
  }
  return tree;
}

function byDate(families: readonly Family[]): Family[] {
  const date = ({ clutch }: Family): string => clutch.earliest ?? clutch.laid ?? '~';
  const order = (family: Family): string => `${date(family)} ${family.clutch.id}`;
  return [...families].sort((a, b) => (order(a) < order(b) ? -1 : 1));
}

function clutchBelow(parent: Branch, family: Family): ClutchBranch {
  const sorted = [...family.animals].sort((a, b) => (nameKey(a) < nameKey(b) ? -1 : 1));
  const common = { generation: parent.generation + 1, above: parent.animal.id, feedsOther: false, width: 0, x: 0 };
  return {
    family,
    others: [],
    members: sorted.filter(({ hasYoung }) => hasYoung).map((animal) => ({ animal, ...common, clutches: [] })),
    folded: sorted.filter(({ hasYoung }) => !hasYoung),
    width: 0,
    room: 0,
    x: 0,
    foldedX: 0,
  };
}

const nameKey = ({ number, id }: ChartDescendant): string => `${(number ?? '').padStart(12, '0')} ${id}`;

/**
 * Gives everything the width of its strip: with comfortable room, or with less where that makes it fit. What does not fit either way has
 * comfortable room and is panned.
 *
 * @param room width in which it is meant to fit, in pixels
 */
export function measureTree({ root }: FamilyTree, room: number): Sizes {
  for (const part of [0, 0.25, 0.5, 0.75, 1]) {
    const sizes = between(part);
    if (measure(root, sizes) + sizes.right <= room) return sizes;
  }
  measure(root, easy);
  return easy;
}

function between(part: number): Sizes {
  const mix = (name: keyof Sizes): number => Math.round(easy[name] + (tight[name] - easy[name]) * part);
  return { clutch: mix('clutch'), animal: mix('animal'), folded: mix('folded'), right: mix('right') };
}

function measure(branch: Branch, sizes: Sizes): number {
  for (const clutch of branch.clutches) {
    const members = clutch.members.reduce((sum, member) => sum + measure(member, sizes), 0);
    clutch.room = Math.max(sizes.clutch - eggLeft.words, wordsWidth(clutch));
    const folded = clutch.folded.length > 0 ? sizes.folded : 0;
    clutch.width = Math.max(clutch.room + eggLeft.words, members + folded);
  }
  const clutches = branch.clutches.reduce((sum, { width }) => sum + width, 0);
  branch.width = Math.max(sizes.animal, clutches);
  return branch.width;
}

/** What the date, the odds and that there are no young take beside an egg; with whom is cut to what is there. */
function wordsWidth({ family, others }: ClutchBranch): number {
  const odds = oddsOf([family, ...others.map((other) => other.family)]);
  const beside = odds.length > 0 ? 5 + textWidth(probabilitiesInWords(odds), 14) : 0;
  const none = family.animals.length === 0 ? textWidth('no young recorded', 12) : 0;
  return Math.ceil(Math.max(textWidth(family.clutch.laid ?? 'no date', 12) + beside, none)) + 6;
}

/** The odds of those of a clutch's parents that are not certain. */
export function oddsOf(families: readonly Family[]): number[] {
  return families.map(({ clutch }) => clutch.probability).filter((probability) => probability < 1);
}
