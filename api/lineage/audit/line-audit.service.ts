import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { readClub } from '../../people/people.queries.ts';
import { longTaskModule, type LongTaskModule } from '../../platform/long-task.ts';
import { LongWork } from '../../platform/long-work.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { readKnownFlagsOfLine } from '../../provenance/acknowledgements/acknowledgement.queries.ts';
import type { KnownFlags } from '../../provenance/acknowledgements/known-flags.ts';
import { findLine } from '../../register/lines/line.queries.ts';
import type { LineView } from '../../register/lines/line.view.ts';
import { present } from '../../register/present.ts';
import { readLineFacts, type LabelFacts } from '../label-facts.queries.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import { RecordNames } from '../record-names.ts';
import { Snapshots } from '../snapshots.service.ts';
import type { AuditInput } from './audit-input.ts';
import type { LineAudit } from './audit-line.ts';
import type { PaperSize } from '../../platform/pdf/paper.ts';
import type { AuditPaper } from './audit-paper.ts';
import { auditView, namesWanted } from './audit-view.ts';
import { countByKeeper, findAuditedMembers, readMemberRows } from './audited-members.queries.ts';
import { GivenUpProblem } from '../../platform/given-up.ts';
import { founderVerdicts } from './founder-verdicts.ts';
import { membersCsv } from './members-csv.ts';
import type { LineAuditView } from './line-audit.view.ts';
import { say } from '../../platform/say.ts';

/** Most keepers that an audit names. */
const KEEPERS_MOST = 100;

const lineAudit = longTaskModule<AuditInput, LineAudit>('../tasks/line-audit.task.ts', import.meta.url);

const paper = longTaskModule<AuditPaper, Uint8Array>('../tasks/audit-paper.task.ts', import.meta.url);

/** A line with what its lineage says, by dense numbers. */
export interface Audited {
  readonly snapshot: LineageSnapshot;
  readonly line: LineView;
  readonly audit: LineAudit;
  readonly facts: LabelFacts;
  /** What is acknowledged of the line and of its members. */
  readonly known: KnownFlags;
}

/** Audits lines. */
@Injectable()
export class LineAuditService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * The audit of a line over the members that whoever asks may see.
   *
   * @param signal ends the computation when nobody waits for it any more
   * @throws NotFoundProblem if there is no such line; BusyProblem if too many computations wait
   */
  async get(id: string, signal?: AbortSignal): Promise<LineAuditView> {
    const { manager } = this.dataSource;
    const audited = await this.audit(id, false, signal);
    const keepers = await countByKeeper(manager, audited.line.id, KEEPERS_MOST);
    const names = await RecordNames.read(manager, audited.snapshot.graph, namesWanted(audited.audit));
    return auditView({ ...audited, keepers, names });
  }

  /** Every member with its flags and shares, as CSV. Errors as for `get`. */
  async table(id: string, signal?: AbortSignal): Promise<string> {
    const { snapshot, line, audit, known } = await this.audit(id, true, signal);
    return membersCsv(snapshot, audit.each ?? [], await readMemberRows(this.dataSource.manager, line.id), known);
  }

  /** The same audit as a PDF, written in a thread. Errors as for `get`. */
  async paper(id: string, size: PaperSize, signal?: AbortSignal): Promise<Uint8Array> {
    const audit = await this.get(id, signal);
    const club = (await readClub(this.dataSource.manager))?.name ?? null;
    return this.#run(paper, { audit, club, made: new Date().toISOString(), size }, signal);
  }

  #run<Input, Result>(task: LongTaskModule<Input, Result>, input: Input, signal?: AbortSignal): Promise<Result> {
    return this.work.run(task, input, signal ? { signal } : {}).catch((error: unknown) => {
      throw signal?.aborted ? new GivenUpProblem() : error;
    });
  }

  /** What the lineage says of a line; `isEach` for every member too. Errors as for `get`. */
  async audit(id: string, isEach: boolean, signal?: AbortSignal): Promise<Audited> {
    const { manager } = this.dataSource;
    const line = present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    const [found, known] = await Promise.all([
      findAuditedMembers(manager, line.id),
      readKnownFlagsOfLine(manager, line.id),
    ]);
    // read afterwards, so that it knows every animal found
    const snapshot = await this.snapshots.current();
    const { graph } = snapshot;
    const number = graph.lines.findIndex((node) => node.id === line.id);
    const facts = await readLineFacts(manager, snapshot, number);
    const input: AuditInput = {
      ...found(snapshot),
      pedigree: graph.pedigree,
      inbreeding: snapshot.inbreeding,
      lineOf: graph.lineOf,
      line: number,
      labelKind: line.labelKind,
      verdicts: founderVerdicts(graph, number, facts),
      acknowledged: new Set(known.animals().map((animal) => snapshot.find(animal))),
      isEach,
    };
    const audit = await this.#run(lineAudit, input, signal);
    return { snapshot, line, audit, facts, known };
  }
}
