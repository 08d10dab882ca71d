import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { acting } from '../platform/acting.ts';
import { newId } from '../platform/ids.ts';
import { writeEntry, type KeptForm } from '../platform/journal-entry.ts';
import type { Page, PageQuery } from '../platform/paging.ts';
import { InvalidProblem, NotFoundProblem, type ProblemError } from '../platform/problem.ts';
import { settingsKey, type Settings } from '../platform/settings.ts';
import { inTransaction } from '../platform/transaction.ts';
import { revokeLinks } from './change-keeper.ts';
import type { LinkKind, NewLinkRequest } from './links.dto.ts';
import { findLink, listOpenLinks, revokeLink } from './links.queries.ts';
import type { LinkView, NewLinkView } from './links.view.ts';
import { hashOfSecret, randomSecret } from './secrets.ts';
import { findStandingKeeper } from './session.queries.ts';
import { say } from '../platform/say.ts';

/** How long a link can be used. */
const lasts: Readonly<Record<LinkKind, string>> = { invitation: '7 days', reset: '1 day' };

/** Links by which somebody joins the club, or sets a new passphrase. */
@Injectable()
export class LinksService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(settingsKey) private readonly settings: Pick<Settings, 'publicUrl'>,
  ) {}

  /** Makes a link; its secret is in the answer and stored nowhere. A reset ends those made before for the same keeper. 422. */
  async make(request: NewLinkRequest): Promise<NewLinkView> {
    refuseMisfit(request);
    const secret = randomSecret();
    const view = await inTransaction(this.dataSource, (manager) => writeLink(manager, request, secret));
    return { ...view, path: `${this.settings.publicUrl ?? ''}/join/${secret}` };
  }

  /** Links that can still be used, the newest first. */
  async list(query: PageQuery): Promise<Page<LinkView>> {
    return listOpenLinks(this.dataSource.manager, query);
  }

  /** Revokes a link. 404 where there is none that can still be used. */
  async revoke(id: string): Promise<LinkView> {
    return inTransaction(this.dataSource, async (manager) => {
      const link = await revokeLink(manager, id);
      if (!link) throw new NotFoundProblem(say`link that can still be used`, id);
      await tellOfLink(manager, 'link-revoked', link);
      return link;
    });
  }
}

/** An invitation is for nobody yet, a reset for somebody who keeps the roles. */
function refuseMisfit({ kind, keeperId, roles = [] }: NewLinkRequest): void {
  const errors: ProblemError[] = [];
  if (kind === 'reset' && !keeperId) errors.push({ pointer: '/keeperId', detail: say`Say whose passphrase it is.` });
  if (kind === 'reset' && roles.length > 0)
    errors.push({
      pointer: '/roles',
      detail: say`A link for a new passphrase gives no roles. Change the keeper instead.`,
    });
  if (kind === 'invitation' && keeperId)
    errors.push({ pointer: '/keeperId', detail: say`An invitation is for a new member. Leave the keeper out.` });
  if (errors.length > 0) throw new InvalidProblem(say`This link cannot be made so; see below.`, errors);
}

async function writeLink(manager: EntityManager, request: NewLinkRequest, secret: string): Promise<LinkView> {
  const { kind, keeperId = null, roles = [], note = null } = request;
  if (keeperId !== null) await endOlderResets(manager, keeperId);
  const id = newId();
  await manager.query(
    `insert into sign_in_link (id, kind, token_hash, keeper_id, roles, note, made_by, expires_at)
     values ($1, $2, $3, $4, $5, $6, $7, now() + $8::interval)`,
    [id, kind, hashOfSecret(secret), keeperId, roles, note, acting().id, lasts[kind]],
  );
  const link = await findLink(manager, id);
  if (!link) throw new Error('the link that was made is not there');
  await tellOfLink(manager, 'link-made', link);
  return link;
}

async function endOlderResets(manager: EntityManager, keeperId: string): Promise<void> {
  if (!(await findStandingKeeper(manager, keeperId))) {
    const detail = say`There is no member with this id. Who left the club is taken back in first.`;
    throw new InvalidProblem(detail, [{ pointer: '/keeperId', detail }]);
  }
  await revokeLinks(manager, `kind = 'reset' and keeper_id = $1`, keeperId);
}

async function tellOfLink(manager: EntityManager, action: 'link-made' | 'link-revoked', link: LinkView): Promise<void> {
  const form: KeptForm = {
    kind: link.kind,
    keeperId: link.keeper?.id ?? null,
    roles: [...link.roles].sort(),
    note: link.note,
    expiresAt: link.expiresAt.toISOString(),
  };
  await writeEntry(manager, {
    action,
    kind: 'link',
    recordId: link.id,
    ownerId: link.keeper?.id ?? null,
    before: action === 'link-made' ? null : form,
    after: action === 'link-made' ? form : null,
  });
}
