import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { AnimalRef } from './lineage.view.ts';
import type { KinshipView } from './kinship.view.ts';
import { namedIn, resolveAnimals } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';

/** Answers how related some animals are to each other. */
@Injectable()
export class KinshipService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Expected kinships among animals named by id or registry number, full matrix.
   *
   * @throws InvalidProblem naming animals that do not exist or are named twice
   */
  async among(individuals: readonly string[]): Promise<KinshipView> {
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
      asOf: snapshot.asOf,
    };
  }
}
