import type { LabelPaper } from '../labels/label-paper.ts';

/** Cards for tanks and clutches, cut from a sheet or printed on card stock; all lengths in millimetres (common practice, no source). */
export const cardPapers: readonly { readonly name: string; readonly paper: LabelPaper }[] = [
  {
    name: 'A4, 4 cards of A6 (105 × 148.5 mm)',
    paper: { kind: 'a4', width: 105, height: 148.5, columns: 2, rows: 2, left: 0, top: 0, across: 0, down: 0 },
  },
  {
    name: 'A4, 8 cards of A7 (105 × 74.2 mm)',
    paper: { kind: 'a4', width: 105, height: 74.2, columns: 2, rows: 4, left: 0, top: 0, across: 0, down: 0 },
  },
  {
    name: 'Letter, 4 cards of a quarter page (108 × 139.7 mm)',
    paper: { kind: 'letter', width: 107.9, height: 139.7, columns: 2, rows: 2, left: 0, top: 0, across: 0, down: 0 },
  },
  {
    name: 'Letter, 3 index cards of 127 × 76.2 mm',
    paper: { kind: 'letter', width: 127, height: 76.2, columns: 1, rows: 3, left: 44.4, top: 25.4, across: 0, down: 0 },
  },
];

/** Lines of so many millimetres that fit on a card of this height, numbered; what is more than the room that is left is cut. */
export const linesThatFit = (height: number, each: number): number[] =>
  Array.from({ length: Math.max(1, Math.floor(height / each)) }, (_, at) => at);
