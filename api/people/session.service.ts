import { Inject, Injectable } from '@nestjs/common';
import type { Request, Response } from 'express';
import { DataSource } from 'typeorm';
import { acting, currentRequest, SignInProblem, type Viewer } from '../platform/acting.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import { networkOf } from '../platform/network.ts';
import { NotFoundProblem } from '../platform/problem.ts';
import { RateLimits } from '../platform/rate-limits.ts';
import { settingsKey, type Settings } from '../platform/settings.ts';
import { inTransaction } from '../platform/transaction.ts';
import { Passphrases } from './passphrases.ts';
import { readClub } from './people.queries.ts';
import { ForbiddenProblem, permissionsOf, type PermissionRule } from './permissions.ts';
import type { DemoSignInRequest, SignInRequest } from './session.dto.ts';
import {
  findKeeperByName,
  findStandingKeeper,
  listDemoKeepers,
  needsSetup,
  storePassphrase,
  type SigningKeeper,
} from './session.queries.ts';
import type { PermissionView, SessionKeeperView, SessionView } from './session.view.ts';
import { guesserOf, signingIn, signingInFromOnePlace } from './sign-in-limits.ts';
import { beginSession, endSession, endSessionsOf } from './sessions.ts';
import { say } from '../platform/say.ts';

/** Signing in and out in a browser. */
@Injectable()
export class SessionService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Passphrases) private readonly passphrases: Passphrases,
    @Inject(RateLimits) private readonly limits: RateLimits,
    @Inject(settingsKey) private readonly settings: Settings,
  ) {}

  /** Who asks, in which club, and what they may do. */
  async describe(who: Viewer): Promise<SessionView> {
    const manager = this.dataSource.manager;
    const club = await readClub(manager);
    const permissions = permissionsOf(who, { publicReading: club?.publicReading ?? false }).map(permissionView);
    const { documentBytes, pictureBytes, publicUrl } = this.settings;
    const fileLimits = { documentBytes, pictureBytes };
    const shared = { club: club && clubView(club), permissions, fileLimits, address: publicUrl };
    if (who !== null) return { ...shared, state: 'signed-in', keeper: keeperView(who), demoKeepers: [] };
    const state = (await needsSetup(manager)) ? 'setup' : 'signed-out';
    return { ...shared, state, keeper: null, demoKeepers: (await listDemoKeepers(manager)).map(keeperView) };
  }

  /**
   * Signs a keeper in. 429 where it was tried too often. 401, the same and after the same time, for a name that is not there and a passphrase
   * that is not right.
   */
  async signIn(request: Request, { name, password }: SignInRequest): Promise<SessionView> {
    const guesser = guesserOf(request, name);
    await this.limits.spend(signingIn, guesser);
    await this.limits.spend(signingInFromOnePlace, networkOf(request.ip));
    const keeper = await findKeeperByName(this.dataSource.manager, name);
    const isRight = await this.passphrases.matches(keeper?.passwordHash ?? null, password);
    if (!keeper || !isRight)
      throw new SignInProblem(
        say`The name or the passphrase is not right. Try again, or ask an administrator for a link to set a new passphrase.`,
      );
    await this.limits.restore(signingIn, guesser);
    return this.admit(request, await this.renewed(keeper, password));
  }

  /** Signs in as an invented keeper of the demo club. 403 in a real club, 404 where there is no such keeper. */
  async signInToDemo(request: Request, { keeperId }: DemoSignInRequest): Promise<SessionView> {
    if (!(await readClub(this.dataSource.manager))?.demo)
      throw new ForbiddenProblem(say`This is no demo club. Sign in with your name and passphrase.`);
    const invented = (await listDemoKeepers(this.dataSource.manager)).find(({ id }) => id === keeperId.toLowerCase());
    if (!invented) throw new NotFoundProblem(say`invented keeper`, keeperId);
    return this.admit(request, invented);
  }

  /**
   * Begins the session of a keeper who has shown who they are. Where the keeper left or got another passphrase at the same moment, 401.
   */
  async admit(request: Request, keeper: SigningKeeper): Promise<SessionView> {
    await beginSession(request, keeper.id);
    const now = await findStandingKeeper(this.dataSource.manager, keeper.id);
    if (now?.passwordHash !== keeper.passwordHash) {
      await endSessionsOf(this.dataSource.manager, keeper.id);
      throw new SignInProblem(say`This passphrase was changed at the same moment. Sign in with the new one.`);
    }
    const { id, name, roles } = keeper;
    const who: Viewer = { id, name, roles, via: 'session', scope: 'write' };
    const asked = currentRequest();
    if (asked) asked.viewer = who;
    return this.describe(who);
  }

  /** Ends the session of this browser. */
  async signOut(request: Request, response: Response): Promise<SessionView> {
    await endSession(request, response);
    return this.describe(null);
  }

  /** Ends every session of the keeper who acts, in every browser. Tokens of programs stay. */
  async signOutEverywhere(request: Request, response: Response): Promise<SessionView> {
    const { id } = acting();
    await inTransaction(this.dataSource, async (manager) => {
      await endSessionsOf(manager, id);
      await writeEntry(manager, {
        action: 'signed-out-everywhere',
        kind: 'keeper',
        recordId: id,
        ownerId: id,
        before: null,
        after: null,
      });
    });
    return this.signOut(request, response);
  }

  /** Stores the passphrase anew where it was stored with weaker figures than those of today. */
  private async renewed(keeper: SigningKeeper, password: string): Promise<SigningKeeper> {
    if (keeper.passwordHash === null || !this.passphrases.isOutdated(keeper.passwordHash)) return keeper;
    const passwordHash = await this.passphrases.hash(password);
    await inTransaction(this.dataSource, async (manager) => {
      const now = await findStandingKeeper(manager, keeper.id);
      if (now?.passwordHash === keeper.passwordHash) await storePassphrase(manager, keeper.id, passwordHash);
    });
    return { ...keeper, passwordHash };
  }
}

const clubView = (club: SessionView['club'] & object): SessionView['club'] & object => ({
  name: club.name,
  demo: club.demo,
  publicReading: club.publicReading,
});

const keeperView = ({ id, name, roles }: SessionKeeperView): SessionKeeperView => ({ id, name, roles });

function permissionView({ action, subject, conditions }: PermissionRule): PermissionView {
  return {
    action: [action].flat(),
    subject: [subject].flat().filter((kind) => typeof kind === 'string'),
    ...(conditions ? { conditions: conditions as PermissionView['conditions'] & object } : {}),
  };
}
