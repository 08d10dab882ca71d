import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { acting } from '../platform/acting.ts';
import { isId, newId } from '../platform/ids.ts';
import { writeEntry, type KeptForm } from '../platform/journal-entry.ts';
import { decodeCursor, encodeCursor, toPage, type Page, type PageQuery } from '../platform/paging.ts';
import { ConflictProblem, InvalidProblem, NotFoundProblem } from '../platform/problem.ts';
import { inTransaction } from '../platform/transaction.ts';
import type { NewTokenRequest } from './account.dto.ts';
import type { NewTokenView, TokenView } from './account.view.ts';
import { ForbiddenProblem } from './permissions.ts';
import { hashOfSecret, randomSecret, tokenPrefix } from './secrets.ts';
import { say } from '../platform/say.ts';

const mostTokens = 50;

const columns = `id, name, scope, created_at as "createdAt", expires_at as "expiresAt", last_used_at as "lastUsedAt"`;
/** Index: access_token_keeper_index. One that ran out stays in the list until it is revoked, so that one sees why a program stopped. */
const own = 'keeper_id = $1 and revoked_at is null';

/** Tokens by which programs act in a keeper's name. */
@Injectable()
export class TokensService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * Makes a token; its secret is in the answer and stored nowhere. 403 for a program: one that leaked must not make others. 409 where
   * there are fifty already, 422 where it would have ended before it began.
   */
  async make({ name, scope, expiresAt = null }: NewTokenRequest): Promise<NewTokenView> {
    const { id: keeperId, via } = acting();
    if (via !== 'session') throw new ForbiddenProblem(say`A token cannot make tokens. Sign in with your passphrase.`);
    if (expiresAt !== null && Date.parse(expiresAt) <= Date.now()) {
      const detail = say`A token ends in the future. Give a later instant, or leave it out.`;
      throw new InvalidProblem(detail, [{ pointer: '/expiresAt', detail }]);
    }
    const secret = tokenPrefix + randomSecret();
    const view = await inTransaction(this.dataSource, async (manager) => {
      await requireRoom(manager, keeperId);
      const id = newId();
      await manager.query(
        'insert into access_token (id, keeper_id, name, scope, token_hash, expires_at) values ($1, $2, $3, $4, $5, $6)',
        [id, keeperId, name, scope, hashOfSecret(secret), expiresAt],
      );
      const made = await findToken(manager, keeperId, id);
      await tellOfToken(manager, 'token-made', made);
      return made;
    });
    return { ...view, token: secret };
  }

  /** The tokens of the keeper who acts that were not revoked, the newest first. */
  async list(query: PageQuery): Promise<Page<TokenView>> {
    const after = query.after === undefined ? null : decodeCursor('id', 1, query.after);
    const rows = await this.dataSource.query<TokenView[]>(
      `select ${columns} from access_token where ${own} and ($2::text is null or id < $2::uuid) order by id desc limit $3`,
      [acting().id, after?.[0] ?? null, query.limit + 1],
    );
    return toPage(
      rows,
      query.limit,
      (row) => row,
      (row) => encodeCursor('id', [row.id]),
      query.total ? await countTokens(this.dataSource.manager, acting().id) : undefined,
    );
  }

  /** Revokes a token of the keeper who acts; whatever program uses it stops at once. 404. */
  async revoke(id: string): Promise<TokenView> {
    return inTransaction(this.dataSource, async (manager) => {
      const token = await findToken(manager, acting().id, id);
      await manager.query('update access_token set revoked_at = now() where id = $1', [token.id]);
      await tellOfToken(manager, 'token-revoked', token);
      return token;
    });
  }
}

async function findToken(manager: EntityManager, keeperId: string, id: string): Promise<TokenView> {
  const [found] = isId(id)
    ? await manager.query<TokenView[]>(`select ${columns} from access_token where ${own} and id = $2 for update`, [
        keeperId,
        id,
      ])
    : [];
  if (!found) throw new NotFoundProblem(say`token of yours`, id);
  return found;
}

async function countTokens(manager: EntityManager, keeperId: string): Promise<number> {
  const [row] = await manager.query<{ total: number }[]>(
    `select count(*)::integer as total from access_token where ${own}`,
    [keeperId],
  );
  return row?.total ?? 0;
}

async function requireRoom(manager: EntityManager, keeperId: string): Promise<void> {
  if ((await countTokens(manager, keeperId)) >= mostTokens)
    throw new ConflictProblem(say`You have ${mostTokens} tokens. Revoke those that no program uses any more.`);
}

async function tellOfToken(
  manager: EntityManager,
  action: 'token-made' | 'token-revoked',
  token: TokenView,
): Promise<void> {
  const form: KeptForm = {
    name: token.name,
    scope: token.scope,
    expiresAt: token.expiresAt?.toISOString() ?? null,
  };
  await writeEntry(manager, {
    action,
    kind: 'token',
    recordId: token.id,
    ownerId: acting().id,
    before: action === 'token-made' ? null : form,
    after: action === 'token-made' ? form : null,
  });
}
