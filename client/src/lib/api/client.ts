import { takeEarly } from './asked-early.ts';
import { noAnswer, problemFrom, ProblemError } from './problem.ts';
import { language } from '../words/language.ts';
import type { Page } from './types.ts';

type Query = Record<string, string | number | boolean | null | undefined>;

interface Options {
  query?: Query;
  /** The version that a change is based on; left out, the one last read of that record. */
  version?: number;
  /** Repeats of one intended write share a key, so that a lost answer never writes twice. */
  idempotencyKey?: string;
  signal?: AbortSignal;
  /**
   * How long an answer is waited for, ms; then there is none. Left out: twenty seconds (three while nobody answers) for a read that nobody can give up by `signal`, else without
   * an end, since some work takes long.
   */
  patience?: number;
  /** In whose name it is sent, whoever is signed in by now. Nobody is asked to sign in again for it: the refusal is for whoever sends. */
  onlyAs?: string;
}

/** What a device does with answers: keeps some, and gives them while the service does not answer. */
export interface AnswerKeeper {
  /** Whether no answer came the last time. */
  readonly isOff: boolean;
  /** A request was answered, or no answer came. */
  reached(isAnswered: boolean): void;
  /** Something is read; what is given back keeps the answer. */
  watch(address: string): (text: string) => void;
  /** What was answered last at an address, JSON; null where nothing is kept of it. */
  find(address: string): Promise<string | null>;
}

/**
 * A thin client of the service. Reads remember the ETag of each record and changes send it as If-Match; each POST carries an
 * Idempotency-Key. Every refusal, and every lack of an answer, is thrown as a `ProblemError`.
 */
export class ApiClient {
  readonly #base: string;
  readonly #etags = new Map<string, string>();
  readonly #entries = new WeakMap<object, string>();
  /**
   * Asked when a session has ended in the midst of work (401). It gives true once the same keeper is signed in again: the request is
   * then sent once more, as it was, so that nothing typed is lost.
   */
  signInAgain: (() => Promise<boolean>) | null = null;
  /** Hears every answer, whoever asked, and whether it tells of a change. */
  heard: ((answer: unknown, isChange: boolean) => void) | null = null;
  /** In whose name is asked: another tab may have signed somebody else in, and then the service refuses (401). */
  keeperId: string | null = null;
  /** What this device keeps of answers; null: nothing. */
  device: AnswerKeeper | null = null;

  constructor(base = '/api/v1') {
    this.#base = base;
  }

  /** Reads a record or a list. */
  async get<T>(path: string, options: Options = {}): Promise<T> {
    try {
      return await this.#send<T>('GET', path, undefined, options);
    } catch (error) {
      if (!(error instanceof ProblemError) || error.status !== 0) throw error;
      const text = await this.device?.find(path + queryText(options.query));
      if (text === null || text === undefined) throw error;
      const answer = JSON.parse(text) as T;
      if (hasVersion(answer)) this.#remember(path, `"${answer.version}"`, answer);
      return answer;
    }
  }

  /** Reads a list to its end, page after page; at most `most` items, so that nothing endless is held on a phone. */
  async all<T>(path: string, query: Query = {}, most = 5000): Promise<T[]> {
    const items: T[] = [];
    for (let after: string | null | undefined; after !== null && items.length < most;) {
      const page: Page<T> = await this.get<Page<T>>(path, { query: { ...query, limit: 200, after } });
      items.push(...page.items);
      after = page.next;
    }
    return items;
  }

  /** Asks for a figure by POST: writes nothing, so it needs no key. */
  ask<T>(path: string, body: unknown, options: Options = {}): Promise<T> {
    return this.#send<T>('POST', path, body, options);
  }

  /** Writes something new. */
  post<T>(path: string, body: unknown, options: Options = {}): Promise<T> {
    return this.#send<T>('POST', path, body, { ...options, idempotencyKey: options.idempotencyKey ?? newKey() });
  }

  /** Changes the named fields of a record, if it is still at the version that was read. */
  patch<T>(path: string, body: unknown, options: Options = {}): Promise<T> {
    return this.#send<T>('PATCH', path, body, options);
  }

  /** Replaces what stands at a path. */
  put<T>(path: string, body: unknown, options: Options = {}): Promise<T> {
    return this.#send<T>('PUT', path, body, options);
  }

  /** Takes something back (a withdrawal, a confirmation). */
  delete<T>(path: string, options: Options = {}): Promise<T> {
    return this.#send<T>('DELETE', path, undefined, options);
  }

  /** The journal's entry of the change that gave this answer; undoing it takes the change back. */
  entryOf(answer: unknown): string | undefined {
    return typeof answer === 'object' && answer !== null ? this.#entries.get(answer) : undefined;
  }

  /** Forgets the versions that were read: another keeper may see other ones. */
  forget(): void {
    this.#etags.clear();
  }

