import { standings } from '../../../shared/vocabulary.ts';
import type { Ancestry } from '../kernel/ancestry.ts';
import type { AuditInput } from './audit-input.ts';
import type { PoolOrigins } from './flag-causes.ts';
import { isOfUnknownOrigin } from './founder-verdicts.ts';

/** What is not known yet, and what an answer would make of it. */
export type QuestionKind = 'undocumented-source' | 'unknown-origin' | 'unknown-parent' | 'uncertain-clutch';

export interface OpenQuestion {
  readonly kind: QuestionKind;
  /** Dense number of the source, the founder or the clutch. */
  readonly number: number;
  readonly settles: number;
}

const CORROBORATED = standings.indexOf('corroborated');

/**
 * Ranks single unanswered questions by how much of the living animals' expected genome an answer would settle, 0 to 1 each:
 *
 * - an undocumented source: the part of the gene pool that comes from its founders, which papers would trace;
 * - a founder of unknown origin, or a parent that nobody knows: the part that comes from it, which would get a known beginning;
 * - an uncertain clutch: the part that came through those of its parents that are only candidates, which would come through known
 *   animals. That is its part of the pool times 1 − ½·(number of parents that are the same in every candidate pair).
 *
 * Each is counted as if all other questions stayed open, so the parts of several questions must not be added: one may lie above another.
 *
 * @param origins of the living members
 * @returns those that settle anything, the most first
 */
export function openQuestions(input: AuditInput, ancestry: Ancestry, origins: PoolOrigins): OpenQuestion[] {
  const { traces, standings: standing } = input.verdicts;
  const claimsOrigin = input.labelKind === 'locality' || input.labelKind === 'trade-name';
  const isOpen = (source: number): boolean =>
    claimsOrigin ? traces[source] !== 1 : (standing[source] ?? standings.length) > CORROBORATED;
  const sources = [...origins.sources].flatMap(([number, settles]): OpenQuestion[] =>
    isOpen(number) ? [{ kind: 'undocumented-source', number, settles }] : [],
  );
  const founders = origins.founders.flatMap(({ individual, share }): OpenQuestion[] =>
    isOfUnknownOrigin(input.verdicts, input.pedigree, individual)
      ? [{ kind: 'unknown-origin', number: individual, settles: share }]
      : [],
  );
  const unknownParents = origins.unknownParents.map(({ number, share }): OpenQuestion => {
    return { kind: 'unknown-parent', number, settles: share };
  });
  const uncertain = origins.uncertain.map(({ number, share }): OpenQuestion => {
    return { kind: 'uncertain-clutch', number, settles: share * candidatePart(ancestry, number) };
  });
  return [...sources, ...founders, ...unknownParents, ...uncertain]
    .filter(({ settles }) => settles > 1e-12)
    .sort(bySettled);
}

const kinds: readonly QuestionKind[] = ['undocumented-source', 'unknown-origin', 'unknown-parent', 'uncertain-clutch'];

/** What differs by rounding counts as the same; then papers come before tests. */
function bySettled(one: OpenQuestion, other: OpenQuestion): number {
  const more = other.settles - one.settles;
  if (Math.abs(more) > 1e-9) return more;
  return kinds.indexOf(one.kind) - kinds.indexOf(other.kind) || one.number - other.number;
}

/** Where each clutch of an ancestry stands in it is kept while the ancestry is. */
const placesOf = new WeakMap<Ancestry, ReadonlyMap<number, number>>();

/** Part of the genome of a clutch that comes from parents which are only candidates, 0 to 1. */
function candidatePart(ancestry: Ancestry, clutch: number): number {
  const places = placesOf.get(ancestry) ?? new Map(Array.from(ancestry.clutches, (one, local) => [one, local]));
  placesOf.set(ancestry, places);
  const local = places.get(clutch) ?? 0;
  let certain = 0;
  for (let link = ancestry.parentStart[local] as number; link < (ancestry.parentStart[local + 1] as number); link++)
    if ((ancestry.weights[link] as number) > 0.5 - 1e-12) certain += 0.5;
  return Math.max(0, 1 - certain);
}
