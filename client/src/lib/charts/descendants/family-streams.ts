import { measures, streamWidth } from '../ancestors/measures.ts';
import { verticalPath } from '../ancestors/streams.ts';
import { heights } from './descendant-heights.ts';
import type { Family } from './families.ts';
import type { FamilyTimes } from './family-times.ts';
import type { Branch, ClutchBranch, FamilyTree } from './family-tree.ts';

export interface DescendantStream {
  key: string;
  path: string;
  width: number;
  probability: number;
}

/** Where things are on the page, from its top. */
export interface HeightsOf {
  egg(clutch: string): number;
  animal(branch: Branch): number;
}

/** What the diamond of a clutch is known by. */
export const foldedKey = (clutch: string): string => `folded ${clutch}`;

/** Height in which the streams below an animal go aside. */
export function bendOf({ x, clutches }: Branch): number {
  const aside = Math.max(0, ...clutches.map((clutch) => Math.abs(clutch.x - x)));
  return Math.min(heights.mostBend, heights.bend + aside * 0.03);
}

/** Order of the parents of a clutch from left to right. */
export function leftFirst(a: { parent: Branch }, b: { parent: Branch }): number {
  return a.parent.x - b.parent.x || (a.parent.animal.id < b.parent.animal.id ? -1 : 1);
}

/** A parent's stream down to an egg, before it has its place among the others there. */
interface Fall {
  parent: Branch;
  family: Family;
  clutch: ClutchBranch;
  width: number;
  /** Where it turns aside, and how far it goes down meanwhile. */
  turn: number;
  bend: number;
}

/** All streams, thin ones first: from parents to eggs, side by side where they meet, and from eggs to the young. */
export function familyStreams(tree: FamilyTree, times: FamilyTimes, heightOf: HeightsOf): DescendantStream[] {
  const streams = tree.branches.flatMap((parent) =>
    parent.clutches.flatMap((clutch) => meetAtEgg(fallsTo(parent, clutch, times, heightOf), heightOf)),
  );
  for (const clutch of tree.clutches) streams.push(...toYoung(clutch, times, heightOf));
  return streams.sort((a, b) => a.width - b.width || (a.key < b.key ? -1 : 1));
}

function fallsTo(parent: Branch, clutch: ClutchBranch, times: FamilyTimes, heightOf: HeightsOf): Fall[] {
  const turn = heightOf.animal(parent) + heights.leave;
  const widthOf = ({ animal }: Branch, { clutch: { probability } }: Family): number =>
    streamWidth(((times.shares.get(animal.id) ?? 0) * probability) / 2);
  const { family, others } = clutch;
  const own = { parent, family, clutch, width: widthOf(parent, family), turn, bend: bendOf(parent) };
  const besides = others.map((other) => ({
    ...other,
    clutch,
    width: widthOf(other.parent, other.family),
    // not before the other parent's, so that it falls through the strip of the clutch alone
    turn: Math.max(turn, heightOf.animal(other.parent) + heights.leave),
    bend: heights.bend,
  }));
  return [own, ...besides];
}

function meetAtEgg(meeting: readonly Fall[], heightOf: HeightsOf): DescendantStream[] {
  const total = meeting.reduce((sum, { width }) => sum + width, 0);
  const sorted = [...meeting].sort(leftFirst);
  let at = -total / 2;
  return sorted.map(({ parent, family, clutch, width, turn, bend }) => {
    const x = clutch.x + at + width / 2;
    at += width;
    const points = [
      { x: parent.x, y: heightOf.animal(parent) + measures.symbol },
      { x: parent.x, y: turn },
      { x, y: turn + bend },
      { x, y: heightOf.egg(family.clutch.id) },
    ];
    const { id, probability } = family.clutch;
    return { key: `${parent.animal.id} ${id}`, path: verticalPath(points), width, probability };
  });
}

function toYoung(
  { family, members, folded, x, foldedX }: ClutchBranch,
  times: FamilyTimes,
  heightOf: HeightsOf,
): DescendantStream[] {
  const { id } = family.clutch;
  const y = heightOf.egg(id);
  const bottom = y + heights.toYoung;
  const ends = members.map((member) => ({ key: member.animal.id, x: member.x, y: bottom - measures.symbol }));
  if (folded.length > 0) ends.push({ key: foldedKey(id), x: foldedX, y: bottom - 13 });
  const width = streamWidth(times.shares.get(id) ?? 0);
  // past the words beside the egg before it turns aside
  const below = { x, y: y + heights.words };
  return ends.map((end) => ({
    key: `${id} ${end.key}`,
    path: verticalPath([{ x, y }, below, end]),
    width,
    probability: 1,
  }));
}
