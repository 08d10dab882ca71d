import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { GivenUpProblem } from '../../platform/given-up.ts';
import { LongWork } from '../../platform/long-work.ts';
import { decodeCursor, encodeCursor } from '../../platform/paging.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { findLine } from '../../register/lines/line.queries.ts';
import { present } from '../../register/present.ts';
import { sexes } from '../../../shared/vocabulary.ts';
import type { Breeder } from '../breeders.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import { compare, type Rank } from '../mates/rank-mates.ts';
import { newBloodTask } from '../tasks/new-blood.task.ts';
import type { Gains, GainsQuestion, SexedAnimals } from './holding-gains.ts';
import { findNewBlood, type NewBloodCandidates } from './new-blood-candidates.ts';
import { newBloodView } from './new-blood-views.ts';
import type { NewBloodOrder, NewBloodQuery } from './new-blood.dto.ts';
import type { NewBloodView } from './new-blood.view.ts';
import { say } from '../../platform/say.ts';

/** Answers who would bring new blood. */
@Injectable()
export class NewBloodService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * Animals that would add to what a keeper has of a line, or to the line, ranked, and who is left out.
   *
   * @param actingId whoever asks: the keeper, where the question names none
   * @param signal ends the computation when nobody waits for it any more
   * @throws NotFoundProblem if there is no such line; InvalidProblem for an unknown keeper, a mark that is none of this list, or too many
   *   animals; BusyProblem if too many computations wait
   */
  async of(id: string, query: NewBloodQuery, actingId: string, signal: AbortSignal): Promise<NewBloodView> {
    const { manager } = this.dataSource;
    const line = present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    const sort = query.sort ?? (query.of === 'line' ? 'young' : 'animal');
    const cursor = `new-blood ${query.of} ${sort}`;
    const from = query.after === undefined ? null : rankOf(decodeCursor(cursor, 4, query.after).map(Number));
    const keeperId = query.of === 'line' ? null : (query.keeperId ?? actingId).toLowerCase();
    const keepers = await readKeeperNames(manager, keeperId === null ? [] : [keeperId]);
    if (keeperId !== null && !keepers.has(keeperId)) throw unknownKeeper();
    const snapshot = await this.snapshots.current();
    const number = snapshot.graph.lines.findIndex((node) => node.id === line.id);
    const exchanged = { line: number, speciesId: line.speciesId };
    const found = await findNewBlood(manager, snapshot, exchanged, query, keeperId);
    const gains = await this.work
      .run(newBloodTask, gainsQuestion(snapshot, number, found, query.kinshipTo), { signal })
      .catch((error: unknown) => {
        throw signal.aborted ? new GivenUpProblem() : error;
      });
    const ranked = rank(snapshot, found, gains, sort);
    const rest = from === null ? ranked : ranked.filter((one) => compare(one.rank, from) > 0);
    const page = rest.slice(0, query.limit);
    const last = page.at(-1);
    return newBloodView(manager, {
      snapshot,
      line: number,
      query,
      sort,
      found,
      gains,
      keeper: keeperId === null ? null : (keepers.get(keeperId) ?? ''),
      places: page.map(({ place }) => place),
      next: last && rest.length > page.length ? encodeCursor(cursor, last.rank) : null,
    });
  }
}

const rankOf = ([last = 0, value = 0, rarity = 0, serial = 0]: readonly number[]): Rank => [
  last,
  value,
  rarity,
  serial,
];

function unknownKeeper(): InvalidProblem {
  return new InvalidProblem(say`This keeper is not known.`, [
    { pointer: '/keeperId', detail: say`There is no keeper with this id.` },
  ]);
}

function gainsQuestion(
  { graph, inbreeding }: LineageSnapshot,
  line: number,
  { holding, line: living, partners, candidates, keeperId }: NewBloodCandidates,
  kinshipTo: number,
): GainsQuestion {
  const sexed = (breeders: readonly Breeder[]): SexedAnimals => ({
    animals: Int32Array.from(breeders, ({ animal }) => animal),
    sexes: Uint8Array.from(breeders, ({ sex }) => sexes.indexOf(sex)),
  });
  return {
    pedigree: graph.pedigree,
    inbreeding,
    holding: Int32Array.from(holding),
    line: Int32Array.from(living),
    partners: sexed(partners),
    candidates: sexed(candidates),
    unsexed: sexes.indexOf('unsexed'),
    isHeld: Uint8Array.from(candidates, ({ animal }) => (keeperId === null && graph.lineOf[animal] === line ? 1 : 0)),
    kinshipTo,
  };
}

/** Where nothing can be told an animal comes last: no gain and no loss of diversity is as great. */
const LAST = 2;

/**
 * Candidates in the order asked for; of equals first the one with the rarest genes of the line, then the older number. Whoever nothing is known
 * of comes last, since it would gain by what nobody knows.
 */
function rank(
  snapshot: LineageSnapshot,
  { candidates }: NewBloodCandidates,
  gains: Gains,
  sort: NewBloodOrder,
): { place: number; rank: Rank }[] {
  const values = { animal: gains.gain, young: gains.youngGain, lacking: gains.lacking }[sort];
  // sums in another order miss the last digits, which must not part equals
  const rounded = (value: number): number => Math.round(value * 1e12) / 1e12;
  return candidates
    .map(({ animal }, place): { place: number; rank: Rank } => {
      const value = values[place] ?? NaN;
      const serial = snapshot.graph.serials[animal] ?? 0;
      const rarity = rounded(gains.lineMeanKinship[place] ?? 0);
      const last = snapshot.isNothingKnown(animal) ? 1 : 0;
      return { place, rank: [last, Number.isNaN(value) ? LAST : -rounded(value), rarity, serial] };
    })
    .sort((one, other) => compare(one.rank, other.rank));
}
