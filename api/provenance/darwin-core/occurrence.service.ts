import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { NotFoundProblem } from '../../platform/problem.ts';
import { findClaimsAbout } from '../claims/claim.queries.ts';
import { DARWIN_CORE, type OccurrenceTerms } from './darwin-core-terms.ts';
import { occurrenceOf } from './occurrence-terms.ts';
import { findOccurrence } from './occurrence.queries.ts';
import type { OccurrenceQuery } from './occurrence.dto.ts';
import { simpleCsv } from './simple-csv.ts';
import { say } from '../../platform/say.ts';

/** An answer, and what it is. */
export interface Told {
  readonly type: string;
  readonly body: string;
}

/** Tells animals in the terms of Darwin Core. */
@Injectable()
export class OccurrenceService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** An animal by its id or registry number, as JSON-LD or as a row of CSV; 404 where there is none that may be seen. */
  async tell(name: string, { format }: OccurrenceQuery): Promise<Told> {
    const occurrence = await this.of(name);
    if (format === 'csv') return { type: 'text/csv; charset=utf-8; header=present', body: simpleCsv(occurrence) };
    return { type: 'application/ld+json; charset=utf-8', body: JSON.stringify(asLinkedData(occurrence)) };
  }

  private async of(name: string): Promise<OccurrenceTerms> {
    const manager = this.dataSource.manager;
    const animal = await findOccurrence(manager, name);
    if (!animal) throw new NotFoundProblem(say`animal`, name);
    const sourceIds = animal.sourceId === null ? [] : [animal.sourceId];
    return occurrenceOf(animal, await findClaimsAbout(manager, { individualIds: [animal.id], sourceIds }, 200));
  }
}

/** The terms as JSON-LD: each property is the IRI of a term. */
function asLinkedData(occurrence: OccurrenceTerms): Record<string, unknown> {
  return {
    '@context': { dwc: DARWIN_CORE },
    '@id': occurrence.occurrenceID,
    '@type': 'dwc:Occurrence',
    ...Object.fromEntries(Object.entries(occurrence).map(([term, value]) => [`dwc:${term}`, value])),
  };
}
