import type { ChartKey } from '$lib/keys/actions/chart.ts';
import type { AncestorLayout, PlacedAnimal } from './ancestor-layout.ts';
import { likeliestParents } from './loops.ts';

/** The animal that a key leads to: up to the likeliest parent, down towards the root, sideways to the next. */
export function moveFrom(layout: AncestorLayout, id: string, key: ChartKey, came: string | null): string | null {
  const { graph } = layout;
  if (key === 'stepUp') return likeliestParents(graph, id)[0] ?? null;
  if (key === 'stepDown') return youngOf(layout, id, came);
  if (key === 'toBeginning') return graph.root;
  const step = key === 'stepLeft' ? -1 : key === 'stepRight' ? 1 : 0;
  return step === 0 ? null : sideways(layout, id, step);
}

function youngOf(layout: AncestorLayout, id: string, came: string | null): string | null {
  const { graph } = layout;
  const young = (graph.clutchesOf.get(id) ?? []).flatMap((link) => graph.youngOf.get(link.clutch) ?? []);
  if (came !== null && young.includes(came)) return came;
  const shares = new Map(layout.animals.map((placed) => [placed.animal.id, placed.share]));
  return young.sort((a, b) => (shares.get(b) ?? 0) - (shares.get(a) ?? 0))[0] ?? null;
}

/** The nearest animal at that side, where a step up or down costs three times a step aside. */
function sideways(layout: AncestorLayout, id: string, step: number): string | null {
  const here = layout.animals.find((placed) => placed.animal.id === id);
  if (!here) return null;
  const way = (other: PlacedAnimal) => Math.abs(other.x - here.x) + 3 * Math.abs(other.y - here.y);
  const beside = layout.animals.filter((other) => (other.x - here.x) * step > 1);
  return beside.sort((a, b) => way(a) - way(b))[0]?.animal.id ?? null;
}
