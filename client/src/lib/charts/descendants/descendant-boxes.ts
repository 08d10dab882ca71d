import type { DescendantLayout } from './descendant-layout.ts';
import type { Part } from '../paper-parts.ts';

/** Where the symbols and words of a drawing of descendants begin and end, from left to right. */
export function descendantBoxes({ items, eggs }: Pick<DescendantLayout, 'items' | 'eggs'>): Part[] {
  return [
    ...items.map(({ kind, x, generation }) => ({
      from: x - (kind === 'folded' ? 24 : generation === 0 ? 37 : 14),
      to: x + (kind === 'folded' ? 24 : 84),
    })),
    ...eggs.map(({ x, room }) => ({ from: x - 6, to: x + 9 + room })),
  ];
}
