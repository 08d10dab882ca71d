import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { NotFoundProblem } from '../../platform/problem.ts';
import { present } from '../../register/present.ts';
import { findSource } from '../../register/sources/source.queries.ts';
import { sourceShares } from '../kernel/source-shares.ts';
import { isLiving } from '../register-graph.ts';
import { Snapshots } from '../snapshots.service.ts';
import { findHiddenLiving } from './hidden-living.queries.ts';
import type { SourceLivingView } from './source-living.view.ts';

/** Answers what is alive of a source. */
@Injectable()
export class SourceLivingService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
  ) {}

  /**
   * Living animals of a source, as far as whoever asks may see them: founders, descendants, and how much of it they hold together. 404 where there
   * is no such source, or it may not be seen.
   */
  async of(id: string): Promise<SourceLivingView> {
    const { manager } = this.dataSource;
    const { id: sourceId } = present(await findSource(manager, id), () => new NotFoundProblem('source', id));
    const hidden = await findHiddenLiving(manager);
    const snapshot = await this.snapshots.current();
    const { graph } = snapshot;
    const source = graph.sources.findIndex((one) => one.id === sourceId);
    const told = { founders: 0, descendants: 0, certain: 0, animalsWorth: 0 };
    if (source < 0) return { ...told, asOf: snapshot.asOf };
    const shareOf = sourceShares(graph.pedigree, snapshot.inbreeding.order, source);
    const unseen = new Set(hidden.map((animal) => graph.individuals.find(animal)));
    for (let animal = 0; animal < snapshot.size; animal++) {
      const { expected, least } = shareOf(animal);
      if (expected === 0 || !isLiving(graph, animal) || unseen.has(animal)) continue;
      if (graph.pedigree.sourceOf[animal] === source) told.founders += 1;
      else told.descendants += 1;
      if (least > 0 && graph.pedigree.sourceOf[animal] !== source) told.certain += 1;
      told.animalsWorth += expected;
    }
    return { ...told, asOf: snapshot.asOf };
  }
}
