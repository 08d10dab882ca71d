import { Inject, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { DataSource, type EntityManager } from 'typeorm';
import { newId } from '../platform/ids.ts';
import { writeEntry } from '../platform/journal-entry.ts';
import { InvalidProblem, Problem } from '../platform/problem.ts';
import { inTransaction } from '../platform/transaction.ts';
import { keptForm } from './change-keeper.ts';
import { Keeper } from './keeper.entity.ts';
import type { LinkUseRequest } from './links.dto.ts';
import { findOpenLink, useUp, type OpenLink } from './links.queries.ts';
import type { LinkOfferView } from './links.view.ts';
import { Passphrases } from './passphrases.ts';
import { readClub } from './people.queries.ts';
import { findStandingKeeper, storePassphrase, type SigningKeeper } from './session.queries.ts';
import { SessionService } from './session.service.ts';
import type { SessionView } from './session.view.ts';
import { endSessionsOf } from './sessions.ts';
import { refuseWeak } from './weak-passphrases.ts';
import { say } from '../platform/say.ts';

/** What whoever got a link does with it. */
@Injectable()
export class JoiningService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(SessionService) private readonly sessions: SessionService,
    @Inject(Passphrases) private readonly passphrases: Passphrases,
  ) {}

  /** What a link offers. 404 where it was used or revoked, has run out, or never was. */
  async look(secret: string): Promise<LinkOfferView> {
    const link = await findOpenLink(this.dataSource.manager, secret);
    if (!link) throw new ClosedLinkProblem();
    const { kind, name, expiresAt } = link;
    return { kind, name, expiresAt, club: await this.clubName() };
  }

  /**
   * Joins the club, or sets the new passphrase, and signs in. A link works once: 404 for whoever comes second. 409 where the name is
   * taken, 422 for a passphrase that is guessed first; the link can then still be used.
   */
  async use(request: Request, secret: string, { name, password }: LinkUseRequest): Promise<SessionView> {
    const link = await findOpenLink(this.dataSource.manager, secret);
    if (!link) throw new ClosedLinkProblem();
    const known = nameFor(link, name);
    refuseWeak(password, [await this.clubName(), known], '/password');
    const passwordHash = await this.passphrases.hash(password);
    const keeper = await inTransaction(this.dataSource, async (manager) => {
      if (!(await useUp(manager, link.id))) throw new ClosedLinkProblem();
      if (link.keeperId !== null) return resetPassphrase(manager, link.keeperId, passwordHash);
      return join(manager, { id: newId(), name: known, roles: link.roles, passwordHash });
    });
    return this.sessions.admit(request, keeper);
  }

  private async clubName(): Promise<string> {
    return (await readClub(this.dataSource.manager))?.name ?? '';
  }
}

/** 404: a link that cannot be used tells nothing, not even whether it ever was. */
class ClosedLinkProblem extends Problem {
  constructor() {
    super(
      'not-found',
      404,
      say`This link is closed`,
      say`This link was used already, taken back, has run out, or is not whole. Ask an administrator of the club for a new one.`,
    );
  }
}

/** The name of whoever uses a link; an invitation asks for it, a reset knows it. */
function nameFor(link: OpenLink, given: string | undefined): string {
  if (link.kind === 'reset' && given === undefined) return link.name ?? '';
  if (link.kind === 'invitation' && given !== undefined) return given;
  const detail = given === undefined ? 'Say under which name you join.' : say`This link sets a passphrase and no name.`;
  throw new InvalidProblem(detail, [{ pointer: '/name', detail }]);
}

async function join(manager: EntityManager, keeper: SigningKeeper): Promise<SigningKeeper> {
  await manager.insert(Keeper, keeper);
  await writeEntry(manager, {
    action: 'joined',
    kind: 'keeper',
    recordId: keeper.id,
    recordVersion: 1,
    ownerId: keeper.id,
    keeperId: keeper.id,
    before: null,
    after: keptForm({ ...keeper, region: null, leftAt: null }),
  });
  return keeper;
}

async function resetPassphrase(manager: EntityManager, id: string, passwordHash: string): Promise<SigningKeeper> {
  await storePassphrase(manager, id, passwordHash);
  await endSessionsOf(manager, id);
  const keeper = await findStandingKeeper(manager, id);
  if (!keeper) throw new ClosedLinkProblem();
  const entry = { action: 'password-reset', kind: 'keeper', recordId: id, ownerId: id, keeperId: id } as const;
  await writeEntry(manager, { ...entry, before: null, after: null });
  return keeper;
}
