import type { ClutchItem } from '../api/types.ts';
import { referenceName } from '../records/reference-name.ts';
import { counted } from '../ui/figures.ts';

/** Who may have sired it: "LK-01", "LK-01 or LK-02"; empty where nobody knows, and where candidate pairs say it with the dams. */
export function fathersOf({ parents }: ClutchItem): string {
  if (parents.mode === 'pairs') return '';
  const names = parents.sires.flatMap(({ individual }) => (individual ? [referenceName(individual)] : []));
  if (names.length > 3) return counted(names.length, ['animal', 'animals']);
  return names.length === 2 ? `${names[0] ?? ''} or ${names[1] ?? ''}` : names.join(', ');
}