  async #send<T>(method: string, path: string, body: unknown, options: Options): Promise<T> {
    const headers = new Headers({ Accept: 'application/json', 'Accept-Language': language });
    // of a form the browser says the type itself, with the edge between its parts
    const isForm = body instanceof FormData;
    if (body !== undefined && !isForm) headers.set('Content-Type', 'application/json');
    if (options.idempotencyKey) headers.set('Idempotency-Key', options.idempotencyKey);
    const keeperId = options.onlyAs ?? this.keeperId;
    if (keeperId !== null && !saysWhoAsks(path)) headers.set('Acting-Keeper', keeperId);
    const match = method === 'GET' ? undefined : this.#match(path, options.version);
    if (match) headers.set('If-Match', match);
    const request: RequestInit = {
      method,
      headers,
      // A record can change without a new version of its own, as a clutch does when young are raised from it.
      cache: 'no-store',
      ...(body === undefined ? {} : { body: isForm ? body : JSON.stringify(body) }),
    };
    const patience = options.patience ?? (method === 'GET' && !options.signal ? this.#readsWait : null);
    const address = path + queryText(options.query);
    const keep = method === 'GET' ? this.device?.watch(address) : undefined;
    let { response, text } = await this.#answerTo(address, request, patience, options.signal);
    if (response.status === 401 && !saysWhoAsks(path) && !options.onlyAs && (await this.signInAgain?.()))
      ({ response, text } = await this.#answerTo(address, request, patience, options.signal));
    if (!response.ok) throw problemFrom(response.status, text);
    keep?.(text);
    return this.#take<T>(path, response, text);
  }

  /** Fetches, and reads the answer to its end; lacking one in time, or one of ours, there is no answer (status 0). */
  async #answerTo(
    address: string,
    request: RequestInit,
    patience: number | null,
    signal: AbortSignal | undefined,
  ): Promise<{ response: Response; text: string }> {
    const waited = patience === null ? null : waitingFor(patience, signal);
    const until = waited?.signal ?? signal;
    try {
      const early = request.method === 'GET' ? takeEarly(address, this.keeperId) : undefined;
      const response = await (early
        ? unless(until, early)
        : fetch(this.#base + address, until ? { ...request, signal: until } : request));
      const text = await response.text();
      // a page that some network puts before every address says yes to anything
      if (response.ok && text !== '' && !isJson(response)) throw noAnswer();
      this.device?.reached(true);
      return { response, text };
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') throw error;
      this.device?.reached(false);
      throw noAnswer();
    } finally {
      waited?.end();
    }
  }

  /** A service that is there answers long before; where it did not a moment ago, what the device has is not held back for it. */
  get #readsWait(): number {
    return this.device?.isOff ? 3_000 : 20_000;
  }

  #take<T>(path: string, response: Response, text: string): T {
    const entry = response.headers.get('Journal-Entry');
    // A change that answers nothing still has its entry.
    const answer = (text === '' ? (entry ? {} : undefined) : JSON.parse(text)) as T;
    if (entry && typeof answer === 'object' && answer !== null) this.#entries.set(answer, entry);
    this.#remember(path, response.headers.get('ETag'), answer);
    this.heard?.(answer, entry !== null);
    return answer;
  }

  /** The record that a path speaks of is the path itself or the nearest one above it (`/clutches/1/withdrawal`). */
  #match(path: string, version: number | undefined): string | undefined {
    if (version !== undefined) return `"${version}"`;
    for (let record = path; record !== ''; record = record.slice(0, record.lastIndexOf('/'))) {
      const etag = this.#etags.get(record);
      if (etag) return etag;
    }
    return undefined;
  }

  #remember(path: string, etag: string | null, answer: unknown): void {
    if (!etag) return;
    const id = typeof answer === 'object' && answer !== null && 'id' in answer ? String(answer.id) : '';
    const at = id === '' ? -1 : path.lastIndexOf(`/${id}`);
    // An answer from below a record (`/clutches/1/withdrawal`) is still that record; a new record stands below its list.
    const record = id === '' ? path : at >= 0 ? path.slice(0, at + id.length + 1) : `${path}/${id}`;
    this.#etags.set(record, etag);
  }
}

/** The client that the screens share. */
export const api = new ApiClient();

/** A fresh key for one intended write. */
export function newKey(): string {
  // randomUUID needs a secure context; a club may serve its own network over plain http.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** An answer that is on its way already, unless it is given up before it comes. */
const unless = (signal: AbortSignal | undefined, answer: Promise<Response>): Promise<Response> =>
  signal
    ? Promise.race([
        answer,
        new Promise<never>((_, reject) =>
          signal.addEventListener('abort', () => reject(signal.reason as DOMException)),
        ),
      ])
    : answer;

/** A signal that goes off with another one, or after so many milliseconds; `end` lets go of both. */
function waitingFor(patience: number, other?: AbortSignal): { signal: AbortSignal; end: () => void } {
  const both = new AbortController();
  const giveUp = (): void => both.abort(other?.reason);
  if (other?.aborted) giveUp();
  other?.addEventListener('abort', giveUp);
  const clock = setTimeout(() => both.abort(new DOMException('No answer came in time.', 'TimeoutError')), patience);
  return {
    signal: both.signal,
    end: () => {
      clearTimeout(clock);
      other?.removeEventListener('abort', giveUp);
    },
  };
}

/** Requests by which one signs in: that they are refused says that the words were wrong, not that a session ended. */
const saysWhoAsks = (path: string): boolean => /^\/(session|setup|links\/[^/]+\/use)/.test(path);

const isJson = (response: Response): boolean => /[/+]json\b/.test(response.headers.get('Content-Type') ?? '');

const hasVersion = (answer: unknown): answer is { version: number } =>
  typeof answer === 'object' && answer !== null && 'version' in answer && typeof answer.version === 'number';

function queryText(query: Query | undefined): string {
  const parts = new URLSearchParams();
  for (const [name, value] of Object.entries(query ?? {}))
    if (value !== undefined && value !== null && value !== '') parts.set(name, String(value));
  const text = parts.toString();
  return text === '' ? '' : `?${text}`;
}
