import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource, type EntityManager } from 'typeorm';
import { newId } from '../platform/ids.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import { networkOf } from '../platform/network.ts';
import { ConflictProblem } from '../platform/problem.ts';
import { RateLimits } from '../platform/rate-limits.ts';
import { inTransaction } from '../platform/transaction.ts';
import { Club } from './club.entity.ts';
import { Keeper } from './keeper.entity.ts';
import { Passphrases } from './passphrases.ts';
import { ForbiddenProblem } from './permissions.ts';
import type { SetupRequest } from './session.dto.ts';
import { needsSetup, type SigningKeeper } from './session.queries.ts';
import { SessionService } from './session.service.ts';
import type { SessionView } from './session.view.ts';
import { endSetupCodes, isSetupCode } from './setup-code.ts';
import { settingUp } from './sign-in-limits.ts';
import { refuseWeak } from './weak-passphrases.ts';
import { say } from '../platform/say.ts';

/** Naming the club and its first administrator. */
@Injectable()
export class SetupService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(SessionService) private readonly sessions: SessionService,
    @Inject(Passphrases) private readonly passphrases: Passphrases,
    @Inject(RateLimits) private readonly limits: RateLimits,
  ) {}

  /**
   * Names the club and its first administrator, who is signed in. 403 for a wrong code, 409 where it was done before, 422 for a
   * passphrase that is guessed first.
   */
  async setUp(request: Request, { code, clubName, name, password }: SetupRequest): Promise<SessionView> {
    await this.limits.spend(settingUp, networkOf(request.ip));
    await this.requireCode(this.dataSource.manager, code);
    refuseWeak(password, [clubName, name], '/password');
    const passwordHash = await this.passphrases.hash(password);
    const keeper = await inTransaction(this.dataSource, async (manager) => {
      // one at a time; whoever comes second finds it done
      await manager.query('lock table club in exclusive mode');
      await this.requireCode(manager, code);
      await endSetupCodes(manager);
      await nameClub(manager, clubName);
      const first = await nameAdministrator(manager, name, passwordHash);
      const after = { name: clubName, administrator: name };
      const entry = { action: 'set-up', kind: 'club', recordId: null, before: null, after } as const;
      await writeEntry(manager, { ...entry, keeperId: first.id });
      return first;
    });
    return this.sessions.admit(request, keeper);
  }

  private async requireCode(manager: EntityManager, code: string): Promise<void> {
    if (!(await needsSetup(manager))) throw new ConflictProblem(say`This register was set up already. Sign in.`);
    if (await isSetupCode(manager, code)) return;
    const detail = say`This is not the code. The service prints it in its terminal when it starts; start it again for a new one.`;
    throw new ForbiddenProblem(detail, [{ pointer: '/code', detail }]);
  }
}

async function nameClub(manager: EntityManager, name: string): Promise<void> {
  const changed = await manager.update(Club, { singleton: true }, { name });
  if (changed.affected === 0) await manager.insert(Club, { name });
}

/**
 * A register from before there was sign-in has one keeper, to whom everything belongs: that keeper gets the name and the passphrase.
 * So does a keeper of this name. Else the administrator is new.
 */
async function nameAdministrator(manager: EntityManager, name: string, passwordHash: string): Promise<SigningKeeper> {
  const keepers = await manager.find(Keeper, { select: { id: true, name: true } });
  const known = keepers.length === 1 ? keepers[0] : keepers.find((each) => isSameName(each.name, name));
  const id = known?.id ?? newId();
  const roles: Keeper['roles'] = ['registrar', 'administrator'];
  if (known) await manager.update(Keeper, { id }, { name, roles, passwordHash, leftAt: null, updatedAt: new Date() });
  else await manager.insert(Keeper, { id, name, roles, passwordHash });
  return { id, name, roles, passwordHash };
}

const isSameName = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
