import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { namedIn, resolveAnimals } from '../../lineage/named-animals.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { isLiving, sexOf } from '../../lineage/register-graph.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { findBreeders, type ExclusionReason } from '../breeders.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import { bestGroup, requireSize, warnedAbove } from './best-group.ts';
import { additions, removals, type NamedSides } from './group-changes.ts';
import { GroupFigures } from './group-scores.ts';
import { groupWarnings } from './group-warnings.ts';
import type { GroupRequest } from './groups.dto.ts';
import type { GroupMemberView, GroupView } from './groups.view.ts';
import { kinshipRows } from './kinship-rows.ts';
import { say } from '../../platform/say.ts';

/** Most animals that are tried as additions. */
const TRIED_MOST = 400;

/** The animals of a question, all that is known of them, and the question. */
interface KnownGroup {
  readonly snapshot: LineageSnapshot;
  readonly request: GroupRequest;
  readonly members: readonly number[];
  readonly others: readonly number[];
  /** Why some of the members may not breed. */
  readonly excluded: ReadonlyMap<number, ExclusionReason>;
  readonly disputed: ReadonlySet<number>;
  readonly names: RecordNames;
  /** Names of the keepers of the members that may be seen. */
  readonly keeperOf: ReadonlyMap<number, string>;
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
    return groupView(await this.#known(snapshot, members, request));
  }

  async #known(snapshot: LineageSnapshot, members: readonly number[], request: GroupRequest): Promise<KnownGroup> {
    const { manager } = this.dataSource;
    const own = await findBreeders(manager, snapshot, members, { unsexed: true, disputed: true });
    const others = await this.#others(snapshot, members, request);
    const wanted = new WantedNames();
    for (const animal of [...members, ...others]) wanted.individuals.add(animal);
    const names = await RecordNames.read(manager, snapshot.graph, wanted);
    const keepers = await readKeeperNames(manager, [...new Set(own.breeders.map(({ keeperId }) => keeperId))]);
    return {
      snapshot,
      request,
      members,
      others,
      excluded: new Map(own.excluded.map(({ animal, reason }) => [animal, reason])),
      disputed: new Set(own.breeders.filter(({ isDisputed }) => isDisputed).map(({ animal }) => animal)),
      names,
      keeperOf: new Map(own.breeders.map(({ animal, keeperId }) => [animal, keepers.get(keeperId) ?? ''])),
    };
  }

  /** Grown animals of the line of a group that might join it, the newest first where there are very many. */
  async #others(snapshot: LineageSnapshot, members: readonly number[], { disputed }: GroupRequest): Promise<number[]> {
    const line = snapshot.graph.lineOf[members[0] ?? -1] ?? -1;
    if (line < 0) return [];
    const inside = new Set(members);
    const living = snapshot
      .membersOfLine(line)
      .filter((animal) => isLiving(snapshot.graph, animal) && !inside.has(animal));
    const tried = [...living.slice(-TRIED_MOST)];
    const { breeders } = await findBreeders(this.dataSource.manager, snapshot, tried, { disputed });
    return breeders.map(({ animal }) => animal);
  }
}

function groupView(known: KnownGroup): GroupView {
  const { snapshot, request, members, others, names } = known;
  const ofSex = (sex: string, among: readonly number[]): number[] =>
    among.filter((animal) => sexOf(snapshot.graph, animal) === sex);
  const [males, females] = [ofSex('male', members), ofSex('female', members)];
  const [maleOthers, femaleOthers] = [ofSex('male', others), ofSex('female', others)];
  const figures = new GroupFigures(snapshot, [...males, ...maleOthers], [...females, ...femaleOthers], request.weight);
  const sides: NamedSides = { names, males, females, maleOthers, femaleOthers };
  const score = figures.score([...males.keys()], [...females.keys()]);
  const best = chosenGroup(known, males, females);
  const member = memberViews(known, figures, males, females);
  return {
    males: males.map(member),
    females: females.map(member),
    unsexed: ofSex('unsexed', members).map(member),
    rows: kinshipRows(snapshot, males, females),
    score,
    takeOut: removals(figures, sides, score),
    add: additions(figures, sides, score, request.inbreedingTo),
    ...best,
    warnings: groupWarnings(
      known,
      members,
      score,
      figures.pairsAbove([...males.keys()], [...females.keys()], warnedAbove(request)),
    ),
    asOf: snapshot.asOf,
  };
}

/** Chooses among the members that may breed, and says why where there is no such group. */
function chosenGroup(
  known: KnownGroup,
  males: readonly number[],
  females: readonly number[],
): Pick<GroupView, 'best' | 'noBest'> {
  const { snapshot, request, excluded, disputed, names } = known;
  const may = (animal: number): boolean => whyNot({ request, excluded, disputed }, animal) === null;
  const [sires, dams] = [males.filter(may), females.filter(may)];
  requireSize(request, sires.length, dams.length);
  const found = bestGroup(snapshot, sires, dams, request);
  if (found.group === null) return { best: null, noBest: found.why };
  const { score, pairsAbove } = found.group;
  return {
    best: {
      males: found.group.males.map((animal) => names.refOf(animal)),
      females: found.group.females.map((animal) => names.refOf(animal)),
      score,
      warnings: groupWarnings(known, [...found.group.males, ...found.group.females], score, pairsAbove),
    },
    noBest: null,
  };
}

function memberViews(
  known: KnownGroup,
  figures: GroupFigures,
  males: readonly number[],
  females: readonly number[],
): (animal: number) => GroupMemberView {
  const { names, keeperOf } = known;
  const { graph } = known.snapshot;
  const means = new Map([
    ...males.map((animal, place) => [animal, figures.maleMeans[place] ?? 0] as const),
    ...females.map((animal, place) => [animal, figures.femaleMeans[place] ?? 0] as const),
  ]);
  return (animal) => {
    const line = graph.lines[graph.lineOf[animal] ?? -1];
    return {
      ...names.refOf(animal),
      line: line ? { id: line.id, name: line.name } : null,
      keeper: keeperOf.get(animal) ?? '',
      meanKinship: figures.hasLine ? (means.get(animal) ?? null) : null,
      excluded: whyNot(known, animal),
    };
  };
}

/** Why an animal is not chosen and should not breed; null: nothing stands against it. */
function whyNot(
  { request, excluded, disputed }: Pick<KnownGroup, 'request' | 'excluded' | 'disputed'>,
  animal: number,
): ExclusionReason | null {
  return excluded.get(animal) ?? (disputed.has(animal) && !request.disputed ? 'disputed-label' : null);
}

function requireOneLine({ graph }: LineageSnapshot, members: readonly number[], { crossLines }: GroupRequest): void {
  const first = graph.lineOf[members[0] ?? -1] ?? -1;
  const strangers = members.flatMap((animal, place) => (graph.lineOf[animal] === first ? [] : [place]));
  if (crossLines || strangers.length === 0) return;
  const detail = say`This animal belongs to another line than the first: their young would be a cross. Ask for \`crossLines\` if that is meant.`;
  throw new InvalidProblem(
    say`The animals belong to several lines.`,
    strangers.map((place) => ({ pointer: `/individuals/${place}`, detail })),
  );
}
