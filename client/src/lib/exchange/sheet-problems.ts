import type { ProblemPlace } from '../api/problem.ts';

export interface ProblemGroup {
  /** What the problems of the group share: the sentence without what differs from cell to cell. */
  kind: string;
  /** The sheet's own word for the column; empty where a problem concerns the whole row or file. */
  column: string;
  places: ProblemPlace[];
}

/**
 * Problems of a sheet grouped by what would mend them: the same sentence about the same column, whatever values it quotes.
 * The largest group comes first, rows in the order of the file.
 */
export function groupProblems(places: readonly ProblemPlace[]): ProblemGroup[] {
  const groups = new Map<string, ProblemGroup>();
  for (const place of places) {
    const kind = kindOf(place.detail);
    const column = place.column ?? '';
    const key = `${column}\n${kind}`;
    const group = groups.get(key) ?? { kind, column, places: [] };
    group.places.push(place);
    groups.set(key, group);
  }
  return [...groups.values()].sort((a, b) => b.places.length - a.places.length);
}

/** Problems by row, in the order of the file, of at most so many rows. */
export function byRow(places: readonly ProblemPlace[], most: number): Map<number, ProblemPlace[]> {
  const rows = new Map<number, ProblemPlace[]>();
  for (const place of places) if (place.row !== undefined) rows.set(place.row, [...(rows.get(place.row) ?? []), place]);
  return new Map([...rows].sort(([a], [b]) => a - b).slice(0, most));
}

function kindOf(detail: string): string {
  return detail
    .replace(/“[^”]*”|"[^"]*"|‘[^’]*’/g, '“…”')
    .replace(/\d[\d.,:/~-]*/g, '…')
    .trim();
}
