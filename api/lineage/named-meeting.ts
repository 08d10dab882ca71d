import type { EntityManager } from 'typeorm';
import { InvalidProblem } from '../platform/problem.ts';
import type { Meeting } from './kernel/pair-steps.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { readClutchNames, readIndividualNames, readSourceNames } from './record-names.queries.ts';
import { say } from '../platform/say.ts';

/**
 * Where loops close, as a request names it: an animal by id or registry number, the unknown parent of a clutch by the clutch, founders of one
 * source or of two by the sources, with a comma between. The same is asked of the database whatever the name is.
 *
 * @throws InvalidProblem if it names nothing (or something that may not be seen)
 */
export async function resolveMeeting(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  text: string,
): Promise<Meeting> {
  const individual = snapshot.find(text);
  const clutch = snapshot.findClutch(text);
  const sources = sourcesIn(snapshot, text);
  const [animals, clutches, origins] = await Promise.all([
    readIndividualNames(manager, individual < 0 ? [] : [snapshot.idOf(individual)]),
    readClutchNames(manager, clutch < 0 ? [] : [snapshot.clutchIdOf(clutch)]),
    readSourceNames(manager, [...new Set(sources.map((source) => snapshot.graph.sources[source]?.id ?? ''))]),
  ]);
  if (animals.length > 0) return { kind: 'individual', individual };
  if (clutches.length > 0) return { kind: 'unknown parent', clutch };
  const [first, second = first] = sources;
  if (first === undefined || second === undefined || origins.length < new Set(sources).size)
    throw notCommonAncestor(text);
  return { kind: 'sources', a: Math.min(first, second), b: Math.max(first, second) };
}

/** 422: the name is none of a common ancestor. */
export function notCommonAncestor(text: string): InvalidProblem {
  const detail = say`No loop of this animal closes in ${text}. Name one of its \`ancestors\`, as the answer without \`commonAncestor\` has them: an animal by id or registry number, an unknown parent by its clutch, founders by their source.`;
  return new InvalidProblem(detail, [{ pointer: '/commonAncestor', detail }]);
}

/** The one or two sources that a text names; none where it names anything else. */
function sourcesIn({ graph }: LineageSnapshot, text: string): number[] {
  const ids = text
    .toLowerCase()
    .split(',')
    .map((id) => id.trim());
  const found = ids.map((id) => graph.sources.findIndex((source) => source.id === id));
  return found.length > 2 || found.includes(-1) ? [] : found;
}
