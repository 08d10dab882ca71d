import { Inject, Injectable, Logger } from '@nestjs/common';
import type { Request, Response } from 'express';
import { EventStreams } from './event-streams.ts';
import type { Progress } from './long-task.ts';
import { Problem } from './problem.ts';
import { asProblem, problemDocument } from './problem.filter.ts';
import { inReadersWords, say } from './say.ts';

/** Seconds that the work behind a stream may take: who watches its progress waits longer than a single answer may. */
const STREAM_SECONDS = 600;
/** Milliseconds between two words of a stream whose work has nothing to tell, so that proxies do not close the line. */
const SAY_AT_LEAST = 15_000;

/** Computes what a request asks for. Ends early, with whatever error, once `signal` is aborted. */
type Work = (signal: AbortSignal, tell?: (progress: Progress) => void) => Promise<object>;

/** In a stream: the work took longer than it may. */
class StreamTooSlowProblem extends Problem {
  constructor() {
    super(
      'too-slow',
      503,
      say`It took too long`,
      say`This was not done within ${STREAM_SECONDS} seconds and was given up; nothing was written. Ask for less.`,
    );
  }
}

/**
 * Answers with what takes long: by one JSON document, or, where `Accept: text/event-stream` asks for it, by a stream of `progress` events
 * that ends with one `result` or `problem` event. The work is ended as soon as nobody waits for it any more.
 */
@Injectable()
export class ProgressStream {
  private readonly log = new Logger('Stream');

  constructor(@Inject(EventStreams) private readonly streams: EventStreams) {}

  /**
   * Does the work and answers. For a stream it returns as soon as that is open; what can be refused at once is therefore to be refused
   * before, by a problem of its own status.
   *
   * @param keeperId whose stream it is
   * @throws whatever the work throws, where no stream is asked for; TooManyStreamsProblem
   */
  async answer(request: Request, response: Response, keeperId: string, work: Work): Promise<void> {
    response.vary('Accept');
    if (this.streams.isWanted(request)) {
      this.streams.open(response, keeperId);
      void this.#stream(request, response, work);
      return;
    }
    const leaving = whenClosed(response);
    try {
      response.json(inReadersWords(await work(leaving.signal)));
    } catch (error) {
      // nobody is there to be told, and nothing went wrong
      if (!leaving.signal.aborted) throw error;
    }
  }

  async #stream(request: Request, response: Response, work: Work): Promise<void> {
    const leaving = whenClosed(response);
    const limit = setTimeout(() => leaving.abort(new StreamTooSlowProblem()), STREAM_SECONDS * 1000);
    const silence = setInterval(() => send(response, ': still here\n\n'), SAY_AT_LEAST);
    try {
      const result = await work(leaving.signal, (progress) => sendEvent(response, 'progress', progress));
      sendEvent(response, 'result', result);
    } catch (error) {
      this.#tellProblem(request, response, leaving.signal.reason instanceof Problem ? leaving.signal.reason : error);
    } finally {
      clearTimeout(limit);
      clearInterval(silence);
      response.end();
    }
  }

  #tellProblem(request: Request, response: Response, error: unknown): void {
    if (isGone(response)) return;
    const problem = asProblem(error);
    if (problem.status === 500) this.log.error('A stream failed', error instanceof Error ? error.stack : String(error));
    sendEvent(response, 'problem', problemDocument(problem, request.originalUrl));
  }
}

/** Aborted when the answer is over or nobody waits for it. */
function whenClosed(response: Response): AbortController {
  const leaving = new AbortController();
  if (response.closed) leaving.abort();
  else response.once('close', () => leaving.abort());
  return leaving;
}

function isGone(response: Response): boolean {
  return response.writableEnded || response.destroyed;
}

function sendEvent(response: Response, name: string, data: object): void {
  // JSON holds no line breaks, so that one line is the whole of it
  send(response, `event: ${name}\ndata: ${JSON.stringify(inReadersWords(data))}\n\n`);
}

function send(response: Response, text: string): void {
  if (!isGone(response)) response.write(text);
}
