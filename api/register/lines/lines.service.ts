import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { acting } from '../../platform/acting.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import { requireStanding } from '../standing.queries.ts';
import type { LineChangeRequest, NewLineRequest } from './line.dto.ts';
import { Line } from './line.entity.ts';
import { findLine } from './line.queries.ts';
import type { LineView } from './line.view.ts';
import { say } from '../../platform/say.ts';

export const lineKind: Kind<Line, LineView> = { word: 'line', entity: Line, find: findLine };

/** Lines: the labels that animals are bred under. */
@Injectable()
export class LinesService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One line; 404 where there is none. */
  async get(id: string): Promise<LineView> {
    return present(await findLine(this.dataSource.manager, id), () => new NotFoundProblem(say`line`, id));
  }

  /** Adds a line; 409 where the species has one of that name, 422 where the species is not there. */
  async add(request: NewLineRequest): Promise<LineView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      await requireStanding(manager, 'species', request.speciesId, '/speciesId');
      const id = newId();
      await manager.insert(Line, { id, keeperId: acting().id, ...request });
      noteAdded(manager, 'line', id);
      return present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    });
  }

  /** Changes a line; 404, 409, 412, 422. */
  async change(id: string, match: VersionMatch, request: LineChangeRequest): Promise<LineView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const line = await lockStanding(manager, lineKind, id, match);
      await writeChange(manager, lineKind, line, sentFields(request, ['name', 'labelKind', 'policy']));
      return present(await findLine(manager, id), () => new NotFoundProblem(say`line`, id));
    });
  }
}
