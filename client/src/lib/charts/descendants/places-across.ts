import { measures } from '../ancestors/measures.ts';
import { eggLeft, type Branch, type ClutchBranch, type FamilyTree, type Sizes } from './family-tree.ts';

/**
 * Places from left to right: every branch within its strip, as near as it can to the middle of what hangs from it. Widths must have been
 * measured.
 *
 * @param left where the strip of the first animal begins
 */
export function placeAcross({ root }: FamilyTree, sizes: Sizes, left: number): void {
  placeBranch(root, sizes, left);
}

function placeBranch(branch: Branch, sizes: Sizes, left: number): void {
  const inner = branch.clutches.reduce((sum, { width }) => sum + width, 0);
  let at = left + Math.max(0, (branch.width - inner) / 2);
  for (const clutch of branch.clutches) {
    placeClutch(clutch, sizes, at);
    at += clutch.width;
  }
  const middle = middleOf(branch.clutches.map(({ x }) => x)) ?? left;
  branch.x = within(middle, left + measures.textLeft + 1, left + branch.width - measures.textRight);
}

function placeClutch(clutch: ClutchBranch, sizes: Sizes, left: number): void {
  let at = left;
  for (const member of clutch.members) {
    placeBranch(member, sizes, at);
    at += member.width;
  }
  clutch.foldedX = at + sizes.folded / 2;
  const ends = clutch.members.map(({ x }) => x);
  if (clutch.folded.length > 0) ends.push(clutch.foldedX);
  const words = eggLeft.words - eggLeft.egg + clutch.room;
  clutch.x = within(middleOf(ends) ?? left, left + eggLeft.egg, left + clutch.width - words);
}

function middleOf(places: readonly number[]): number | null {
  return places.length === 0 ? null : (Math.min(...places) + Math.max(...places)) / 2;
}

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));
