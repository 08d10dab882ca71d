import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { namedIn, resolveAnimals } from '../../lineage/named-animals.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { isLiving, sexOf } from '../../lineage/register-graph.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { findBreeders, type ExclusionReason } from '../breeders.ts';
import { chooseGroup, choices, CHOICES_MOST } from './group-choice.ts';
import { GroupFigures } from './group-scores.ts';
import type { GroupRequest } from './groups.dto.ts';
import type { BestGroupView, GroupChangeView, GroupScoreView, GroupView } from './groups.view.ts';

/** Most animals that are tried as additions, and that are told. */
const TRIED_MOST = 400;
const TOLD_MOST = 10;
/** Related above half-sibs: a warning, never a refusal, since the group may live together already. */
const LIMIT = 0.125;

/** The places of a group among the animals that its figures are of. */
interface Sides {
  readonly males: readonly number[];
  readonly females: readonly number[];
}

/** Answers how well a group of animals fits, and what would make it fit better. */
@Injectable()
export class GroupsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Scores a group, tries it without each of its animals and with others of its line, and chooses the best of a size.
   *
   * @throws InvalidProblem for animals that do not exist, are named twice or belong to several lines without leave, for half a size,
   *   and where too many groups would have to be tried
   */
  async of(request: GroupRequest): Promise<GroupView> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const members = await resolveAnimals(manager, snapshot, namedIn(request.individuals, 'individuals'));
    requireOneLine(snapshot, members, request);
    const ofSex = (sex: string, among: readonly number[]): number[] =>
      among.filter((animal) => sexOf(snapshot.graph, animal) === sex);
    const [males, females, unsexed] = ['male', 'female', 'unsexed'].map((sex) => ofSex(sex, members)) as [
      number[],
      number[],
      number[],
    ];
    requireSize(request, males.length, females.length);
    const own = await findBreeders(manager, snapshot, members, { unsexed: true, disputed: true });
    const others = await this.#additions(snapshot, members);
    const [maleOthers, femaleOthers] = [ofSex('male', others), ofSex('female', others)];
    const pool = { males: [...males, ...maleOthers], females: [...females, ...femaleOthers] };
    const figures = new GroupFigures(snapshot, pool.males, pool.females, request.weight);
    const sides: Sides = { males: [...males.keys()], females: [...females.keys()] };
    const score = figures.score(sides.males, sides.females);
    const wanted = new WantedNames();
    for (const animal of [...members, ...others]) wanted.individuals.add(animal);
    const names = await RecordNames.read(manager, snapshot.graph, wanted);
    const refs = (numbers: readonly number[]) => numbers.map((animal) => names.refOf(animal));
    const change = (animal: number, after: GroupScoreView | null): GroupChangeView[] =>
      after && score ? [{ animal: names.refOf(animal), after, gain: score.cost - after.cost }] : [];
    const best = chooseBest(snapshot, males, females, request);
    return {
      males: refs(males),
      females: refs(females),
      unsexed: refs(unsexed),
      score,
      takeOut: bestFirst([
        ...males.flatMap((animal, place) => change(animal, figures.score(without(sides.males, place), sides.females))),
        ...females.flatMap((animal, place) =>
          change(animal, figures.score(sides.males, without(sides.females, place))),
        ),
      ]),
      add: bestFirst([
        ...maleOthers.flatMap((animal, place) =>
          change(animal, figures.score([...sides.males, males.length + place], sides.females)),
        ),
        ...femaleOthers.flatMap((animal, place) =>
          change(animal, figures.score(sides.males, [...sides.females, females.length + place])),
        ),
      ]).slice(0, TOLD_MOST),
      best: best && {
        males: refs(best.males),
        females: refs(best.females),
        score: best.score,
      },
      warnings: warningsFor(
        snapshot,
        members,
        score,
        own.excluded.map(({ reason }) => reason),
        own.breeders.filter(({ isDisputed }) => isDisputed).length,
      ),
      asOf: snapshot.asOf,
    };
  }

  /** Grown animals of the line of a group that might join it, the newest first where there are very many. */
  async #additions(snapshot: LineageSnapshot, members: readonly number[]): Promise<number[]> {
    const line = snapshot.graph.lineOf[members[0] ?? -1] ?? -1;
    if (line < 0) return [];
    const inside = new Set(members);
    const living = snapshot
      .membersOfLine(line)
      .filter((animal) => isLiving(snapshot.graph, animal) && !inside.has(animal));
    const { breeders } = await findBreeders(this.dataSource.manager, snapshot, [...living.slice(-TRIED_MOST)]);
    return breeders.map(({ animal }) => animal);
  }
}

