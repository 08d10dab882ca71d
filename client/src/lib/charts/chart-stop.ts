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

const steps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** A cell of a grid by its row and column, from 0. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

/** Where a key leads in a grid of so many rows and columns; null where the key moves nothing. At an edge one stays. */
export function stepInGrid(key: string, { row, column }: GridPlace, rows: number, columns: number): GridPlace | null {
  if (key === 'Home') return { row, column: 0 };
  if (key === 'End') return { row, column: columns - 1 };
  const step = steps[key];
  if (!step) return null;
  return {
    row: Math.max(0, Math.min(rows - 1, row + step[0])),
    column: Math.max(0, Math.min(columns - 1, column + step[1])),
  };
}
