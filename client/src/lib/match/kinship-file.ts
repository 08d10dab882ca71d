import type { Sex } from '$shared/vocabulary.ts';
import type { StandingShare } from '../charts/ancestors/pedigree-view.ts';
import { partsOf, type Part } from '../charts/paper-parts.ts';
import { sheetHeight, sheetWidth } from '../charts/paper-size.ts';
import { percentDigits } from '../ui/figures.ts';
import { quartersOf } from './quarters.ts';

/** An animal at the head of a row or column. */
export interface GridHead {
  readonly key: string;
  readonly sex: Sex;
  readonly name: string;
  /** What stands below the name: mean kinship, depth. */
  readonly told: readonly string[];
  readonly keeper: string;
  readonly standings: readonly StandingShare[];
}

/** What a cell of the drawing says. */
export interface GridFigure {
  /** F of the young, 0 to 1; null for an animal with itself. */
  readonly expected: number | null;
  /** Whether 0 rests on an animal of which nothing is recorded. */
  readonly isBlind: boolean;
  readonly isOver: boolean;
  /** Where parents are uncertain, in words. */
  readonly range: string;
  /** Whether it belongs to what is proposed. */
  readonly isPencilled: boolean;
}

/** A kinship grid as it is drawn into a file. */
export interface GridDrawing {
  readonly rows: readonly GridHead[];
  readonly columns: readonly GridHead[];
  readonly cells: readonly (readonly GridFigure[])[];
}

/** Sizes of the drawn grid in CSS pixels. */
export const gridSizes = { left: 150, top: 92, cell: 92, row: 66, foot: 34, edge: 8 } as const;

/** A cell where it stands. */
export interface PlacedFigure extends GridFigure {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly quarters: 0 | 1 | 2 | 3 | 4;
  /** The figure as it is printed. */
  readonly text: string;
}

/** Where all of a grid stands, and how large it is. */
export function placeGrid({ rows, columns, cells }: GridDrawing): {
  readonly width: number;
  readonly height: number;
  readonly figures: readonly PlacedFigure[];
} {
  const { left, top, cell, row: high, foot, edge } = gridSizes;
  const figures = cells.flatMap((line, row) =>
    line.map((figure, column): PlacedFigure => {
      const { expected, isBlind } = figure;
      return {
        ...figure,
        key: `${row}-${column}`,
        x: left + column * cell,
        y: top + row * high,
        quarters: expected === null ? 0 : quartersOf(expected),
        text: expected === null ? 'itself' : isBlind ? 'nothing known' : percentDigits(expected),
      };
    }),
  );
  return {
    width: Math.max(left + columns.length * cell, 420) + edge,
    height: top + rows.length * high + foot + edge,
    figures,
  };
}

/**
 * The parts of a drawn grid that is wider than a sheet of paper, from left to right and from the top down; null where it is not. The key
 * at its foot is left out: the page has one.
 */
export function gridParts(grid: GridDrawing): { columns: Part[]; rows: Part[] } | null {
  const { left, top, cell, row } = gridSizes;
  // a pixel more, for the rule at the edge
  const right = left + grid.columns.length * cell + 1;
  if (right <= sheetWidth) return null;
  const bottom = top + grid.rows.length * row + 1;
  const boxes = (from: number, length: number, count: number): Part[] =>
    Array.from({ length: count }, (_, at) => ({ from: from + at * length, to: from + (at + 1) * length }));
  return {
    columns: partsOf(boxes(left, cell, grid.columns.length), { from: left, to: right }, sheetWidth - left),
    rows: partsOf(boxes(top, row, grid.rows.length), { from: top, to: bottom }, sheetHeight - top),
  };
}
