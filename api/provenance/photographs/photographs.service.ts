import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { authorize } from '../../people/permissions.ts';
import type { Acting } from '../../platform/acting.ts';
import { dateColumns } from '../../platform/dates.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { FileStore } from '../../platform/file-store.ts';
import { newId } from '../../platform/ids.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../../register/change.ts';
import { Individual } from '../../register/individuals/individual.entity.ts';
import { noteAdded } from '../../register/kept/note-change.ts';
import { present } from '../../register/present.ts';
import { holdStanding, requireStanding } from '../../register/standing.queries.ts';
import { FileIntake, noteFile } from '../files/file-intake.service.ts';
import type { ReceivedFile } from '../files/received-file.ts';
import type { ServedFile } from '../files/serve-file.ts';
import { SmallPictures } from '../files/small-pictures.ts';
import type { NewPhotographRequest, PhotographChangeRequest, PictureQuery } from './photograph.dto.ts';
import { Photograph } from './photograph.entity.ts';
import { findPhotograph, findPicture } from './photograph.queries.ts';
import type { PhotographRecordView } from './photograph.view.ts';
import { say } from '../../platform/say.ts';

export const photographKind: Kind<Photograph, PhotographRecordView> = {
  word: 'photograph',
  entity: Photograph,
  find: findPhotograph,
};

/** Dated photographs of animals. */
@Injectable()
export class PhotographsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(FileIntake) private readonly intake: FileIntake,
    @Inject(FileStore) private readonly store: FileStore,
    @Inject(SmallPictures) private readonly small: SmallPictures,
  ) {}

  /** One photograph; 404 where there is none. */
  async get(id: string): Promise<PhotographRecordView> {
    return present(await findPhotograph(this.dataSource.manager, id), () => new NotFoundProblem(say`photograph`, id));
  }

  /** The picture of a photograph, as it is kept or small; 404. */
  async picture(id: string, { size = 'whole' }: PictureQuery): Promise<ServedFile> {
    const found = await findPicture(this.dataSource.manager, id);
    const { hash, mediaType, number, takenOn } = present(found, () => new NotFoundProblem(say`photograph`, id));
    const name = ['animal', formatRegistryNumber(number), takenOn].filter((part) => part !== null).join('-');
    return size === 'small'
      ? { mediaType: 'image/jpeg', name, tag: `${hash}-small`, isLasting: true, open: () => this.small.get(hash) }
      : { mediaType, name, tag: hash, isLasting: true, open: () => this.store.get(hash) };
  }

  /** Adds a photograph of an animal that stands; its keeper or a registrar may, else 403. 413, 415, 422 as the intake tells. */
  async add(keeper: Acting, request: NewPhotographRequest, file: ReceivedFile): Promise<PhotographRecordView> {
    // nobody's picture is worked on for nothing
    await requireOwnAnimal(this.dataSource.manager, request.individualId);
    const taken = await this.intake.takePhotograph(file);
    return inTransaction(this.dataSource, async (manager) => {
      await requireOwnAnimal(manager, request.individualId);
      await holdStanding(manager, 'individual', [request.individualId.toLowerCase()], () => '/individualId');
      await noteFile(manager, taken);
      const id = newId();
      await manager.insert(Photograph, {
        id,
        keeperId: keeper.id,
        fileHash: taken.hash,
        ...sentFields(request, ['individualId', 'view', 'notes']),
        ...dateColumns('takenOn', request.takenOn ?? null),
      });
      noteAdded(manager, 'photograph', id);
      return present(await findPhotograph(manager, id), () => new NotFoundProblem(say`photograph`, id));
    });
  }

  /** Changes what is said of a photograph; 404, 409 where it was withdrawn, 412, 422. */
  async change(id: string, match: VersionMatch, request: PhotographChangeRequest): Promise<PhotographRecordView> {
    return inTransaction(this.dataSource, async (manager) => {
      const photograph = await lockStanding(manager, photographKind, id, match);
      const takenOn = request.takenOn === undefined ? {} : dateColumns('takenOn', request.takenOn);
      await writeChange(manager, photographKind, photograph, { ...sentFields(request, ['view', 'notes']), ...takenOn });
      return present(await findPhotograph(manager, id), () => new NotFoundProblem(say`photograph`, id));
    });
  }
}

async function requireOwnAnimal(manager: EntityManager, id: string): Promise<void> {
  await requireStanding(manager, 'individual', id, '/individualId');
  authorize('change', 'individual', await manager.findOneByOrFail(Individual, { id }));
}
