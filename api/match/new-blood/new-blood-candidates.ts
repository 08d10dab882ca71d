import type { EntityManager } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { isLiving } from '../../lineage/register-graph.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { findBreeders, type Breeder } from '../breeders.ts';
import type { MateExclusion } from '../mates/mates.view.ts';
import { readKeepersOf } from './carriers.queries.ts';
import type { ExchangedLine } from './exchange-sides.ts';
import type { NewBloodQuery } from './new-blood.dto.ts';
import { say } from '../../platform/say.ts';

/** Most living animals that are looked at. */
const CONSIDERED_MOST = 5000;

/** A holding, its partners, and who may be added. By dense numbers, in the order of registry numbers. */
export interface NewBloodCandidates {
  /** Null for the whole line. */
  readonly keeperId: string | null;
  readonly holding: readonly number[];
  /** All that live of the line. */
  readonly line: readonly number[];
  readonly partners: readonly Breeder[];
  readonly candidates: readonly Breeder[];
  readonly excluded: ReadonlyMap<MateExclusion, readonly number[]>;
}

/**
 * Finds who gets new blood and who might bring it.
 *
 * @param keeperId whose part of the line it is; null for all of it
 * @throws InvalidProblem where too many animals come into question
 */
export async function findNewBlood(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  { line, speciesId }: ExchangedLine,
  query: NewBloodQuery,
  keeperId: string | null,
): Promise<NewBloodCandidates> {
  const living = bySerial(
    snapshot,
    Array.from(snapshot.membersOfLine(line)).filter((animal) => isLiving(snapshot.graph, animal)),
  );
  requireFew(living.length, say`of this line`);
  const ids = living.map((animal) => snapshot.idOf(animal));
  const keeperOf = keeperId === null ? null : await readKeepersOf(manager, ids);
  const isHeld = living.map((_, place) => keeperOf === null || keeperOf.get(ids[place] ?? '') === keeperId);
  const holding = living.filter((_, place) => isHeld[place]);
  const foreign = query.crossLines ? livingElsewhere(snapshot, line) : [];
  // of the whole line nobody stands outside: who of it breeds is the question
  const asked = [...(keeperOf === null ? living : living.filter((_, place) => !isHeld[place])), ...foreign];
  const { disputed } = query;
  const [own, others] = await Promise.all([
    findBreeders(manager, snapshot, holding, { disputed }),
    findBreeders(manager, snapshot, asked, query),
  ]);
  const excluded = new Map<MateExclusion, number[]>();
  for (const { animal, reason, speciesId: species } of others.excluded) {
    if (species !== speciesId) continue;
    const known = excluded.get(reason);
    if (known) known.push(animal);
    else excluded.set(reason, [animal]);
  }
  return {
    keeperId,
    holding,
    line: living,
    partners: own.breeders,
    candidates: others.breeders.filter((breeder) => breeder.speciesId === speciesId),
    excluded,
  };
}

function livingElsewhere(snapshot: LineageSnapshot, line: number): number[] {
  const { graph } = snapshot;
  const found: number[] = [];
  for (let animal = 0; animal < snapshot.size; animal++)
    if (graph.lineOf[animal] !== line && isLiving(graph, animal)) found.push(animal);
  requireFew(found.length, say`of other lines`);
  return bySerial(snapshot, found);
}

function requireFew(count: number, words: string): void {
  if (count <= CONSIDERED_MOST) return;
  const pointer = words === 'of other lines' ? '/crossLines' : '';
  const remedy =
    words === 'of other lines' ? say`Ask without crossLines.` : say`Ask for the mates of one animal of it instead.`;
  const detail = say`${count} animals ${words} live, at most ${CONSIDERED_MOST} are looked at. ${remedy}`;
  throw new InvalidProblem(say`Too many animals come into question.`, [{ pointer, detail }]);
}

function bySerial({ graph }: LineageSnapshot, animals: readonly number[]): number[] {
  return [...animals].sort((one, other) => (graph.serials[one] ?? 0) - (graph.serials[other] ?? 0));
}
