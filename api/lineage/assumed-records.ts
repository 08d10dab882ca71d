import type { EntityManager } from 'typeorm';
import { dateBounds } from '../../shared/edtf.ts';
import { InvalidProblem, type ProblemError } from '../platform/problem.ts';
import { animalsOf, probabilities, type Candidate, type Parents } from '../register/clutches/parents.ts';
import { readSides } from '../register/clutches/parents.queries.ts';
import { requestedParents } from '../register/clutches/requested-parents.ts';
import { impossibleInClutch } from '../register/plausibility.ts';
import type { Assumptions } from './kernel/ancestry-copy.ts';
import type { Pair } from './kernel/genome-flow.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { AssumedClutch, AssumedSource, WhatIfRequest } from './what-if.dto.ts';
import { readHatchingOf, standingClutches, standingSources } from './what-if.queries.ts';
import { say } from '../platform/say.ts';

/** What a request assumes, checked against the register as far as whoever asks may see it. */
export interface AssumedRecords {
  readonly sources: readonly AssumedSource[];
  readonly clutches: readonly { readonly id: string; readonly parents: Parents }[];
}

/**
 * Reads what a request assumes, as strictly as if it were to be recorded.
 *
 * @throws InvalidProblem that names each record that is not there, stands twice or may not be seen, each parent that cannot be one, and
 *   each clutch that was laid before a parent hatched
 */
export async function readAssumed(manager: EntityManager, request: WhatIfRequest): Promise<AssumedRecords> {
  const standing = await standingSources(manager, idsOf(request.sources));
  const laid = await standingClutches(manager, idsOf(request.clutches));
  const errors = [
    ...missing(request.sources, 'sources', 'source', (id) => standing.has(id)),
    ...missing(request.clutches, 'clutches', 'clutch', (id) => laid.has(id)),
  ];
  if (errors.length > 0) throw new InvalidProblem(say`Some records cannot be taken; each is named below.`, errors);
  const clutches = [];
  for (const [place, clutch] of request.clutches.entries()) {
    const parents = await parentsIn(manager, clutch, `/clutches/${place}`);
    await refuseTooYoung(manager, parents, laid.get(clutch.id.toLowerCase()) ?? null, `/clutches/${place}`);
    clutches.push({ id: clutch.id.toLowerCase(), parents });
  }
  return { sources: request.sources, clutches };
}

const idsOf = (records: readonly { readonly id: string }[]): string[] => records.map(({ id }) => id.toLowerCase());

function missing(
  records: readonly { readonly id: string }[],
  list: string,
  word: string,
  isThere: (id: string) => boolean,
): ProblemError[] {
  const ids = idsOf(records);
  return ids.flatMap((id, place): ProblemError[] => {
    const pointer = `/${list}/${place}/id`;
    if (!isThere(id)) return [{ pointer, detail: say`There is no ${word} with the id ${id}.` }];
    return ids.indexOf(id) < place ? [{ pointer, detail: say`This ${word} stands here twice. Name it once.` }] : [];
  });
}

async function parentsIn(manager: EntityManager, clutch: AssumedClutch, at: string): Promise<Parents> {
  const { sires, dams, pairs, id } = clutch;
  const named = { ...(sires ? { sires } : {}), ...(dams ? { dams } : {}), ...(pairs ? { pairs } : {}) };
  const parents = await below(at, () => requestedParents(manager, named, () => readSides(manager, id)));
  if (parents) return parents;
  const detail = say`Say what is assumed of this clutch: give sires, dams or pairs.`;
  throw new InvalidProblem(detail, [{ pointer: at, detail }]);
}

/** Lets errors of a part of the request point to where it stands in the whole. */
async function below<Result>(at: string, work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof InvalidProblem)) throw error;
    const errors = (error.errors ?? []).map(({ pointer, ...rest }) => ({ ...rest, pointer: `${at}${pointer ?? ''}` }));
    throw new InvalidProblem(error.message, errors);
  }
}

async function refuseTooYoung(
  manager: EntityManager,
  parents: Parents,
  laid: string | null,
  pointer: string,
): Promise<void> {
  if (laid === null) return;
  const facts = await readHatchingOf(
    manager,
    animalsOf(parents).map(({ id }) => id),
  );
  const errors = impossibleInClutch({ laid: dateBounds(laid), parents: facts }).map(({ detail }) => ({
    pointer,
    detail,
  }));
  if (errors.length > 0) throw new InvalidProblem(say`The dates cannot be right together.`, errors);
}

/**
 * The same by the numbers of a snapshot that was taken afterwards.
 *
 * @throws InvalidProblem where a record went away meanwhile
 */
export function assumptionsIn(snapshot: LineageSnapshot, { sources, clutches }: AssumedRecords): Assumptions {
  const baseKinships = new Map<number, number>();
  sources.forEach(({ id, baseKinship }, place) => {
    const source = snapshot.graph.sources.findIndex((one) => one.id === id.toLowerCase());
    baseKinships.set(known(source, `/sources/${place}/id`), baseKinship);
  });
  const pairs = new Map<number, readonly Pair[]>();
  clutches.forEach(({ id, parents }, place) => {
    const at = `/clutches/${place}`;
    const numberOf = (animal: { readonly id: string } | null): number =>
      animal === null ? -1 : known(snapshot.find(animal.id), at);
    pairs.set(known(snapshot.findClutch(id), at), pairsOf(parents, numberOf));
  });
  return { baseKinships, pairs };
}

function known(number: number, pointer: string): number {
  const detail = say`This record, or a parent in it, was taken out of the register just now. Look at it again.`;
  if (number < 0) throw new InvalidProblem(detail, [{ pointer, detail }]);
  return number;
}

/** Candidate pairs with probabilities that sum to 1: p(s,d) = p(s)·p(d), or as given together. */
function pairsOf(parents: Parents, numberOf: (animal: { readonly id: string } | null) => number): Pair[] {
  if (parents.mode === 'pairs') {
    const odds = probabilities(parents.pairs);
    if (parents.pairs.length === 0) return [{ a: -1, b: -1, probability: 1 }];
    return parents.pairs.map(({ a, b }, place) => ({ a: numberOf(a), b: numberOf(b), probability: odds[place] ?? 0 }));
  }
  const side = (candidates: readonly Candidate[]): { animal: number; probability: number }[] => {
    if (candidates.length === 0) return [{ animal: -1, probability: 1 }];
    const odds = probabilities(candidates);
    return candidates.map(({ animal }, place) => ({ animal: numberOf(animal), probability: odds[place] ?? 0 }));
  };
  const dams = side(parents.dams);
  return side(parents.sires)
    .flatMap((sire) =>
      dams.map((dam) => ({ a: sire.animal, b: dam.animal, probability: sire.probability * dam.probability })),
    )
    .filter(({ probability }) => probability > 0);
}
