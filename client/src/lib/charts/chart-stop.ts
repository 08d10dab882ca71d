import type { ChartKey } from '$lib/keys/actions/chart.ts';

/** A place in a chart that the keyboard stops at, with what a screen reader says there. */
export interface ChartStop {
  readonly key: string;
  readonly row: number;
  readonly column: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly words: string;
}

const steps: Partial<Record<ChartKey, readonly [number, number]>> = {
  stepUp: [-1, 0],
  stepDown: [1, 0],
  stepLeft: [0, -1],
  stepRight: [0, 1],
};

/** A cell of a grid by its row and column, from 0. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** Where a key leads in a grid of so many rows and columns; null where the key moves nothing. At an edge one stays. */
export function stepInGrid(
  key: ChartKey | null,
  { row, column }: GridPlace,
  rows: number,
  columns: number,
): GridPlace | null {
  if (key === null) return null;
  if (key === 'toBeginning') return { row, column: 0 };
  if (key === 'toEnd') return { row, column: columns - 1 };
  const step = steps[key];
  if (!step) return null;
  return {
    row: Math.max(0, Math.min(rows - 1, row + step[0])),
    column: Math.max(0, Math.min(columns - 1, column + step[1])),
  };
}
