import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { readYoungOfParents, type YoungOfParent } from '../../register/individuals/individual-details.queries.ts';
import { calendarDay } from '../calendar-day.ts';
import { ChartStandings } from '../chart-standings.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import { resolveAnimal } from '../named-animals.ts';
import { RecordNames, WantedNames } from '../record-names.ts';
import { statusOf } from '../register-graph.ts';
import { Snapshots } from '../snapshots.service.ts';
import type { DescendantsView, DescendedFromView, FamilyView } from './descendants.view.ts';

/** Most animals whose clutches one answer tells; beyond, a reader opens them one by one. */
const PARENTS_MOST = 40;

/** Tells what descends from one animal, clutch by clutch. */
@Injectable()
export class DescendantsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * The clutches of an animal and of its young over 1 to 3 generations: one statement a generation, and the standings of all young by one
   * pass over their ancestry.
   *
   * @throws NotFoundProblem if there is no such animal
   */
  async get(id: string, generations: number): Promise<DescendantsView> {
    const snapshot = await this.snapshots.current();
    const root = await resolveAnimal(this.dataSource.manager, snapshot, id);
    const wanted = new WantedNames();
    wanted.individuals.add(root);
    const names = await RecordNames.read(this.dataSource.manager, snapshot.graph, wanted);
    const { families, truncated } = await this.#read(snapshot.idOf(root), generations);
    const seen = families.flatMap(({ animals }) => animals.filter(({ isPrivate }) => !isPrivate));
    // one that came after the snapshot is not in it
    const numbers = new Map(seen.map((animal) => [animal.id, snapshot.find(animal.id)]));
    const known = [...numbers.values()].filter((number) => number >= 0);
    const standings = new ChartStandings(snapshot, root, known);
    return {
      root: { ...rootView(snapshot, root, names), standings: standings.of(root) },
      families: families.map((family) =>
        familyView(family, (animal) => {
          const number = numbers.get(animal) ?? -1;
          return number < 0 ? [] : standings.of(number);
        }),
      ),
      truncated,
      parentLimit: PARENTS_MOST,
    };
  }

  async #read(root: string, generations: number): Promise<{ families: YoungOfParent[]; truncated: boolean }> {
    const families: YoungOfParent[] = [];
    const parents = new Set([root]);
    let truncated = false;
    let level: readonly string[] = [root];
    for (let generation = 1; generation <= generations && level.length > 0; generation++) {
      const read = await readYoungOfParents(this.dataSource.manager, level);
      families.push(...read);
      if (generation === generations) break;
      const withYoung = read.flatMap(({ animals }) => animals.filter(({ hasYoung }) => hasYoung));
      const next = [...new Set(withYoung.map(({ id }) => id))].filter((id) => !parents.has(id));
      level = next.slice(0, PARENTS_MOST - parents.size);
      truncated ||= level.length < next.length;
      for (const id of level) parents.add(id);
    }
    return { families, truncated };
  }
}

function rootView(snapshot: LineageSnapshot, root: number, names: RecordNames): Omit<DescendedFromView, 'standings'> {
  const name = names.individual(root);
  return {
    ...names.refOf(root),
    status: statusOf(snapshot.graph, root),
    hatched: name?.hatched ?? null,
    earliest: calendarDay(name?.hatched_earliest),
    latest: calendarDay(name?.hatched_latest),
  };
}

function familyView(
  { parent, clutch, mates, animals, earliest, latest }: YoungOfParent,
  standingsOf: (id: string) => FamilyView['animals'][number]['standings'],
): FamilyView {
  return {
    parent,
    clutch: { ...clutch, earliest: calendarDay(earliest), latest: calendarDay(latest) },
    mates,
    animals: animals.map((animal) => ({ ...animal, standings: animal.isPrivate ? [] : standingsOf(animal.id) })),
  };
}
