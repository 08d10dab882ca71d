import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { mostInGrid } from '../../shared/most-in-grid.ts';
import { InvalidProblem } from '../platform/problem.ts';
import { say } from '../platform/say.ts';
import { kinshipRangesWith } from './kernel/kinship-with.ts';
import type { KinshipRequest } from './kinship.dto.ts';
import type { KinshipView } from './kinship.view.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { AnimalRef } from './lineage.view.ts';
import { namedIn, resolveAnimals } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';
import { restsOn, type YoungInbreeding } from './young-inbreeding.ts';

/** Answers how related some animals are to each other. */
@Injectable()
export class KinshipService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Expected kinships among animals named by id or registry number, full matrix, and what their young would be where that is asked for.
   *
   * @throws InvalidProblem naming animals that do not exist or are named twice; for too many where young are asked for
   */
  async among({ individuals, young }: KinshipRequest): Promise<KinshipView> {
    if (young && individuals.length > mostInGrid)
      throw new InvalidProblem(say`These are too many animals to tell the young of each two.`, [
        { pointer: '/individuals', detail: say`must name at most ${mostInGrid} animals where \`young\` is asked for` },
      ]);
    const snapshot = await this.snapshots.current();
    const numbers = await resolveAnimals(this.dataSource.manager, snapshot, namedIn(individuals, 'individuals'));
    const wanted = new WantedNames();
    for (const number of numbers) wanted.individuals.add(number);
    const names = await RecordNames.read(this.dataSource.manager, snapshot.graph, wanted);
    const kinships = snapshot.kinships(numbers);
    const size = numbers.length;
    return {
      individuals: numbers.map((number) => names.ref(number)).filter((ref): ref is AnimalRef => ref !== null),
      kinship: numbers.map((_, row) => [...kinships.subarray(row * size, (row + 1) * size)]),
      young: young ? youngOfEachTwo(snapshot, numbers) : null,
      asOf: snapshot.asOf,
    };
  }
}

/** What young of each two would be, whatever their sexes; each two are looked at once. */
function youngOfEachTwo(snapshot: LineageSnapshot, animals: readonly number[]): (YoungInbreeding | null)[][] {
  const { graph, inbreeding } = snapshot;
  const rows = animals.map((): (YoungInbreeding | null)[] => animals.map(() => null));
  animals.forEach((one, row) => {
    const others = animals.slice(row + 1);
    const ranges = kinshipRangesWith(graph.pedigree, inbreeding, one, Int32Array.from(others));
    ranges.forEach((range, place) => {
      const column = row + 1 + place;
      const told = restsOn(snapshot, one, others[place] ?? -1, range);
      for (const [at, to] of [
        [row, column],
        [column, row],
      ] as const)
        (rows[at] as (YoungInbreeding | null)[])[to] = told;
    });
  });
  return rows;
}
