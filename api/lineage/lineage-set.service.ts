import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { LongWork } from '../platform/long-work.ts';
import { longTaskModule } from '../platform/long-task.ts';
import { IndividualQuery } from '../register/individuals/individual.dto.ts';
import type { LineageSetQuery } from './lineage-set.dto.ts';
import type { LineageSetView } from './lineage-set.view.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { namedIn, resolveAnimals } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { wantOrigins } from './origin-views.ts';
import { gatherSet, numberMembers } from './set-animals.ts';
import { findSetMembers, readHatchYears } from './set-members.queries.ts';
import { standingsForSet } from './set-standings.ts';
import { setView } from './set-view.ts';
import { Snapshots } from './snapshots.service.ts';
import type { SetMeasuresInput, SetMeasuresResult } from './tasks/set-measures.task.ts';

/** Most origins and ancestors that an answer names. */
const NAMED_MOST = 24;

const setMeasures = longTaskModule<SetMeasuresInput, SetMeasuresResult>(
  './tasks/set-measures.task.ts',
  import.meta.url,
);

/** Answers what is measured of a set of animals. */
@Injectable()
export class LineageSetService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * Measures of the animals that a list of the register would show under the same filters.
   *
   * @throws InvalidProblem as that list; BusyProblem if too many computations wait
   */
  async ofFilters(query: LineageSetQuery): Promise<LineageSetView> {
    const found = await findSetMembers(this.dataSource.manager, Object.assign(new IndividualQuery(), query));
    // read afterwards, so that it knows every animal found
    const snapshot = await this.snapshots.current();
    const { members, years } = await numberMembers(snapshot, found);
    return this.#measure(snapshot, members, years);
  }

  /**
   * Measures of animals named by id or registry number.
   *
   * @throws InvalidProblem naming animals that do not exist or are named twice; BusyProblem if too many computations wait
   */
  async ofPicked(individuals: readonly string[]): Promise<LineageSetView> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const numbers = await resolveAnimals(manager, snapshot, namedIn(individuals, 'individuals'));
    const ids = numbers.map((number) => snapshot.idOf(number));
    const yearOf = await readHatchYears(manager, ids);
    const years = Int16Array.from(ids, (id) => yearOf.get(id) ?? 0);
    return this.#measure(snapshot, Int32Array.from(numbers), years);
  }

  async #measure(snapshot: LineageSnapshot, members: Int32Array, years: Int16Array): Promise<LineageSetView> {
    const animals = await gatherSet(snapshot, members, years);
    const measures = await this.work.run(setMeasures, {
      pedigree: snapshot.graph.pedigree,
      inbreeding: snapshot.inbreeding,
      set: animals.set,
      origins: NAMED_MOST,
      ancestors: NAMED_MOST,
    });
    const wanted = new WantedNames();
    wantOrigins(wanted, measures.contributions);
    wantOrigins(wanted, measures.ancestors.contributions);
    const names = await RecordNames.read(this.dataSource.manager, snapshot.graph, wanted);
    return setView(snapshot, animals, standingsForSet(snapshot.graph, members), measures, names);
  }
}
