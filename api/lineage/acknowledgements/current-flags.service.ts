import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { CarriedNow, FlagSubject } from '../../provenance/acknowledgements/acknowledgements.service.ts';
import { auditLabel } from '../../provenance/flags.ts';
import { LineAuditService } from '../audit/line-audit.service.ts';
import { labelEvidenceOf, toFindings } from '../label-evidence.ts';
import { factsFor, readLabelFacts } from '../label-facts.queries.ts';
import { resolveAnimals } from '../named-animals.ts';
import { recordIdIn, RecordNames, WantedNames } from '../record-names.ts';
import { Snapshots } from '../snapshots.service.ts';
import { causesOfFlag } from '../told-flags.ts';

/** Tells which flags an animal or a line carries at the moment. */
@Injectable()
export class CurrentFlags {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(LineAuditService) private readonly audits: LineAuditService,
  ) {}

  /**
   * The flags of an animal or a line, with the first records that cause each.
   *
   * @param signal ends the audit of a line when nobody waits for it any more
   * @throws InvalidProblem or NotFoundProblem where there is no such animal or line; BusyProblem if too many computations wait
   */
  of({ table, id }: FlagSubject, signal: AbortSignal): Promise<CarriedNow[]> {
    return table === 'line' ? this.#ofLine(id, signal) : this.#ofAnimal(id);
  }

  async #ofAnimal(id: string): Promise<CarriedNow[]> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const [individual = -1] = await resolveAnimals(manager, snapshot, [{ text: id, pointer: '/individualId' }]);
    const evidence = labelEvidenceOf(snapshot, individual);
    const wanted = new WantedNames();
    wanted.addEvidence(evidence);
    const [names, facts] = await Promise.all([
      RecordNames.read(manager, snapshot.graph, wanted),
      readLabelFacts(manager, snapshot, [evidence], [id]),
    ]);
    return auditLabel(toFindings(snapshot, evidence, factsFor(facts, id), names)).map((flag) => ({
      code: flag.code,
      recordIds: [...causesOfFlag(flag, names).ids],
    }));
  }

  async #ofLine(id: string, signal: AbortSignal): Promise<CarriedNow[]> {
    const { snapshot, audit } = await this.audits.audit(id, false, signal);
    return audit.flags.map(({ code, causes }) => ({
      code,
      recordIds: causes.map(({ kind, number }) => recordIdIn(snapshot.graph, kind, number)),
    }));
  }
}
