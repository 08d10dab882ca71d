import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { IndividualQuery } from '../../register/individuals/individual.dto.ts';
import { findLine } from '../../register/lines/line.queries.ts';
import { present } from '../../register/present.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import { RecordNames, WantedNames } from '../record-names.ts';
import { seenAmong } from '../seen-animals.queries.ts';
import { numberMembers } from '../set-animals.ts';
import { findSetMembers } from '../set-members.queries.ts';
import { Snapshots } from '../snapshots.service.ts';
import { AnimalsOverTime } from './animals-over-time.ts';
import { lineOverTimeView } from './columns-over-time.ts';
import type { LineOverTimeQuery } from './line-over-time.dto.ts';
import type { LineOverTimeView } from './line-over-time.view.ts';
import { readKeepersOf } from './over-time-keepers.queries.ts';
import { say } from '../../platform/say.ts';

/** Most members that a drawing holds: what a browser lays out in a second or two. */
const MEMBERS_MOST = 20_000;

/** Gives whole lines to be drawn over time. */
@Injectable()
export class LineOverTimeService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * The members of a line that whoever asks may see, with their clutches and the parents of these.
   *
   * @throws NotFoundProblem if there is no such line; InvalidProblem if it has more members than a drawing holds
   */
  async get(id: string, query: LineOverTimeQuery): Promise<LineOverTimeView> {
    const { manager } = this.dataSource;
    const line = present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    const filters = Object.assign(new IndividualQuery(), query, { lineId: line.id });
    const found = await findSetMembers(manager, filters);
    if (found.count > MEMBERS_MOST) throw tooLarge(say`${found.count} animals`);
    // read afterwards, so that it knows every animal found
    const snapshot = await this.snapshots.current();
    const { members } = await numberMembers(snapshot, found);
    const number = snapshot.graph.lines.findIndex((node) => node.id === line.id);
    const drawn = new AnimalsOverTime(snapshot, number, members);
    await drawn.gather((animals) => this.#seenAmong(manager, snapshot, animals));
    if (drawn.isTooMuch) throw tooLarge(say`so many ancestors or candidate parents`);
    const ids = drawn.animals.map((animal) => snapshot.idOf(animal));
    const [names, kept] = await Promise.all([
      RecordNames.read(manager, snapshot.graph, wantedBy(snapshot, drawn)),
      readKeepersOf(manager, ids),
    ]);
    return lineOverTimeView(snapshot, number, drawn, names, kept);
  }

  async #seenAmong(
    manager: EntityManager,
    snapshot: LineageSnapshot,
    animals: readonly number[],
  ): Promise<ReadonlySet<number>> {
    const byId = new Map(animals.map((animal) => [snapshot.idOf(animal), animal]));
    const seen = await seenAmong(manager, [...byId.keys()]);
    return new Set([...seen].flatMap((id) => byId.get(id) ?? []));
  }
}

function wantedBy({ graph }: LineageSnapshot, { animals, clutches }: AnimalsOverTime): WantedNames {
  const wanted = new WantedNames();
  for (const clutch of clutches) wanted.clutches.add(clutch);
  for (const animal of animals) {
    wanted.individuals.add(animal);
    const source = graph.pedigree.sourceOf[animal] ?? -1;
    if (source >= 0) wanted.sources.add(source);
  }
  return wanted;
}

function tooLarge(what: string): InvalidProblem {
  const limit = MEMBERS_MOST.toLocaleString('en').replace(',', ' ');
  const detail = say`Choose fewer years, with hatchedFrom and hatchedTo.`;
  return new InvalidProblem(
    say`The line has ${what}, more than the ${limit} that can be drawn at once. Choose a shorter time: years of hatching from and to.`,
    [
      { pointer: '/hatchedFrom', detail },
      { pointer: '/hatchedTo', detail },
    ],
  );
}
