import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { LongWork } from '../platform/long-work.ts';
import { LoopProblem } from '../platform/problem.ts';
import { assumptionsIn, readAssumed } from './assumed-records.ts';
import type { Assumptions } from './kernel/ancestry-copy.ts';
import type { FiguresAsked, WhatIf } from './kernel/what-if.ts';
import { FounderStandings, labelOfLine } from './founder-standings.ts';
import { founderKinds } from './lineage-memory.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { resolveAnimal } from './named-animals.ts';
import { RecordNames, WantedNames } from './record-names.ts';
import { isLiving } from './register-graph.ts';
import { Snapshots } from './snapshots.service.ts';
import { figuresOrLoop, whatIfTask } from './tasks/what-if.task.ts';
import { chooseShown, COMPLETENESS_GENERATIONS, wantedBy, whatIfView } from './what-if-view.ts';
import type { WhatIfRequest } from './what-if.dto.ts';
import type { WhatIfView } from './what-if.view.ts';

/** Clutches of an ancestry up to which figures are computed before the answer, without a thread: some hundredths of a second. */
const HERE_MOST = 4000;

/** Answers what the figures of an animal would be, were something recorded otherwise. */
@Injectable()
export class WhatIfService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * Figures of one animal, withdrawn ones too, as recorded and under other base kinships and other parents. Nothing is written.
   *
   * @throws NotFoundProblem if there is no such animal; InvalidProblem for what the register would not take; LoopProblem where an animal
   *   would be its own ancestor; BusyProblem if the ancestry is very large and too many computations wait
   */
  async of(id: string, request: WhatIfRequest): Promise<WhatIfView> {
    const { manager } = this.dataSource;
    await resolveAnimal(manager, await this.snapshots.current(), id);
    const records = await readAssumed(manager, request);
    // read afterwards, so that it knows every record found
    const snapshot = await this.snapshots.current();
    const individual = await resolveAnimal(manager, snapshot, id);
    const figures = await this.#compute(snapshot, individual, assumptionsIn(snapshot, records));
    const founders = new FounderStandings(
      snapshot.graph,
      labelOfLine(snapshot.graph, snapshot.graph.lineOf[individual] ?? -1),
    );
    const choice = chooseShown(figures, founders, snapshot.flowTo(individual).uncertainClutches());
    const names = await RecordNames.read(manager, snapshot.graph, wantedBy(snapshot, choice));
    return whatIfView(snapshot, founders, figures, choice, names);
  }

  async #compute(snapshot: LineageSnapshot, individual: number, assumptions: Assumptions): Promise<WhatIf> {
    const { graph } = snapshot;
    const line = graph.lineOf[individual] ?? -1;
    const members = line < 0 ? new Int32Array(0) : snapshot.membersOfLine(line);
    const asked: FiguresAsked = {
      individual,
      living: members.filter((animal) => isLiving(graph, animal)),
      wild: founderKinds(graph.sources).wild,
      generations: COMPLETENESS_GENERATIONS,
      apart: new Set(graph.claims.individual.keys()),
    };
    const input = { pedigree: graph.pedigree, asked, assumptions, frontierBytes: snapshot.matrixBytes };
    const outcome = figuresOrLoop(input, HERE_MOST) ?? (await this.work.run(whatIfTask, input));
    if ('loop' in outcome) throw await this.#loop(snapshot, outcome.loop);
    return outcome;
  }

  async #loop({ graph }: LineageSnapshot, members: readonly number[]): Promise<LoopProblem> {
    const wanted = new WantedNames();
    for (const member of members) wanted.individuals.add(member);
    const names = await RecordNames.read(this.dataSource.manager, graph, wanted);
    return new LoopProblem(members.map((member) => names.record('individual', member).name));
  }
}
