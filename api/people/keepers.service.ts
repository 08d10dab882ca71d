import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { acting } from '../platform/acting.ts';
import type { VersionMatch } from '../platform/etag.ts';
import { ConflictProblem, NotFoundProblem } from '../platform/problem.ts';
import { inTransaction } from '../platform/transaction.ts';
import { changeKeeper, lockKeeper } from './change-keeper.ts';
import type { KeeperChangeRequest } from './people.dto.ts';
import { findMember } from './people.queries.ts';
import type { MemberView } from './people.view.ts';
import { ForbiddenProblem, may, permissionsOf } from './permissions.ts';
import { say } from '../platform/say.ts';

/** The members of the club. */
@Injectable()
export class KeepersService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One member, also one who left. 404 where there is none. */
  async get(id: string): Promise<MemberView> {
    const found = await findMember(this.dataSource.manager, id);
    if (!found) throw new NotFoundProblem(say`keeper`, id);
    return found;
  }

  /**
   * Changes name, region or roles. 403 for another's name or region and for any roles, if not by an administrator; 404; 409 where the name is taken or
   * the club would be left without an administrator; 412.
   */
  async change(id: string, match: VersionMatch, { name, region, roles }: KeeperChangeRequest): Promise<MemberView> {
    if (roles === undefined) requireOwnOrOffice(id);
    else requireOffice();
    return inTransaction(this.dataSource, async (manager) => {
      const keeper = await lockKeeper(manager, id, match);
      const patch = {
        ...(name === undefined ? {} : { name }),
        ...(region === undefined ? {} : { region }),
        ...(roles === undefined ? {} : { roles }),
      };
      return changeKeeper(manager, keeper, patch, { action: roles === undefined ? 'changed' : 'roles-changed' });
    });
  }

  /**
   * A keeper leaves the club: signing in ends in every browser and for every program; the records stay. 403 for others, if not by an
   * administrator; 404, 409, 412.
   */
  async depart(id: string, match: VersionMatch): Promise<MemberView> {
    requireOwnOrOffice(id);
    return inTransaction(this.dataSource, async (manager) => {
      const keeper = await lockKeeper(manager, id, match);
      if (keeper.leftAt !== null) throw new ConflictProblem(say`This keeper has left the club already.`);
      return changeKeeper(manager, keeper, { leftAt: new Date() }, { action: 'left' });
    });
  }

  /** A keeper who left is a member again, with the roles and the passphrase of before. 403, 404, 409, 412. */
  async takeBack(id: string, match: VersionMatch): Promise<MemberView> {
    return inTransaction(this.dataSource, async (manager) => {
      const keeper = await lockKeeper(manager, id, match);
      if (keeper.leftAt === null) throw new ConflictProblem(say`This keeper is a member of the club.`);
      return changeKeeper(manager, keeper, { leftAt: null }, { action: 'returned' });
    });
  }
}

/** 403 for whoever is neither the keeper nor an administrator. */
export function requireOwnOrOffice(id: string): void {
  if (id.toLowerCase() !== acting().id) requireOffice();
}

/** 403 for whoever is no administrator. */
export function requireOffice(): void {
  if (!may(permissionsOf(acting(), { publicReading: false }), 'change', 'keeper'))
    throw new ForbiddenProblem(say`Only an administrator of the club changes this.`);
}
