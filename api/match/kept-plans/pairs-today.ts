import type { EntityManager } from 'typeorm';
import { kinshipRangesWith } from '../../lineage/kernel/kinship-with.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { restsOn, type YoungInbreeding } from '../../lineage/young-inbreeding.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { findBreeders } from '../breeders.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import type { AnimalNames } from '../plan/animal-names.ts';
import type { PlanRecord, RecordedAnimal } from '../plan/plan-record.ts';
import type { PlanLeave, PlanRequest } from '../plan/plan.dto.ts';
import type { Side } from '../plan/reasons.ts';
import { readAnimalsNow, type AnimalNow } from './animals-now.queries.ts';
import { readHousedIn, readPairingNames, type PairRow } from './kept-plan.queries.ts';
import {
  changeOfInbreeding,
  changesOfAnimal,
  neededLeaves,
  type AnimalFacts,
  type PairChange,
} from './pair-changes.ts';
import { say } from '../../platform/say.ts';

/** A kept plan as it was read. */
export interface KeptAnswer {
  readonly assumptions: PlanRequest;
  readonly record: PlanRecord;
  readonly housed: Readonly<Record<string, readonly string[]>>;
  readonly rows: readonly PairRow[];
}

/** A pair of a kept plan as it is today, as far as whoever asks may see it. */
export interface PairToday {
  readonly row: PairRow;
  readonly male: AnimalFacts;
  readonly female: AnimalFacts;
  /** F of the young; null where one of the two is no longer in the register. */
  readonly inbreeding: YoungInbreeding | null;
  readonly changes: readonly PairChange[];
  readonly leaves: readonly PlanLeave[];
  /** One for each leave. */
  readonly warnings: readonly string[];
  /** Whether it cannot be made any more. */
  readonly stops: boolean;
  readonly isMove: boolean;
  readonly keeperIds: readonly string[];
  /** Whether one of the two was of another line when the plan was made. */
  readonly wasForeign: boolean;
  /** Animals of it that counted as old and have not bred to this day. */
  readonly reserveIds: readonly string[];
}

/** Reads what the register says today of the pairs of a kept plan, and compares it with what it said then. */
export async function readPairsToday(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  kept: KeptAnswer,
  names: AnimalNames,
): Promise<PairToday[]> {
  const reader = await TodayReader.read(manager, snapshot, kept, names);
  return kept.rows.map((row) => reader.pair(row));
}

class TodayReader {
  readonly #ranges: ReadonlyMap<PairRow, YoungInbreeding>;

  private constructor(
    private readonly kept: KeptAnswer,
    private readonly names: AnimalNames,
    private readonly animals: ReadonlyMap<string, AnimalNow>,
    private readonly breeding: Breeding,
    private readonly housed: ReadonlyMap<string, readonly string[]>,
    private readonly pairings: ReadonlyMap<string, string>,
    private readonly keepersThen: ReadonlyMap<string, string>,
    ranges: ReadonlyMap<PairRow, YoungInbreeding>,
  ) {
    this.#ranges = ranges;
  }

  static async read(
    manager: EntityManager,
    snapshot: LineageSnapshot,
    kept: KeptAnswer,
    names: AnimalNames,
  ): Promise<TodayReader> {
    const ids = [...new Set(kept.rows.flatMap(({ maleId, femaleId }) => [maleId, femaleId]))];
    const { males, females } = kept.record;
    const animals = await readAnimalsNow(manager, ids);
    const housed = await readHousedIn(manager, ids);
    const breeding = await readBreeding(manager, snapshot, ids);
    const keepers = await readKeeperNames(manager, [
      ...new Set([...males, ...females].map(({ keeperId }) => keeperId)),
    ]);
    const pairings = await readPairingNames(manager, [...new Set([...housed.values()].flat())]);
    const ranges = rangesToday(snapshot, kept.rows);
    return new TodayReader(kept, names, animals, breeding, housed, pairings, keepers, ranges);
  }

