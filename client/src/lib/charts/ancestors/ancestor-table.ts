import { generations, genomeShares, placesInTree } from './genome-shares.ts';
import { referenceName } from '../../records/reference-name.ts';
import { parentLinks, readPedigree, type PedigreeGraph } from './pedigree-graph.ts';
import type { IndividualNode, PedigreeView } from './pedigree-view.ts';
import { word } from '../../words/word.ts';
import { written } from '../../ui/figures.ts';

/** One animal of the chart in words. */
export interface AncestorRow {
  animal: IndividualNode;
  /** "sire of IH-61; candidate dam (0.25) of OP-21", empty for the root. */
  role: string;
  /** "hatched 2019-04-12 from clutch of …", the source, or that nothing is known. */
  origin: string;
  /** Expected part in the root's genome, 0 to 1. */
  share: number;
  /** Places it would fill in a tree; 1 when it stands once. */
  places: number;
}

export interface Generation {
  /** 0 is the animal itself, 1 its parents. An animal stands at its fewest steps. */
  number: number;
  rows: AncestorRow[];
}

/** The chart as a table, generation by generation: the same animals, parents, probabilities and shares. */
export function ancestorTable(view: PedigreeView): Generation[] {
  const graph = readPedigree(view);
  const levels = generations(graph);
  const shares = genomeShares(graph);
  const places = placesInTree(graph);
  const found = new Map<number, AncestorRow[]>();
  for (const animal of graph.individuals.values()) {
    const level = levels.get(animal.id)?.least ?? 0;
    const row = {
      animal,
      role: roleInWords(graph, animal.id),
      origin: originInWords(graph, animal),
      share: shares.get(animal.id) ?? 0,
      places: places.get(animal.id) ?? 1,
    };
    found.set(level, [...(found.get(level) ?? []), row]);
  }
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([number, rows]) => ({ number, rows: rows.sort((a, b) => b.share - a.share) }));
}

/** Code where there is one, else the registry number; else a private animal. */
export function nameOf(animal: { code?: string | null; number: string | null }): string {
  return referenceName({ code: animal.code ?? null, number: animal.number });
}

const roles = { sire: word('sire'), dam: word('dam'), either: word('parent') };

function roleInWords(graph: PedigreeGraph, id: string): string {
  const parts = (graph.clutchesOf.get(id) ?? []).map((link) => {
    const young = (graph.youngOf.get(link.clutch) ?? []).flatMap((one) => graph.individuals.get(one) ?? []);
    const role =
      link.probability < 1
        ? `candidate ${roles[link.role]} (${roundedProbability(link.probability)})`
        : roles[link.role];
    return `${role} of ${young.map(nameOf).join(', ')}`;
  });
  return parts.join('; ');
}

/** A probability as the chart prints it: two digits, never 0 or 1 when it is neither. */
export function roundedProbability(value: number): string {
  if (value <= 0 || value >= 1) return String(value);
  return written(String(Math.min(0.99, Math.max(0.01, Math.round(value * 100) / 100))));
}

/** The probabilities with which an animal is a candidate parent, short enough to stand under it. */
export function probabilitiesInWords(values: readonly number[]): string {
  const printed = values.map(roundedProbability);
  if (printed.length < 3) return printed.join(' · ');
  if (printed.every((one) => one === printed[0])) return `${printed.length} × ${printed[0]}`;
  return `${roundedProbability(Math.min(...values))} to ${roundedProbability(Math.max(...values))}`;
}

function originInWords(graph: PedigreeGraph, animal: IndividualNode): string {
  const source = graph.sources.get(graph.sourceOf.get(animal.id) ?? '');
  if (source) return source.label ? `${source.title}, received as ${source.label}` : `${source.title}, no label`;
  const clutch = graph.clutches.get(graph.birthClutch.get(animal.id) ?? '');
  if (clutch) {
    const known = parentLinks(graph, animal.id).length > 0;
    return known ? clutch.title : `${clutch.title}, parents not known`;
  }
  if (animal.hasMoreAncestors) return 'its clutch is above this table';
  return 'origin unknown';
}
