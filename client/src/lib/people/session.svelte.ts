import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import { device } from '../offline/device.svelte.ts';
import type { KeeperWithRoles, SessionAnswer } from './people-types.ts';
import { Permissions, type Action } from './permissions.ts';

/** Who is signed in, in which club, and what they may do. Read once when the client starts, and again where it may have changed. */
export class Session {
  state = $state<'unknown' | SessionAnswer['state']>('unknown');
  club = $state.raw<SessionAnswer['club']>(null);
  keeper = $state.raw<KeeperWithRoles | null>(null);
  demoKeepers = $state.raw<KeeperWithRoles[]>([]);
  /** Most bytes of a PDF, and of a picture, that are sent; null while nobody knows. */
  fileLimits = $state.raw<NonNullable<SessionAnswer['fileLimits']> | null>(null);
  /** Where members reach the register, for what is printed: what was set, else what stands in the browser. */
  address = $state(typeof location === 'undefined' ? '' : location.origin);
  /** Why nobody knows who is signed in: the service does not answer. */
  problem = $state('');
  /** The session ended in the midst of work, and the same keeper is asked to sign in over the page. */
  isEnded = $state(false);
  /** Nobody answered yet: that they are signed in is remembered from the last time. */
  isRemembered = $state(false);
  #permissions = $state.raw(new Permissions([]));
  #started: Promise<void> | null = null;
  #ended: Promise<boolean> | null = null;
  #settle: (isSignedIn: boolean) => void = () => undefined;

  /** Reads who is signed in, once; a start that found no service is tried again the next time. */
  async start(): Promise<void> {
    this.#started ??= this.read();
    await this.#started;
    if (this.state === 'unknown' || this.isRemembered) this.#started = null;
  }

  /** Asks who is signed in. Lacking an answer, it is whoever was signed in here before. */
  async read(): Promise<void> {
    try {
      await this.#enter(await api.get<SessionAnswer>('/session', { patience: 10_000 }));
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      await this.#recall(error);
    }
  }

  /**
   * Asks whether the keeper of this page is signed in still. Where the session has ended, the device forgets what they saw, but the page stays
   * theirs, so that they can sign in again over what they wrote; gives false then.
   */
  async isStillIn(): Promise<boolean> {
    try {
      const answer = await api.get<SessionAnswer>('/session');
      if (this.keeper && !answer.keeper) {
        await device.signedIn(null, answer);
        return false;
      }
      await this.#enter(answer);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
    }
    return true;
  }

  async #recall(problem: ProblemError): Promise<void> {
    if (problem.status === 0 && this.state === 'signed-in') return;
    const answer = problem.status === 0 ? ((await device.remembered()) as SessionAnswer | null) : null;
    if (answer) this.#take(answer);
    else this.problem = problem.detail;
    this.isRemembered = answer !== null;
  }

  /** Signs in with name and passphrase. Throws `ProblemError`. */
  async signIn(name: string, password: string): Promise<void> {
    await this.#enter(await api.ask<SessionAnswer>('/session', { name, password }));
  }

  /** Looks around as one of the invented keepers. Throws `ProblemError`. */
  async signInAsDemo(keeperId: string): Promise<void> {
    await this.#enter(await api.ask<SessionAnswer>('/session/demo', { keeperId }));
  }

  /** Names the club and its first administrator with the code from the terminal. Throws `ProblemError`. */
  async setUp(body: { code: string; clubName: string; name: string; password: string }): Promise<void> {
    await this.#enter(await api.ask<SessionAnswer>('/setup', body));
  }

  /** Uses an invitation or a link for a new passphrase. Throws `ProblemError`. */
  async useLink(secret: string, body: { name?: string; password: string }): Promise<void> {
    await this.#enter(await api.ask<SessionAnswer>(`/links/${encodeURIComponent(secret)}/use`, body));
  }

  /** Signs out here, or on every device. Throws `ProblemError`. */
  async signOut(everywhere = false): Promise<void> {
    await this.#enter(await api.delete<SessionAnswer>(everywhere ? '/sessions' : '/session'));
  }

  /** Whether to offer something: to records of a kind at all, or to one record in particular. */
  may(action: Action, kind: string, record?: { readonly keeperId?: string | null | undefined }): boolean {
    return this.#permissions.may(action, kind, record);
  }

  /** Whether nothing of the register is open to whoever asks. */
  get isClosed(): boolean {
    return this.state === 'setup' || (this.state === 'signed-out' && !this.may('read', 'individual'));
  }

  /** Where an address leads instead, for whoever asks now; null where it may be opened. */
  detour(url: URL): string | null {
    const path = url.pathname;
    if (this.state === 'setup') return path === '/setup' ? null : '/setup';
    if (this.state === 'signed-out') {
      if (path === '/sign-in' || path.startsWith('/join/')) return null;
      return this.isClosed || path === '/setup' ? signInAddress(url) : null;
    }
    if (this.state === 'signed-in') {
      if (path === '/sign-in') return wantedOf(url);
      if (path === '/setup') return '/register';
    }
    return null;
  }

  /** Asks the same keeper to sign in again over the page; true once that is done. Requests that end together ask once. */
  readonly askAgain = (): Promise<boolean> => {
    if (this.state !== 'signed-in') return Promise.resolve(false);
    this.#ended ??= new Promise<boolean>((resolve) => {
      this.#settle = resolve;
      this.isEnded = true;
    });
    return this.#ended;
  };

  /** The keeper signed in again, or would rather not; whatever waited goes on or is refused. */
  settleAgain(isSignedIn: boolean): void {
    this.isEnded = false;
    this.#ended = null;
    this.#settle(isSignedIn);
  }

  async #enter(answer: SessionAnswer): Promise<void> {
    // What was read may have been another keeper's view of the same records.
    if (answer.keeper?.id !== this.keeper?.id) api.forget();
    await device.signedIn(answer.keeper?.id ?? null, answer);
    this.#take(answer);
    this.isRemembered = false;
  }

  #take(answer: SessionAnswer): void {
    this.state = answer.state;
    this.club = answer.club;
    this.keeper = answer.keeper;
    api.keeperId = answer.keeper?.id ?? null;
    this.demoKeepers = answer.demoKeepers ?? [];
    this.fileLimits = answer.fileLimits ?? null;
    this.address = answer.address ?? location.origin;
    this.#permissions = new Permissions(answer.permissions);
  }
}

/** The session that the screens share. */
export const session = new Session();

/** The sign-in page, keeping the address that was wanted. */
function signInAddress(url: URL): string {
  const wanted = url.pathname + url.search;
  return wanted === '/' || wanted === '/register' ? '/sign-in' : `/sign-in?to=${encodeURIComponent(wanted)}`;
}

/** The address that was wanted before signing in; nothing but a page of this client. */
export function wantedOf(url: URL): string {
  const wanted = url.searchParams.get('to') ?? '';
  return /^\/(?![/\\])/.test(wanted) && !wanted.startsWith('/sign-in') ? wanted : '/';
}
