import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import type { NewSourceRequest, SourceChangeRequest } from './source.dto.ts';
import { Source } from './source.entity.ts';
import { findSource } from './source.queries.ts';
import type { SourceView } from './source.view.ts';
import { say } from '../../platform/say.ts';

export const sourceKind: Kind<Source, SourceView> = { word: 'source', entity: Source, find: findSource };

/** Fields that are written as they are sent. */
const plainFields = [
  'code',
  'kind',
  'receivedFrom',
  'receivedBy',
  'countryOfExport',
  'permitReferences',
  'labelAsReceived',
  'labelNote',
  'baseKinship',
  'notes',
  'visibility',
] as const;

/** Sources. */
@Injectable()
export class SourcesService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One source; 404 where there is none. */
  async get(id: string): Promise<SourceView> {
    return present(await findSource(this.dataSource.manager, id), () => new NotFoundProblem(say`source`, id));
  }

  /** Adds a source of the acting keeper; 409 where the keeper has one of that code. */
  async add(keeper: Acting, request: NewSourceRequest): Promise<SourceView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const id = newId();
      await manager.insert(Source, {
        id,
        keeperId: keeper.id,
        ...sentFields(request, plainFields),
        ...dateColumns('date', request.date ?? null),
      });
      noteAdded(manager, 'source', id);
      return present(await findSource(manager, id), () => new NotFoundProblem(say`source`, id));
    });
  }

  /** Changes a source; 404, 409, 412, 422. */
  async change(id: string, match: VersionMatch, request: SourceChangeRequest): Promise<SourceView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const source = await lockStanding(manager, sourceKind, id, match);
      const date = request.date === undefined ? {} : dateColumns('date', request.date);
      await writeChange(manager, sourceKind, source, { ...sentFields(request, plainFields), ...date });
      return present(await findSource(manager, id), () => new NotFoundProblem(say`source`, id));
    });
  }
}
