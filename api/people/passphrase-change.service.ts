import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource } from 'typeorm';
import { acting } from '../platform/acting.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import { ConflictProblem, InvalidProblem } from '../platform/problem.ts';
import { RateLimits } from '../platform/rate-limits.ts';
import { inTransaction } from '../platform/transaction.ts';
import type { PassphraseChangeRequest } from './account.dto.ts';
import { Passphrases } from './passphrases.ts';
import { readClub } from './people.queries.ts';
import { findStandingKeeper, storePassphrase } from './session.queries.ts';
import { SessionService } from './session.service.ts';
import type { SessionView } from './session.view.ts';
import { endSessionsOf } from './sessions.ts';
import { naming } from './sign-in-limits.ts';
import { refuseWeak } from './weak-passphrases.ts';
import { say } from '../platform/say.ts';

/** Changing one's own passphrase. */
@Injectable()
export class PassphraseChangeService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Passphrases) private readonly passphrases: Passphrases,
    @Inject(SessionService) private readonly sessions: SessionService,
    @Inject(RateLimits) private readonly limits: RateLimits,
  ) {}

  /**
   * Puts a new passphrase in place of the present one and ends every other session of the keeper; this one goes on under a new id.
   * 409 where there is no passphrase yet, 422 where the present one is not right or the new one is guessed first, 429.
   */
  async change(request: Request, { current, next }: PassphraseChangeRequest): Promise<SessionView> {
    const who = acting();
    await this.limits.spend(naming, who.id);
    const passwordHash = (await findStandingKeeper(this.dataSource.manager, who.id))?.passwordHash ?? null;
    if (passwordHash === null)
      throw new ConflictProblem(say`You have no passphrase yet. Ask an administrator for a link to set one.`);
    if (!(await this.passphrases.matches(passwordHash, current))) refuse('/current', say`This is not your passphrase.`);
    if (current === next) refuse('/next', say`This is the passphrase that you have. Choose another one.`);
    refuseWeak(next, [(await readClub(this.dataSource.manager))?.name ?? '', who.name], '/next');
    const stored = await this.passphrases.hash(next);
    await this.store(who.id, passwordHash, stored);
    await this.limits.restore(naming, who.id);
    if (who.via !== 'session') return this.sessions.describe(who);
    return this.sessions.admit(request, { ...who, roles: [...who.roles], passwordHash: stored });
  }

  private async store(id: string, before: string, stored: string): Promise<void> {
    await inTransaction(this.dataSource, async (manager) => {
      await manager.query('select from keeper where id = $1 for no key update', [id]);
      if ((await findStandingKeeper(manager, id))?.passwordHash !== before)
        throw new ConflictProblem(say`Your passphrase was changed at the same moment. Sign in again.`);
      await storePassphrase(manager, id, stored);
      await endSessionsOf(manager, id);
      const entry = { action: 'password-changed', kind: 'keeper', recordId: id, ownerId: id } as const;
      await writeEntry(manager, { ...entry, before: null, after: null });
    });
  }
}

function refuse(pointer: string, detail: string): never {
  throw new InvalidProblem(detail, [{ pointer, detail }]);
}
