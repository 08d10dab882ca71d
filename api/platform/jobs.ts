import { Inject, Injectable, type BeforeApplicationShutdown } from '@nestjs/common';
import type pg from 'pg';
import PgBoss from 'pg-boss';
import { DataSource } from 'typeorm';
import { poolOf } from './data-source.ts';
import { jobsSchema } from './jobs-schema.ts';

/** Seconds that a copy of the service waits before it looks again whether another one left it something to do. */
const POLLING_SECONDS = 1;

/**
 * Work that goes on after the answer. Jobs stand in PostgreSQL: one that was sent is done by whichever copy of the service takes it
 * first, and is not lost when that copy dies.
 */
@Injectable()
export class Jobs implements BeforeApplicationShutdown {
  readonly #boss: PgBoss;
  #started: Promise<unknown> | null = null;
  #isStopping = false;

  constructor(@Inject(DataSource) dataSource: DataSource) {
    const pool = poolOf(dataSource);
    this.#boss = new PgBoss({
      schema: jobsSchema,
      schedule: false,
      deleteAfterHours: 1,
      archiveCompletedAfterSeconds: 60,
      db: { executeSql: (text, values) => this.#query(pool, text, values) },
    });
    // what fails while it polls is tried again by the next poll
    this.#boss.on('error', () => undefined);
  }

  /** Lets this copy of the service do the jobs of a queue, one at a time. What fails is tried again. */
  async work(queue: string, task: () => Promise<void>): Promise<void> {
    await (this.#started ??= this.#boss.start());
    await this.#boss.createQueue(queue, {
      name: queue,
      policy: 'short',
      retryLimit: 5,
      retryDelay: 2,
      retryBackoff: true,
    });
    await this.#boss.work(queue, { pollingIntervalSeconds: POLLING_SECONDS }, async () => {
      if (!this.#isStopping) await task();
    });
  }

  /** Asks for a job, if none waits already. Does nothing while the service stops. */
  async send(queue: string, afterSeconds = 0): Promise<void> {
    if (this.#isStopping || !this.#started) return;
    await this.#started;
    await this.#boss.send(queue, {}, { startAfter: afterSeconds });
  }

  /** A job that ends while the service stops may report after its connections are closed: it is then found unfinished and done again. */
  async #query(pool: pg.Pool, text: string, values: unknown[]): Promise<{ rows: unknown[] }> {
    try {
      return await pool.query(text, values);
    } catch (error) {
      if (this.#isStopping || pool.ending) return { rows: [{ count: '0' }] };
      throw error;
    }
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.#isStopping = true;
    if (!this.#started) return;
    await this.#started.catch(() => undefined);
    await this.#boss.stop({ graceful: true, timeout: 20_000, close: false, wait: true });
  }
}
