import { Injectable, type BeforeApplicationShutdown } from '@nestjs/common';
import type { Request, Response } from 'express';
import { Problem } from './problem.ts';
import { say } from './say.ts';

/** Streams that one keeper may hold open: some tabs and a phone. */
const OF_ONE_MOST = 8;
/** Streams that one copy of the service holds open. */
const ALL_MOST = 400;
/** Milliseconds between two looks at what is told. */
const LOOK_EVERY = 1000;
/** Looks after which something is sent even if nothing changed, so that proxies do not close the line: 20 seconds. */
const SAY_AT_LEAST = 20;

/** 429: more streams are open than may be. */
class TooManyStreamsProblem extends Problem {
  override readonly headers = { 'Retry-After': '30' };

  constructor() {
    super(
      'too-many-streams',
      429,
      say`Too many open streams`,
      say`You may hold ${OF_ONE_MOST} event streams open at once. Close one, or ask without a stream.`,
    );
  }
}

/** Lines that stay open and tell what changes (server-sent events), ended when their reader leaves or the service stops. */
@Injectable()
export class EventStreams implements BeforeApplicationShutdown {
  readonly #open = new Map<Response, string>();
  #isStopping = false;

  /** Whether a request asks for a stream instead of one answer. */
  isWanted(request: Request): boolean {
    return request.accepts(['application/json', 'text/event-stream']) === 'text/event-stream';
  }

  /**
   * Sends what `look` gives, as events of one name, now and whenever it has changed. Returns at once.
   *
   * @param keeperId whose stream it is
   * @throws TooManyStreamsProblem where one keeper, or all together, hold too many
   */
  send(response: Response, keeperId: string, event: string, look: () => Promise<object>): void {
    this.open(response, keeperId);
    let last = '';
    let silence = 0;
    let isLooking = false;
    const tell = async (): Promise<void> => {
      // a database that takes long must not be asked by every look at once
      if (isLooking) return;
      isLooking = true;
      const now = JSON.stringify(await look().catch(() => null));
      isLooking = false;
      if (response.writableEnded || now === 'null') return;
      if (now === last && ++silence < SAY_AT_LEAST) return;
      silence = 0;
      response.write(now === last ? ': still here\n\n' : `event: ${event}\ndata: ${now}\n\n`);
      last = now;
    };
    void tell();
    const timer = setInterval(() => void tell(), LOOK_EVERY);
    response.once('close', () => clearInterval(timer));
  }

  /**
   * Begins an answer that stays open: sends its head, counts it, and ends it when the service stops. Whoever opens it writes and ends it.
   *
   * @throws TooManyStreamsProblem where one keeper, or all together, hold too many
   */
  open(response: Response, keeperId: string): void {
    const ofOne = [...this.#open.values()].filter((other) => other === keeperId).length;
    if (this.#isStopping || ofOne >= OF_ONE_MOST || this.#open.size >= ALL_MOST) throw new TooManyStreamsProblem();
    this.#open.set(response, keeperId);
    response.once('close', () => this.#open.delete(response));
    response.status(200).set({
      'Content-Type': 'text/event-stream; charset=utf-8',
      'Cache-Control': 'no-store, no-transform',
      'X-Accel-Buffering': 'no',
      // its end ends the connection: kept open for a next request it would hold up a stop
      Connection: 'close',
    });
    response.flushHeaders();
  }

  beforeApplicationShutdown(): void {
    this.#isStopping = true;
    for (const response of this.#open.keys()) response.end();
  }
}
