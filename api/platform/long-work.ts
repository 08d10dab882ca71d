import { availableParallelism } from 'node:os';
import { MessageChannel, receiveMessageOnPort, type MessagePort } from 'node:worker_threads';
import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { Piscina } from 'piscina';
import type { LongTaskMessage, LongTaskModule, Progress } from './long-task.ts';
import { Problem } from './problem.ts';

/** How many questions may wait for a thread before the next one is told to come again. */
export const WAITING_MOST = 16;

/** 503: more long questions wait than the service takes. */
export class BusyProblem extends Problem {
  override readonly headers = { 'Retry-After': '10' };

  constructor() {
    super(
      'busy',
      503,
      'Too many long computations',
      `${WAITING_MOST} long computations wait already. Nothing was begun; ask again in a moment.`,
    );
  }
}

/** 503: the service stops, and with it what it was computing. */
class StoppingProblem extends Problem {
  override readonly headers = { 'Retry-After': '10' };

  constructor() {
    super(
      'unavailable',
      503,
      'Not now',
      'The service is stopping; the computation was given up. Ask again in a moment.',
    );
  }
}

/** Whose turn a task takes: what keeps the figures current never waits behind what somebody asked. */
export type Lane = 'questions' | 'upkeep';

interface Run {
  readonly lane?: Lane;
  /** Ends the task, even in the middle of a loop, and takes it out of the queue. */
  readonly signal?: AbortSignal;
  readonly tell?: (progress: Progress) => void;
}

/**
 * Runs long computations in threads, so that none of them delays another request. Typed arrays over shared memory go to a
 * thread without being copied; everything else is.
 */
@Injectable()
export class LongWork implements OnModuleDestroy {
  readonly #lanes: Readonly<Record<Lane, Piscina>> = {
    // one core stays free for answering; one thread is always there, since what waits behind a question that is given up is taken
    // only by a thread that is there or one that the next question starts
    questions: threads(1, Math.max(1, availableParallelism() - 1), WAITING_MOST),
    upkeep: threads(0, 1, Infinity),
  };
  #isStopping = false;

  /**
   * Runs one task and gives its result.
   *
   * @throws BusyProblem if too many questions wait; StoppingProblem; an AbortError once `signal` has ended the task
   */
  async run<Input, Result>(
    { filename }: LongTaskModule<Input, Result>,
    input: Input,
    { lane = 'questions', signal, tell }: Run = {},
  ): Promise<Result> {
    const pool = this.#lanes[lane];
    if (pool.queueSize >= pool.options.maxQueue) throw new BusyProblem();
    const channel = tell ? new MessageChannel() : null;
    if (tell) channel?.port1.on('message', tell);
    try {
      const message: LongTaskMessage<Input> = { input, port: channel?.port2 ?? null };
      const result = (await pool.run(message, {
        filename,
        ...(signal ? { signal } : {}),
        ...(channel ? { transferList: [channel.port2] } : {}),
      })) as Result;
      if (channel && tell) tellRest(channel.port1, tell);
      return result;
    } catch (error) {
      throw this.#isStopping ? new StoppingProblem() : error;
    } finally {
      channel?.port1.close();
    }
  }

  async onModuleDestroy(): Promise<void> {
    this.#isStopping = true;
    await Promise.all(Object.values(this.#lanes).map((pool) => pool.destroy()));
  }
}

function threads(minThreads: number, maxThreads: number, maxQueue: number): Piscina {
  return new Piscina({ minThreads, maxThreads, maxQueue, idleTimeout: 30_000 });
}

/** What was told just before the end would come after it otherwise. */
function tellRest(port: MessagePort, tell: (progress: Progress) => void): void {
  for (let left = receiveMessageOnPort(port); left; left = receiveMessageOnPort(port)) tell(left.message as Progress);
}
