import { createHash } from 'node:crypto';
import {
  Inject,
  Injectable,
  SetMetadata,
  type CallHandler,
  type ExecutionContext,
  type NestInterceptor,
} from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Request, Response } from 'express';
import { from, lastValueFrom, type Observable } from 'rxjs';
import { DataSource } from 'typeorm';
import { currentRequest } from './acting.ts';
import { ConflictProblem, InvalidProblem, StillAtWorkProblem } from './problem.ts';
import { keepAnswer, keyedRequest, shownOnceStatus, type KeyedRequest } from './transaction.ts';
import { say } from './say.ts';

/** A key that was claimed this long ago by a request that never ended (a crash) may be claimed again. */
const abandonedAfter = '2 minutes';
/** How long an answer is kept for a repeat. */
const keptFor = '7 days';

const unkeptKey = 'linekeeper:unkept';
const shownOnceKey = 'linekeeper:shown-once';

/** A route that takes a passphrase, or that answers a question by a stream: not even a hash of its requests is kept, and a key changes nothing. */
export const Unkept = (): MethodDecorator => SetMetadata(unkeptKey, true);

/** A route whose answer holds a secret: the answer is not kept, and a repeat is told that it was shown once. */
export const ShownOnce = (): MethodDecorator => SetMetadata(shownOnceKey, true);

interface StoredAnswer {
  readonly request_hash: string;
  readonly status: number | null;
  readonly body: unknown;
  readonly journal_entry_id: string | null;
}

/**
 * Answers a repeated POST or PATCH as the first time: the same Idempotency-Key with the same request gives the stored answer, with
 * another request 422. So a change whose answer was lost is not taken for one that another keeper made meanwhile. Keys belong to a keeper. Only what succeeded is kept, for seven days; a refused request may be sent again.
 */
@Injectable()
export class IdempotencyInterceptor implements NestInterceptor {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Reflector) private readonly reflector: Reflector,
  ) {}

  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    const http = context.switchToHttp();
    const request = http.getRequest<Request>();
    const key = request.headers['idempotency-key'];
    const keeper = currentRequest()?.viewer ?? null;
    const says = (what: string): boolean =>
      this.reflector.get<boolean | undefined>(what, context.getHandler()) ?? false;
    const isRepeatable = ['POST', 'PATCH'].includes(request.method);
    if (!isRepeatable || key === undefined || keeper === null || says(unkeptKey)) return next.handle();
    if (typeof key !== 'string' || !/^[\x21-\x7e]{1,200}$/.test(key)) {
      const detail = say`Idempotency-Key must have 1 to 200 printable characters without spaces.`;
      throw new InvalidProblem(detail, [{ pointer: '/Idempotency-Key', detail }]);
    }
    const response = http.getResponse<Response>();
    // the framework sets the status of success before it calls interceptors
    const keyed = {
      keeperId: keeper.id,
      key,
      status: response.statusCode,
      isShownOnce: says(shownOnceKey),
      isKept: false,
    };
    return from(this.once(keyed, hashOf(request), next, response));
  }

  private async once(keyed: KeyedRequest, hash: string, next: CallHandler, response: Response): Promise<unknown> {
    const stored = await this.claim(keyed, hash);
    if (stored) {
      response.status(stored.status ?? 201).setHeader('Idempotency-Replayed', 'true');
      const asked = currentRequest();
      if (asked && stored.journal_entry_id !== null) asked.journalEntryId = stored.journal_entry_id;
      return stored.body;
    }
    try {
      const answer: unknown = await keyedRequest.run(keyed, () => lastValueFrom(next.handle()));
      if (!keyed.isKept) await keepAnswer(this.dataSource.manager, keyed, answer);
      return answer;
    } catch (error) {
      await this.dataSource.query('delete from idempotency_key where keeper_id = $1 and key = $2 and status is null', [
        keyed.keeperId,
        keyed.key,
      ]);
      throw error;
    }
  }

  /** Takes the key for this request; gives the stored answer where it was used before. */
  private async claim({ keeperId, key }: KeyedRequest, hash: string): Promise<StoredAnswer | null> {
    const claimed = await this.dataSource.query<unknown[]>(
      `insert into idempotency_key as k (keeper_id, key, request_hash) values ($1, $2, $3)
       on conflict (keeper_id, key) do update set created_at = now()
         where k.status is null and k.request_hash = $3 and k.created_at < now() - interval '${abandonedAfter}'
       returning 1`,
      [keeperId, key, hash],
    );
    if (claimed.length > 0) {
      await this.forgetOld();
      return null;
    }
    const [stored] = await this.dataSource.query<StoredAnswer[]>(
      'select request_hash, status, body, journal_entry_id from idempotency_key where keeper_id = $1 and key = $2',
      [keeperId, key],
    );
    if (stored && stored.request_hash !== hash) {
      const detail = say`This Idempotency-Key was used for another request. Use a new key for a new request.`;
      throw new InvalidProblem(detail, [{ pointer: '/Idempotency-Key', detail }]);
    }
    if (stored?.status === shownOnceStatus)
      throw new ConflictProblem(
        say`This was done, and its answer held a secret that is shown once. Revoke what was made, and make another under a new key.`,
      );
    if (!stored || stored.status === null) throw new StillAtWorkProblem();
    return stored;
  }

  /** A few at a time, by idempotency_key_age; those that another request is about to forget are left to it. */
  private async forgetOld(): Promise<void> {
    await this.dataSource.query(
      `delete from idempotency_key where (keeper_id, key) in (
         select keeper_id, key from idempotency_key where created_at < now() - interval '${keptFor}'
         order by created_at limit 20 for update skip locked)`,
    );
  }
}

/** What makes two requests the same: the address and every byte of the body. */
function hashOf(request: Request & { file?: { buffer?: Buffer } }): string {
  const hash = createHash('sha256').update(request.originalUrl).update('\0');
  // the version that a change is based on is not part of it: a repeat of what was done is answered whatever came since
  if (request.method !== 'POST') hash.update(request.method).update('\0');
  const body: unknown = request.body;
  if (Buffer.isBuffer(body) || typeof body === 'string') hash.update(body);
  else hash.update(JSON.stringify(body ?? null));
  if (request.file?.buffer) hash.update(request.file.buffer);
  return hash.digest('hex');
}
