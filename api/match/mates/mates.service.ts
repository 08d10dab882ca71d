import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { resolveAnimal } from '../../lineage/named-animals.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { isLiving, sexOf } from '../../lineage/register-graph.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { decodeCursor, encodeCursor, type CursorValue } from '../../platform/paging.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { findBreeders, type Breeder } from '../breeders.ts';
import { exclusionWords } from './exclusion-words.ts';
import { mateViews } from './mate-views.ts';
import type { MatesQuery } from './mates.dto.ts';
import { mateExclusions, type ExcludedMatesView, type MateExclusion, type MatesView } from './mates.view.ts';
import { compare, livingLine, rankMates, type Rank, type RankedMate } from './rank-mates.ts';
import { say } from '../../platform/say.ts';

/** Most living animals that are looked at as mates at once. */
const CONSIDERED_MOST = 5000;
/** The newest of the dead, to tell why they are missing. */
const DEAD_MOST = 500;
/** Animals that are named for each reason why they are left out. */
const NAMED_MOST = 12;
/** Half-sibs have a kinship of 1/8 exactly, yet sums of it miss the last digit. */
const ROUNDING = 1e-12;

type Excluded = Map<MateExclusion, number[]>;

/** Answers who may be the mate of an animal. */
@Injectable()
export class MatesService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Possible mates of an animal in its line, or in others where that is asked for, ranked, and who is left out.
   *
   * @throws NotFoundProblem if there is no such animal; InvalidProblem for an unknown line, or where too many animals come into question
   */
  async of(id: string, query: MatesQuery): Promise<MatesView> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const animal = await resolveAnimal(manager, snapshot, id);
    const own = await findBreeders(manager, snapshot, [animal], { unsexed: true, disputed: true });
    const considered = candidatesFor(snapshot, animal, query);
    const found = await findBreeders(manager, snapshot, considered, query);
    const excluded: Excluded = new Map();
    const exclude = (reason: MateExclusion, number: number): void => {
      const others = excluded.get(reason);
      if (others) others.push(number);
      else excluded.set(reason, [number]);
    };
    for (const { animal: number, reason } of found.excluded) exclude(reason, number);
    const species = (own.breeders[0] ?? own.excluded[0])?.speciesId;
    const fitting = found.breeders.filter((breeder) => {
      const fits = breeder.speciesId === species;
      // whoever asks for other lines does not ask for other species
      if (!fits && !query.crossLines) exclude('other-species', breeder.animal);
      return fits;
    });
    const ranked = rankMates(snapshot, animal, fitting, query.sort).filter(({ breeder, kinship }) => {
      const isRelated = kinship > query.kinshipTo + ROUNDING;
      if (isRelated) exclude('related', breeder.animal);
      return !isRelated;
    });
    const wanted = await this.#wanted(snapshot, ranked, query);
    const { page, next } = pageOf(wanted, query);
    const line = livingLine(snapshot, animal);
    const names = await this.#names(snapshot, animal, excluded);
    return {
      animal: names.refOf(animal),
      cautions: cautionsFor(own.excluded[0]?.reason, own.breeders[0], snapshot.isNothingKnown(animal)),
      kinshipTo: query.kinshipTo,
      items: await mateViews(manager, snapshot, animal, page),
      next,
      total: wanted.length,
      nothingKnown: wanted.filter(({ isNothingKnown }) => isNothingKnown).length,
      excluded: excludedViews(excluded, names, query),
      geneDiversity: line ? 1 - line.meanKinship : null,
      asOf: snapshot.asOf,
    };
  }

  /** Those that the filters leave, which choose among mates and exclude nobody. */
  async #wanted(snapshot: LineageSnapshot, ranked: readonly RankedMate[], query: MatesQuery): Promise<RankedMate[]> {
    const { keeperId, monthsFrom, proven } = query;
    const chosen = ranked.filter(
      ({ breeder: { keeperId: keeper, age } }) =>
        (keeperId === undefined || keeper === keeperId) &&
        (monthsFrom === undefined || (age?.least ?? -1) >= monthsFrom),
    );
    if (proven === undefined) return chosen;
    const idOf = ({ breeder }: RankedMate): string => snapshot.idOf(breeder.animal);
    const bred = await readProven(this.dataSource.manager, chosen.map(idOf));
    return chosen.filter((mate) => bred.has(idOf(mate)) === proven);
  }

  #names({ graph }: LineageSnapshot, animal: number, excluded: Excluded): Promise<RecordNames> {
    const wanted = new WantedNames();
    wanted.individuals.add(animal);
    for (const numbers of excluded.values())
      for (const number of numbers.slice(0, NAMED_MOST)) wanted.individuals.add(number);
    return RecordNames.read(this.dataSource.manager, graph, wanted);
  }
}

