import { sheetColumns } from '$shared/register-sheet.ts';
import { kept } from '../../ui/kept.ts';
import { dateOrders, type DateOrder } from './date-order.ts';
import type { Target } from './guess-columns.ts';

/** What a keeper chose for a heading. */
export interface RememberedColumn {
  readonly target: Target;
  readonly order?: DateOrder | undefined;
}

/** Most headings that are remembered; the ones chosen longest ago are forgotten first. */
const most = 300;

/** What one keeper decided about headings, by bare heading. It stays on this device. */
export class ColumnMemory {
  readonly #key: string;
  readonly columns: ReadonlyMap<string, RememberedColumn>;

  /** @param keeperId whose choices these are; several keepers may share a device */
  constructor(keeperId: string) {
    this.#key = `linekeeper.columns.${keeperId}`;
    this.columns = read(kept.get(this.#key));
  }

  /** Remembers choices beside the earlier ones. */
  keep(choices: readonly (readonly [string, RememberedColumn])[]): void {
    const fresh = new Map(choices);
    const older = [...this.columns].filter(([heading]) => !fresh.has(heading));
    kept.set(this.#key, JSON.stringify([...older, ...fresh].slice(-most)));
  }
}

/** What was kept may be of an older version, or spoiled: what is not understood is forgotten. */
function read(text: string | null): Map<string, RememberedColumn> {
  const columns = new Map<string, RememberedColumn>();
  if (text === null) return columns;
  try {
    const entries: unknown = JSON.parse(text);
    if (!Array.isArray(entries)) return columns;
    for (const entry of entries as unknown[]) {
      if (!Array.isArray(entry) || typeof entry[0] !== 'string') continue;
      const { target, order } = (entry[1] ?? {}) as Record<string, unknown>;
      if (!isTarget(target)) continue;
      columns.set(entry[0], { target, order: dateOrders.find((each) => each === order) });
    }
  } catch {
    return columns;
  }
  return columns;
}

const isTarget = (value: unknown): value is Target =>
  value === 'own' || value === 'out' || sheetColumns.some((column) => column === value);
