import { Logger, type OnModuleDestroy } from '@nestjs/common';
import connectPgSimple from 'connect-pg-simple';
import session, { type SessionData } from 'express-session';
import type { Pool } from 'pg';
import { hashOfSecret } from './secrets.ts';

const PgStore = connectPgSimple(session);

/** What is stored of a session's id, so that whoever reads the table cannot act as somebody. */
export const storedId = (sid: string): string => hashOfSecret(sid).toString('base64url');

/** Sessions in the table session, each under the hash of its id. */
export class SessionStore extends PgStore implements OnModuleDestroy {
  readonly #pool: Pool;

  constructor(pool: Pool) {
    const log = new Logger('Sessions');
    super({
      pool,
      createTableIfMissing: false,
      errorLog: (...words: unknown[]) => {
        log.error(words.map(String).join(' '));
      },
    });
    this.#pool = pool;
  }

  override get(sid: string, callback: (error: unknown, session?: SessionData | null) => void): void {
    super.get(storedId(sid), callback);
  }

  override set(sid: string, data: SessionData, callback?: (error?: unknown) => void): void {
    super.set(storedId(sid), data, callback);
  }

  override destroy(sid: string, callback?: (error?: unknown) => void): void {
    super.destroy(storedId(sid), callback);
  }

  /** Puts the idle expiry off, once an hour at most, so that reading does not become writing. */
  override touch(sid: string, data: SessionData, callback?: () => void): void {
    const seconds = (Date.now() + (data.cookie.originalMaxAge ?? 0)) / 1000;
    this.#pool
      .query(
        `update session set expire = to_timestamp($1) where sid = $2 and expire < to_timestamp($1) - interval '1 hour'`,
        [Math.ceil(seconds), storedId(sid)],
      )
      // a session whose use was not noted ends a little earlier; the request itself went well
      .then(
        () => callback?.(),
        () => callback?.(),
      );
  }

  /** Stops the clearing away of old sessions, which would ask a database that is closed. */
  onModuleDestroy(): void {
    this.close();
  }
}
