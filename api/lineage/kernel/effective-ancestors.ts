import type { Ancestry } from './ancestry.ts';
import { AncestorPicking } from './ancestor-picking.ts';
import type { Pedigree } from './pedigree.ts';

/** An ancestor with what it adds to those picked before it. */
export type AncestorContribution =
  | { readonly kind: 'individual'; readonly individual: number; readonly share: number }
  | { readonly kind: 'unknown parent'; readonly clutch: number; readonly share: number };

/** The ancestors that explain the genes of a set. */
export interface EffectiveAncestors {
  /** The ancestors picked, the largest contribution first; they sum to 1 where all were picked. */
  readonly contributions: readonly AncestorContribution[];
  /** Effective number of ancestors, 1/Σ of the squared contributions; null for an empty set. */
  readonly effective: number | null;
  /** Part of the gene pool that no picked ancestor explains: 0 unless the work was bounded. */
  readonly unexplained: number;
}

/** Work, in links followed, after which no further ancestor is picked: some seconds. */
const MOST_WORK = 4e8;
/** Parts of the pool smaller than this are rounding. */
const NOTHING = 1e-12;

/**
 * Effective number of ancestors (Boichard, Maignel & Verrier 1997): ancestors are picked one by one, each time the one with the
 * largest marginal contribution to the gene pool of the set. A picked ancestor passes nothing on to its own parents any more,
 * and what it explains in its descendants is not counted again. Expected over uncertain parents; a parent that nobody knows is an
 * ancestor of its own. Members of the set are no ancestors of it, unless they are founders: somebody must explain their genes.
 * Among equals the one nearer to the founders is picked.
 *
 * Fewer than the effective founders where the genes of many passed through few. It can be more: an animal mated back to both its
 * parents is picked first, and leaves each of them a small part.
 *
 * Picking one changes only its own ancestors and descendants, and contributions only shrink, so that a heap of old values
 * finds the next: no pass over all for every pick.
 *
 * @param members individuals, each once
 * @param ancestry that of the members
 */
export function effectiveAncestors(
  pedigree: Pedigree,
  ancestry: Ancestry,
  members: Int32Array,
  mostWork = MOST_WORK,
): EffectiveAncestors {
  const picking = new AncestorPicking(pedigree, ancestry, members);
  const contributions: AncestorContribution[] = [];
  let unexplained = members.length === 0 ? 0 : 1;
  let squares = 0;
  while (unexplained > NOTHING && picking.work < mostWork) {
    const next = picking.pick();
    if (next === null) break;
    contributions.push(next);
    squares += next.share ** 2;
    unexplained -= next.share;
  }
  return {
    contributions,
    effective: squares === 0 ? null : 1 / squares,
    unexplained: unexplained > NOTHING ? unexplained : 0,
  };
}