/** The animals that come into question before any rule: of the line asked for, of the other sex or of none yet. */
function candidatesFor(snapshot: LineageSnapshot, animal: number, query: MatesQuery): number[] {
  const { graph } = snapshot;
  const own = graph.lineOf[animal] ?? -1;
  const line = query.lineId === undefined ? own : graph.lines.findIndex(({ id }) => id === query.lineId);
  if (query.lineId !== undefined && line < 0)
    throw new InvalidProblem(say`This line is not known.`, [
      { pointer: '/lineId', detail: say`There is no line with the id ${query.lineId}.` },
    ]);
  const sex = sexOf(graph, animal);
  const fits = (other: number): boolean =>
    other !== animal && (sex === 'unsexed' || sexOf(graph, other) === 'unsexed' || sexOf(graph, other) !== sex);
  const isOfAll = query.crossLines && query.lineId === undefined;
  const living: number[] = [];
  const dead: number[] = [];
  const consider = (other: number): void => {
    if (fits(other)) (isLiving(graph, other) ? living : dead).push(other);
  };
  if (!isOfAll) snapshot.membersOfLine(line).forEach(consider);
  // the dead of a whole club are nobody's news: only the living of other lines come into question
  else for (let other = 0; other < snapshot.size; other++) if (isLiving(graph, other)) consider(other);
  if (living.length > CONSIDERED_MOST)
    throw new InvalidProblem(say`Too many animals come into question.`, [
      {
        pointer: isOfAll ? '/crossLines' : '/lineId',
        detail: say`${living.length} animals come into question, at most ${CONSIDERED_MOST} are looked at. ${isOfAll ? say`Choose one line by lineId.` : say`Ask for a plan of the line instead.`}`,
      },
    ]);
  return [...living, ...dead.slice(-DEAD_MOST)];
}

function pageOf(
  mates: readonly RankedMate[],
  { after, limit, sort }: MatesQuery,
): { page: RankedMate[]; next: string | null } {
  const cursor = `mates ${sort}`;
  const rest = after === undefined ? mates : matesBehind(mates, decodeCursor(cursor, 4, after));
  const page = rest.slice(0, limit);
  const last = page.at(-1);
  return { page, next: last && rest.length > limit ? encodeCursor(cursor, last.rank) : null };
}

function matesBehind(
  mates: readonly RankedMate[],
  [last, first, second, serial]: readonly CursorValue[],
): RankedMate[] {
  const from: Rank = [Number(last), Number(first), Number(second), Number(serial)];
  return mates.filter(({ rank }) => compare(rank, from) > 0);
}

const ownCautions: Partial<Record<MateExclusion, string>> = {
  'not-living': say`This animal died, left the club, or nobody knows whether it lives.`,
  'keeper-left': say`The keeper of this animal has left the club.`,
  'too-young': say`This animal is younger than the least age at which its species matures.`,
  'beyond-lifespan': say`This animal is older than its species is known to live: check whether it still does.`,
};

function cautionsFor(reason: MateExclusion | undefined, own: Breeder | undefined, isNothingKnown: boolean): string[] {
  const caution = reason === undefined ? undefined : ownCautions[reason];
  return [
    ...(caution === undefined ? [] : [caution]),
    ...(own?.sex === 'unsexed'
      ? [say`The sex of this animal is not known yet: these may turn out to be no mates.`]
      : []),
    ...(isNothingKnown
      ? [
          say`Neither a source nor a parent of this animal is recorded: it counts as unrelated to everybody but its own young, which it may not be.`,
        ]
      : []),
    ...(own?.isDisputed === true ? [say`The label of this animal is disputed: its young would carry that on.`] : []),
  ];
}

function excludedViews(excluded: Excluded, names: RecordNames, query: MatesQuery): ExcludedMatesView[] {
  const isWithinLine = !query.crossLines && query.lineId === undefined;
  return mateExclusions.flatMap((reason): ExcludedMatesView[] => {
    const detail = exclusionWords[reason];
    if (reason === 'other-line') return isWithinLine ? [{ reason, detail, count: null, animals: [] }] : [];
    const numbers = excluded.get(reason) ?? [];
    if (numbers.length === 0) return [];
    const animals = numbers.slice(0, NAMED_MOST).map((number) => names.refOf(number));
    return [{ reason, detail, count: numbers.length, animals }];
  });
}
