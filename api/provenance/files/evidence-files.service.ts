import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ForbiddenProblem } from '../../people/permissions.ts';
import { isOwn } from '../../people/visibility.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { FileStore } from '../../platform/file-store.ts';
import { NotFoundProblem, Problem } from '../../platform/problem.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { writeChange } from '../../register/change.ts';
import { present } from '../../register/present.ts';
import type { Evidence } from '../evidence/evidence.entity.ts';
import { findEvidence } from '../evidence/evidence.queries.ts';
import { evidenceKind, lockUnreviewed } from '../evidence/evidence.service.ts';
import type { EvidenceView } from '../evidence/evidence.view.ts';
import { findEvidenceFile } from './evidence-file.queries.ts';
import { FileIntake, noteFile } from './file-intake.service.ts';
import type { ReceivedFile } from './received-file.ts';
import type { ServedFile } from './serve-file.ts';
import { say } from '../../platform/say.ts';

/** The papers themselves, as files. */
@Injectable()
export class EvidenceFilesService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(FileIntake) private readonly intake: FileIntake,
    @Inject(FileStore) private readonly store: FileStore,
  ) {}

  /** The file of a piece of evidence; 404 where there is none, or whoever asks may not see it. */
  async get(id: string): Promise<ServedFile> {
    const found = await findEvidenceFile(this.dataSource.manager, id);
    const { hash, mediaType } = present(found, () => new NotFoundProblem(say`evidence`, id));
    if (hash === null || mediaType === null) throw noFile();
    return {
      mediaType,
      name: `evidence-${hash.slice(0, 12)}`,
      tag: hash,
      isLasting: false,
      open: () => this.store.get(hash),
    };
  }

  /**
   * Puts a file to evidence, or another one in its place, while it waits for its review. Its keeper alone may, else 403. 404, 409 where
   * it was reviewed or withdrawn, 412; 413, 415, 422 as the intake tells.
   */
  async put(id: string, match: VersionMatch, file: ReceivedFile): Promise<EvidenceView> {
    // what may not be done is told before the work on the file
    await inTransaction(this.dataSource, (manager) => lockOwn(manager, id, match));
    const taken = await this.intake.takePaper(file);
    return inTransaction(this.dataSource, async (manager) => {
      const evidence = await lockOwn(manager, id, match);
      await noteFile(manager, taken);
      await writeChange(manager, evidenceKind, evidence, { fileHash: taken.hash });
      return present(await findEvidence(manager, id), () => new NotFoundProblem(say`evidence`, id));
    });
  }
}

async function lockOwn(manager: EntityManager, id: string, match: VersionMatch): Promise<Evidence> {
  await lockPedigree(manager);
  const evidence = await lockUnreviewed(manager, id, match);
  if (isOwn(evidence)) return evidence;
  throw new ForbiddenProblem(
    say`Only whoever brought this evidence can put the paper to it. Ask them, or bring your own.`,
  );
}

const noFile = (): Problem =>
  new Problem('not-found', 404, say`Not found`, say`This evidence has no file. It is known by its reference only.`);