function chooseBest(
  snapshot: LineageSnapshot,
  males: readonly number[],
  females: readonly number[],
  request: GroupRequest,
): { males: number[]; females: number[]; score: BestGroupView['score'] } | null {
  if (request.males === undefined || request.females === undefined) return null;
  const figures = new GroupFigures(snapshot, males, females, request.weight);
  const chosen = chooseGroup(figures, request.males, request.females, request.weight);
  const score = chosen && figures.score(chosen.males, chosen.females);
  if (!chosen || !score) return null;
  const at = (animals: readonly number[], places: readonly number[]): number[] =>
    places.map((place) => animals[place] ?? -1);
  return { males: at(males, chosen.males), females: at(females, chosen.females), score };
}

function requireOneLine({ graph }: LineageSnapshot, members: readonly number[], { crossLines }: GroupRequest): void {
  const first = graph.lineOf[members[0] ?? -1] ?? -1;
  const strangers = members.flatMap((animal, place) => (graph.lineOf[animal] === first ? [] : [place]));
  if (crossLines || strangers.length === 0) return;
  const detail =
    'This animal belongs to another line than the first: their young would be a cross. Ask for `crossLines` if that is meant.';
  throw new InvalidProblem(
    'The animals belong to several lines.',
    strangers.map((place) => ({ pointer: `/individuals/${place}`, detail })),
  );
}

function requireSize(request: GroupRequest, males: number, females: number): void {
  const { males: wantedMales, females: wantedFemales } = request;
  if ((wantedMales === undefined) !== (wantedFemales === undefined)) {
    const missing = wantedMales === undefined ? 'males' : 'females';
    throw new InvalidProblem('The size of the group is only half said.', [
      {
        pointer: `/${missing}`,
        detail: `must be given too, so that it is known how many ${missing} the group shall have`,
      },
    ]);
  }
  if (wantedMales === undefined || wantedFemales === undefined) return;
  if (Math.min(choices(males, wantedMales), choices(females, wantedFemales)) > CHOICES_MOST)
    throw new InvalidProblem('There are too many ways to choose this group.', [
      { pointer: '/individuals', detail: 'must name fewer animals, or ask for a smaller group' },
    ]);
}

const without = (places: readonly number[], place: number): number[] => places.filter((other) => other !== place);

const bestFirst = (changes: GroupChangeView[]): GroupChangeView[] =>
  changes.sort(
    (one, other) => other.gain - one.gain || (one.animal.number ?? '').localeCompare(other.animal.number ?? ''),
  );

const notFit: Partial<Record<ExclusionReason, string>> = {
  'not-living': 'One of them died, left the club, or nobody knows whether it lives.',
  'keeper-left': 'The keeper of one of them has left the club.',
  'too-young': 'One of them is younger than the least age at which its species matures.',
  'beyond-lifespan': 'One of them is older than its species is known to live.',
};

function warningsFor(
  { graph }: LineageSnapshot,
  members: readonly number[],
  score: GroupScoreView | null,
  excluded: readonly ExclusionReason[],
  disputed: number,
): string[] {
  const lines = [...new Set(members.map((animal) => graph.lines[graph.lineOf[animal] ?? -1]?.name ?? 'no line'))];
  return [
    ...(lines.length > 1
      ? [`Young of this group may be crosses of ${lines.join(' and ')}, and belong to none of them.`]
      : []),
    ...(score && score.inbreeding.greatest > LIMIT + 1e-12
      ? ['Some of these animals are closer related than half-sibs, and nobody can keep them from breeding in one tank.']
      : []),
    ...(disputed > 0 ? ['The label of some of these animals is disputed: their young would carry that on.'] : []),
    ...[...new Set(excluded)].flatMap((reason) => notFit[reason] ?? []),
  ];
}
