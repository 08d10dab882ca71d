import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { findClaimsAbout } from '../../provenance/claims/claim.queries.ts';
import { findAcceptedEvidence } from '../../provenance/evidence/evidence.queries.ts';
import { PedigreeChartService } from '../pedigree-chart.service.ts';
import type { PedigreeView } from '../pedigree.view.ts';
import { ProvStatements, typed, type ProvDocument } from './prov-document.ts';
import { tellChart } from './prov-of-chart.ts';
import { tellClaims } from './prov-of-claims.ts';
import { readKeepers } from './prov.queries.ts';

/** Most claims, and most pieces of evidence, of one document. */
export const PROV_RECORDS_MOST = 1000;

/** Tells the provenance of animals as W3C PROV has it. */
@Injectable()
export class ProvService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(PedigreeChartService) private readonly charts: PedigreeChartService,
  ) {}

  /**
   * Where an animal comes from, over so many generations: ancestors, clutches and sources as its chart has them, what is claimed of them, and
   * on which evidence.
   *
   * @throws NotFoundProblem if there is no such animal, or it may not be seen
   */
  async of(name: string, generations: number): Promise<ProvDocument> {
    const manager = this.dataSource.manager;
    const chart = await this.charts.get(name, generations);
    const individualIds = idsOf(chart, 'individual');
    const statements = new ProvStatements();
    tellChart(statements, chart);
    for (const { id, keeperId, keeper } of await readKeepers(manager, individualIds)) {
      statements.add('agent', `record:${keeperId}`, { 'prov:type': typed('prov:Person'), 'prov:label': keeper });
      statements.relate('wasAttributedTo', {
        'prov:entity': `record:${id}`,
        'prov:agent': `record:${keeperId}`,
        'lk:role': 'keeper',
      });
    }
    const subjects = { individualIds, sourceIds: idsOf(chart, 'source') };
    const claims = await findClaimsAbout(manager, subjects, PROV_RECORDS_MOST);
    const claimIds = claims.map(({ id }) => id);
    tellClaims(statements, claims, await findAcceptedEvidence(manager, claimIds, PROV_RECORDS_MOST));
    return statements.document;
  }
}

function idsOf({ nodes }: PedigreeView, kind: 'individual' | 'source'): string[] {
  return nodes.filter((node) => node.kind === kind && !node.isPrivate).map(({ id }) => id);
}
