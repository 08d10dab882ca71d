import type { CookieOptions, NextFunction, Request, RequestHandler, Response } from 'express';
import session from 'express-session';
import type { DataSource, EntityManager } from 'typeorm';
import { hashOfSecret, randomSecret } from './secrets.ts';
import { storedId, type SessionStore } from './session-store.ts';

declare module 'express-session' {
  interface SessionData {
    /** Who is signed in. */
    keeperId: string;
    /** When, in milliseconds since 1970: what the absolute expiry counts from. */
    signedInAt: number;
  }
}

/** Where the handler of sessions leaves the way to make the browser forget its cookie. */
const forgetKey = 'forgetSession';

const day = 24 * 60 * 60 * 1000;
/** A session that nobody uses for so long ends. */
const idleFor = 7 * day;
/** A session ends so long after its sign-in, however much it is used. */
const longest = 30 * day;

/** How sessions are kept. */
export interface SessionSettings {
  /** Signs the cookies; null: the register keeps one of its own. */
  readonly sessionSecret: string | null;
  /** The address under which members reach the service; the cookie of an https address is for https only. */
  readonly publicUrl: string | null;
}

/**
 * The handler that finds the session of a request by its cookie. A stranger gets no session and no cookie. The cookie's name holds a
 * mark of the register, since a browser sends the cookies of one machine to every port of it.
 */
export async function sessionsOf(
  dataSource: DataSource,
  store: SessionStore,
  settings: SessionSettings,
): Promise<RequestHandler> {
  const secret = settings.sessionSecret ?? (await ownSecret(dataSource));
  const isSecure = settings.publicUrl?.startsWith('https:') ?? false;
  const mark = hashOfSecret(`cookie name ${secret}`).toString('hex').slice(0, 8);
  const cookie: CookieOptions = { path: '/', httpOnly: true, sameSite: 'lax', secure: isSecure, maxAge: idleFor };
  const name = `${isSecure ? '__Host-' : ''}linekeeper-${mark}`;
  const find = session({
    name,
    secret,
    store,
    cookie,
    resave: false,
    saveUninitialized: false,
    rolling: true,
  });
  return (request: Request, response: Response, next: NextFunction) => {
    // the public address says that the way here is https; a proxy that forgets to say so must not cost the cookie its mark
    if (isSecure) Object.defineProperty(request, 'secure', { value: true });
    response.locals[forgetKey] = () => response.clearCookie(name, cookie);
    find(request, response, next);
  };
}

/** The secret that the register keeps for the cookies, made by the first who asks. */
async function ownSecret(dataSource: DataSource): Promise<string> {
  await dataSource.query(
    `insert into service_secret (name, value) values ('session', $1) on conflict (name) do nothing`,
    [randomSecret()],
  );
  const [row] = await dataSource.query<{ value: string }[]>(`select value from service_secret where name = 'session'`);
  if (!row) throw new Error('the register lost the secret of its sessions');
  return row.value;
}

/** Whose session came with a request; null where there is none, or where it is too old. */
export function keeperIdOfSession(request: Request): string | null {
  // health and metrics are asked without the handler of sessions
  const found = request.session as Request['session'] | undefined;
  if (found?.keeperId === undefined || found.signedInAt === undefined) return null;
  return found.signedInAt + longest > Date.now() ? found.keeperId : null;
}

/** Begins a session for a keeper, under a new id: one that was known before the sign-in is worth nothing. */
export async function beginSession(request: Request, keeperId: string): Promise<void> {
  await called((done) => request.session.regenerate(done));
  request.session.keeperId = keeperId;
  request.session.signedInAt = Date.now();
  await called((done) => request.session.save(done));
}

/** Ends the session of a request, here and in the browser. */
export async function endSession(request: Request, response: Response): Promise<void> {
  await called((done) => request.session.destroy(done));
  (response.locals as Record<string, (() => void) | undefined>)[forgetKey]?.();
}

/** Ends every session of a keeper, but for the one of the request that is spared. */
export async function endSessionsOf(manager: EntityManager, keeperId: string, spared?: Request): Promise<void> {
  await manager.query(`delete from session where sess->>'keeperId' = $1 and sid is distinct from $2`, [
    keeperId,
    spared?.sessionID === undefined ? null : storedId(spared.sessionID),
  ]);
}

/** Waits for a function of the older kind, which calls back. */
function called(work: (done: (error?: unknown) => void) => unknown): Promise<void> {
  return new Promise((resolve, reject) => {
    work((error) => {
      if (error === undefined || error === null) resolve();
      else reject(error instanceof Error ? error : new Error('a session could not be written', { cause: error }));
    });
  });
}
