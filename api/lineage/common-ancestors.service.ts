import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { LongWork } from '../platform/long-work.ts';
import { hasFewAncestors } from './ancestry-size.ts';
import type { CommonAncestorsView } from './common-ancestors.view.ts';
import { commonAncestors, type CommonAncestor } from './kernel/common-ancestors.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { countView, meetingView, wantMeeting } from './meeting-views.ts';
import { resolveAnimal } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { Snapshots } from './snapshots.service.ts';
import { commonAncestorsTask } from './tasks/common-ancestors.task.ts';

/** Answers why F of an animal is what it is. */
@Injectable()
export class CommonAncestorsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * The common ancestors of an animal with their parts of F, no more than `most` by name.
   *
   * @throws NotFoundProblem if there is no such animal; BusyProblem for one with very many ancestors while too many computations wait
   */
  async of(id: string, most: number): Promise<CommonAncestorsView> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const individual = await resolveAnimal(manager, snapshot, id);
    const found = await this.#ancestorsOf(snapshot, individual);
    const named = (found ?? []).slice(0, most);
    const others = (found ?? []).slice(most);
    const wanted = new WantedNames();
    for (const { meeting } of named) wantMeeting(wanted, meeting);
    const names = await RecordNames.read(manager, snapshot.graph, wanted);
    return {
      inbreeding: snapshot.inbreedingOf(individual).expected,
      isTakenApart: found !== null,
      ancestors: named.map(({ meeting, loops, ...figures }) => ({
        ...meetingView(snapshot, meeting, names),
        ...figures,
        loops: countView(loops),
      })),
      others: others.length,
      othersPart: others.reduce((sum, { part }) => sum + part, 0),
      current: snapshot.isCurrent(individual),
      asOf: snapshot.asOf,
    };
  }

  async #ancestorsOf(snapshot: LineageSnapshot, individual: number): Promise<CommonAncestor[] | null> {
    const { pedigree } = snapshot.graph;
    const { inbreeding } = snapshot;
    const part = snapshot.inbreedingOf(individual).expected;
    const pairs = snapshot.pairsOf(individual);
    if (part === 0) return [];
    if (pairs.length === 0) {
      // a founder is as inbred as its source says
      const source = pedigree.sourceOf[individual] ?? -1;
      return [{ meeting: { kind: 'sources', a: source, b: source }, part, loops: 1, shortest: 0, longest: 0 }];
    }
    if (hasFewAncestors(snapshot, individual)) return commonAncestors(pedigree, inbreeding, pairs);
    return this.work.run(commonAncestorsTask, { pedigree, inbreeding, pairs });
  }
}
