import type { Request } from 'express';
import type { EntityManager } from 'typeorm';
import type { Role } from '../../shared/vocabulary.ts';
import { SignInProblem, type Viewer } from '../platform/acting.ts';
import { hashOfSecret } from './secrets.ts';
import { keeperIdOfSession } from './sessions.ts';
import { say } from '../platform/say.ts';

interface KeeperRow {
  readonly id: string;
  readonly name: string;
  readonly roles: Role[];
}

/**
 * Who sends a request: the keeper of its bearer token, else of its session, else nobody. 401 where a token is given that is
 * unknown, revoked or expired: a program should hear that, not be taken for a stranger.
 */
export async function recogniseKeeper(manager: EntityManager, request: Request): Promise<Viewer> {
  const token = /^Bearer (\S+)$/i.exec(request.headers.authorization ?? '')?.[1];
  if (request.headers.authorization !== undefined) return keeperOfToken(manager, token ?? '');
  const keeperId = keeperIdOfSession(request);
  refuseOtherKeeper(request, keeperId);
  if (keeperId === null) return null;
  const [keeper] = await manager.query<KeeperRow[]>(
    'select id, name, roles from keeper where id = $1 and left_at is null',
    [keeperId],
  );
  return keeper ? { ...keeper, via: 'session', scope: 'write' } : null;
}

/**
 * A page says in whose name it asks. The cookie is the browser's, and another tab may have signed somebody else in meanwhile: 401, so that
 * nothing is written in the name of the one, nor shown to the other.
 */
function refuseOtherKeeper(request: Request, keeperId: string | null): void {
  const meant = request.headers['acting-keeper'];
  if (meant === undefined || meant === keeperId) return;
  throw new SignInProblem(
    say`This page belongs to a keeper who is not signed in here any more. Sign in again, or load the page anew.`,
  );
}

/** access_token_hash_unique. Last use is noted once a minute at most, so that reading does not become writing. */
async function keeperOfToken(manager: EntityManager, token: string): Promise<Viewer> {
  const [found] = await manager.query<(KeeperRow & { tokenId: string; scope: 'read' | 'write'; isNoted: boolean })[]>(
    `select k.id, k.name, k.roles, t.id as "tokenId", t.scope, coalesce(t.last_used_at > now() - interval '1 minute', false) as "isNoted"
     from access_token t join keeper k on k.id = t.keeper_id
     where t.token_hash = $1 and t.revoked_at is null and (t.expires_at is null or t.expires_at > now()) and k.left_at is null`,
    [hashOfSecret(token)],
  );
  if (!found)
    throw new SignInProblem(say`This token is unknown, revoked or expired. Make a new one under Club, My account.`);
  if (!found.isNoted)
    await manager.query('update access_token set last_used_at = now() where id = $1', [found.tokenId]);
  const { id, name, roles, scope } = found;
  return { id, name, roles, via: 'token', scope };
}