  pair(row: PairRow): PairToday {
    const { assumptions, record } = this.kept;
    const inbreeding = this.#ranges.get(row) ?? null;
    const two = [this.#facts('male', row), this.#facts('female', row)] as const;
    const [male, female] = two;
    const then = record.young[row.place]?.inbreeding;
    const changes = [
      ...two.flatMap((facts) => changesOfAnimal(facts, this.keepersThen.get(facts.then.keeperId) ?? 'somebody')),
      ...this.#otherSpecies(row),
      ...(then ? changeOfInbreeding(then, inbreeding) : []),
      ...lostPairing(row),
    ];
    const isSeen = two.every(({ now }) => now !== undefined);
    const needed = isSeen ? neededLeaves([male, female], inbreeding, record.line, assumptions.inbreedingTo) : [];
    const keeperIds = two.map(({ now, then: was }) => now?.keeperId ?? was.keeperId);
    return {
      row,
      male,
      female,
      inbreeding,
      changes,
      leaves: needed.map(({ leave }) => leave),
      warnings: needed.map(({ warning }) => warning),
      stops: changes.some(({ stops }) => stops),
      isMove: keeperIds[0] !== keeperIds[1],
      keeperIds,
      wasForeign: two.some(({ then: was }) => was.line?.id !== record.line.id),
      reserveIds: two.flatMap(({ then: was, hasBred }) => (was.isReserve && !hasBred ? [was.id] : [])),
    };
  }

  #facts(side: Side, row: PairRow): AnimalFacts {
    const id = side === 'male' ? row.maleId : row.femaleId;
    const then = this.#recorded(side, row.place);
    const now = this.animals.get(id);
    const before = this.kept.housed[id] ?? [];
    const livesIn = (this.housed.get(id) ?? []).flatMap((one) => {
      const name = this.pairings.get(one);
      return one === row.pairingId || name === undefined ? [] : [{ id: one, name }];
    });
    return {
      side,
      then,
      now,
      name: this.names.nameOf(id),
      reason: this.breeding.reasons.get(id) ?? null,
      isDisputed: this.breeding.disputed.has(id),
      hasBred: this.breeding.proven.has(id),
      livesIn: now ? livesIn : [],
      housedSince: livesIn.filter((one) => !before.includes(one.id)).map(({ name }) => name),
    };
  }

  #recorded(side: Side, place: number): RecordedAnimal {
    const { plan, males, females } = this.kept.record;
    const pair = plan.pairs[place];
    const animal = side === 'male' ? males[pair?.male ?? -1] : females[pair?.female ?? -1];
    if (!animal) throw new RangeError(`The kept plan has no ${side} at place ${place}.`);
    return animal;
  }

  #otherSpecies({ maleId, femaleId }: PairRow): PairChange[] {
    const { species } = this.breeding;
    const [one, other] = [species.get(maleId), species.get(femaleId)];
    if (one === undefined || other === undefined || one === other) return [];
    const text = say`The two are recorded as of two species by now.`;
    return [{ kind: 'species', animalId: null, before: null, after: null, text, stops: true }];
  }
}

function lostPairing({ state, isPairingSeen, isPairingWithdrawn, pairingName }: PairRow): PairChange[] {
  if (state !== 'accepted' || !isPairingSeen || !isPairingWithdrawn) return [];
  const text = say`The pairing “${pairingName ?? ''}” that it became was withdrawn. Put the pair back to accept it again.`;
  return [{ kind: 'pairing-withdrawn', animalId: null, before: null, after: null, text, stops: false }];
}

interface Breeding {
  readonly reasons: ReadonlyMap<string, AnimalFacts['reason']>;
  readonly species: ReadonlyMap<string, string>;
  readonly disputed: ReadonlySet<string>;
  readonly proven: ReadonlySet<string>;
}

async function readBreeding(
  manager: EntityManager,
  snapshot: LineageSnapshot,
  ids: readonly string[],
): Promise<Breeding> {
  const numbers = ids.map((id) => snapshot.find(id)).filter((number) => number >= 0);
  const { breeders, excluded } = await findBreeders(manager, snapshot, numbers, { disputed: true });
  const proven = await readProven(manager, ids);
  const idOf = ({ animal }: { readonly animal: number }): string => snapshot.idOf(animal);
  return {
    reasons: new Map(excluded.map((one) => [idOf(one), one.reason])),
    species: new Map([...breeders, ...excluded].map((one) => [idOf(one), one.speciesId])),
    disputed: new Set(breeders.filter(({ isDisputed }) => isDisputed).map(idOf)),
    proven,
  };
}

/** F of the young of each pair today: the pairs of one male together. */
function rangesToday(snapshot: LineageSnapshot, rows: readonly PairRow[]): Map<PairRow, YoungInbreeding> {
  const ranges = new Map<PairRow, YoungInbreeding>();
  const found = new Map(rows.map((row) => [row, [snapshot.find(row.maleId), snapshot.find(row.femaleId)] as const]));
  const whole = rows.filter((row) => found.get(row)?.every((number) => number >= 0));
  for (const male of new Set(whole.map((row) => found.get(row)?.[0] ?? -1))) {
    const own = whole.filter((row) => found.get(row)?.[0] === male);
    const females = Int32Array.from(own, (row) => found.get(row)?.[1] ?? -1);
    const some = kinshipRangesWith(snapshot.graph.pedigree, snapshot.inbreeding, male, females);
    own.forEach((row, place) => {
      const range = some[place];
      if (range) ranges.set(row, restsOn(snapshot, male, females[place] ?? -1, range));
    });
  }
  return ranges;
}
