import type { EntityManager } from 'typeorm';
import { readYoungOf, type AnimalRows, type UnsettledChange } from './figures-rows.queries.ts';
import { descendantClutches } from './kernel/recompute.ts';
import { touchedClutches } from './lineage-memory.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { isLiving } from './register-graph.ts';
import { TracedShares } from './traced-shares.ts';

/** Lines up to this size have the mean kinship of a new animal computed at once; others wait for the job. */
const KINSHIP_AT_ONCE = 2000;

/** Whose stored figures follow from some changes, by dense numbers. */
export interface FiguresPlan {
  readonly animals: Int32Array;
  /** Animals that changed themselves: their mean kinship is written too. */
  readonly changed: ReadonlySet<number>;
  /** Records that are gone, by id. */
  readonly gone: readonly string[];
}

/** Everything there is. */
export function planOfAll(snapshot: LineageSnapshot): FiguresPlan {
  const animals = Int32Array.from({ length: snapshot.size }, (_, number) => number);
  return { animals, changed: new Set(), gone: [] };
}

/** What follows from some changes, all of them part of the snapshot: the records themselves and all that descends from them. */
export async function planOf(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  changes: readonly UnsettledChange[],
): Promise<FiguresPlan> {
  const { graph, inbreeding } = snapshot;
  const idsOf = (...kinds: UnsettledChange['kind'][]): string[] =>
    changes.flatMap(({ kind, id }) => (kinds.includes(kind) && id !== null ? [id] : []));
  const known = (ids: string[], find: (id: string) => number): number[] =>
    ids.map(find).filter((number) => number >= 0);
  const sourceIds = idsOf('source');
  const from = touchedClutches(graph.pedigree, {
    clutches: Int32Array.from(known(idsOf('clutch'), (id) => snapshot.findClutch(id))),
    individuals: new Set(known(idsOf('origin'), (id) => snapshot.find(id))),
    sources: new Set(graph.sources.flatMap(({ id }, number) => (sourceIds.includes(id) ? [number] : []))),
  });
  const clutches = descendantClutches(graph.pedigree, inbreeding.order, from);
  const changed = new Set(known(idsOf('individual', 'origin'), (id) => snapshot.find(id)));
  const young = await readYoungOf(
    manager,
    Array.from(clutches, (clutch) => snapshot.clutchIdOf(clutch)),
    sourceIds,
  );
  const animals = new Set([...changed, ...known(young, (id) => snapshot.find(id))]);
  const lineIds = new Set(idsOf('line'));
  graph.lines.forEach(({ id }, line) => {
    if (lineIds.has(id)) for (const member of snapshot.membersOfLine(line)) animals.add(member);
  });
  const gone = [...idsOf('individual', 'origin').filter((id) => snapshot.find(id) < 0), ...idsOf('line')];
  return { animals: Int32Array.from(animals), changed, gone };
}

/** Whether every figure of a plan follows the newest change. */
export function isCurrentPlan(snapshot: LineageSnapshot, { animals }: FiguresPlan): boolean {
  return animals.every((animal) => snapshot.isCurrent(animal));
}

/** Ids of the lines that some animals belong to. */
export function linesOf({ graph }: LineageSnapshot, animals: Iterable<number>): string[] {
  const lines = new Set<number>();
  for (const animal of animals) lines.add(graph.lineOf[animal] ?? -1);
  return [...lines].flatMap((line) => graph.lines[line]?.id ?? []).sort();
}

/** The rows of some animals; numbers of removed ones are passed over. */
export function animalRows(
  snapshot: LineageSnapshot,
  animals: Int32Array,
  changed: ReadonlySet<number>,
  traced = new TracedShares(snapshot),
): AnimalRows {
  const numbers = Array.from(animals).filter((animal) => snapshot.isThere(animal));
  const kinships = numbers.map((animal) => {
    const line = snapshot.graph.lineOf[animal] ?? -1;
    // of no line: no job comes by that would take away what it had in its last one
    if (line < 0) return null;
    if (!changed.has(animal)) return undefined;
    return snapshot.membersOfLine(line).length > KINSHIP_AT_ONCE ? undefined : snapshot.meanKinshipOf(animal);
  });
  return {
    ids: numbers.map((animal) => snapshot.idOf(animal)),
    inbreeding: numbers.map((animal) => snapshot.inbreedingOf(animal).expected),
    isLiving: numbers.map((animal) => isLiving(snapshot.graph, animal)),
    depth: numbers.map((animal) => snapshot.depthOf(animal).depth),
    tracedShare: numbers.map((animal) => traced.of(animal)),
    meanKinship: kinships.map((kinship) => kinship ?? null),
    keepsKinship: kinships.map((kinship) => kinship === undefined),
  };
}
