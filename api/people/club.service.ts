import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { isMatch, type VersionMatch } from '../platform/etag.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import { NotFoundProblem, StaleProblem } from '../platform/problem.ts';
import { inTransaction } from '../platform/transaction.ts';
import { Club } from './club.entity.ts';
import type { ClubChangeRequest } from './people.dto.ts';
import { readClub } from './people.queries.ts';
import type { ClubView } from './people.view.ts';
import { say } from '../platform/say.ts';

/** The settings of the club. */
@Injectable()
export class ClubService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** The settings; 404 before the club was set up. */
  async get(): Promise<ClubView> {
    return present(await readClub(this.dataSource.manager));
  }

  /** Changes the settings. 404, 412. */
  async change(match: VersionMatch, request: ClubChangeRequest): Promise<ClubView> {
    return inTransaction(this.dataSource, (manager) => changeClub(manager, match, request));
  }
}

/** Changes the settings in an open transaction, and tells the journal. 404, 412. */
export async function changeClub(
  manager: EntityManager,
  match: VersionMatch,
  { name, publicReading }: ClubChangeRequest,
  reversesId?: string,
): Promise<ClubView> {
  await manager.query('select from club for update');
  const before = present(await readClub(manager));
  if (!isMatch(match, before.version)) throw new StaleProblem(before);
  await manager.update(
    Club,
    { singleton: true },
    { name: name ?? before.name, publicReading: publicReading ?? before.publicReading },
  );
  const after = present(await readClub(manager));
  await writeEntry(manager, {
    action: 'club-changed',
    kind: 'club',
    recordId: null,
    recordVersion: after.version,
    before: { name: before.name, publicReading: before.publicReading },
    after: { name: after.name, publicReading: after.publicReading },
    ...(reversesId === undefined ? {} : { reversesId }),
  });
  return after;
}

function present(club: ClubView | null): ClubView {
  if (!club) throw new NotFoundProblem(say`club`, say`of this register`);
  return club;
}
