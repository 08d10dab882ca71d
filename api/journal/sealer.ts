import {
  Inject,
  Injectable,
  Logger,
  type BeforeApplicationShutdown,
  type OnApplicationBootstrap,
} from '@nestjs/common';
import { Counter, Gauge } from 'prom-client';
import { DataSource } from 'typeorm';
import { Metrics } from '../platform/metrics.ts';
import { onCommit } from '../platform/transaction.ts';
import { batchSize, readWaiting, sealBatch } from './sealing.queries.ts';

/** How long after a commit sealing begins, so that entries written together are sealed together. */
const nudgeAfterMs = 40;
/** How often is looked for entries of which nobody told: of other copies of the service, of a crash. */
const pollAfterMs = 3_000;
/** When to look again where another copy is sealing: it may have looked before the last commit here. */
const againAfterMs = 250;

/**
 * Seals the entries of the journal shortly after they were committed. Every copy of the service has a sealer; a lock of the database
 * lets one of them work at a time. What was not sealed when a service died waits in the database for the next one.
 */
@Injectable()
export class Sealer implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private readonly log = new Logger('Sealer');
  private readonly sealed: Counter;
  private timer: NodeJS.Timeout | null = null;
  private dueAt = 0;
  private work: Promise<void> | null = null;
  private isNudged = false;
  private isStopped = true;
  private ignoreCommits: () => void = () => undefined;

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Metrics) metrics: Metrics,
  ) {
    this.sealed = new Counter({
      name: 'journal_entries_sealed_total',
      help: 'Entries of the journal that this copy of the service sealed.',
      registers: [metrics.registry],
    });
    const age = new Gauge({
      name: 'journal_oldest_unsealed_seconds',
      help: 'Age of the oldest entry of the journal that waits for its seal; 0 where none does.',
      registers: [metrics.registry],
      // figures about the process must be had while the database is away
      collect: async () => {
        const waiting = await readWaiting(dataSource.manager).catch(() => null);
        age.set(waiting?.oldestSeconds ?? NaN);
      },
    });
  }

  onApplicationBootstrap(): void {
    this.isStopped = false;
    this.ignoreCommits = onCommit(this.dataSource, () => this.nudge());
    this.plan(nudgeAfterMs);
  }

  /** Waits for the batch that is being sealed. */
  async beforeApplicationShutdown(): Promise<void> {
    this.isStopped = true;
    this.ignoreCommits();
    if (this.timer) clearTimeout(this.timer);
    await this.work;
  }

  private nudge(): void {
    // the batch under way may have been read before this commit
    if (this.work) this.isNudged = true;
    else this.plan(nudgeAfterMs);
  }

  private plan(afterMs: number): void {
    const dueAt = Date.now() + afterMs;
    if (this.isStopped || (this.timer && this.dueAt <= dueAt)) return;
    if (this.timer) clearTimeout(this.timer);
    this.dueAt = dueAt;
    this.timer = setTimeout(() => this.begin(), afterMs);
    this.timer.unref();
  }

  private begin(): void {
    this.timer = null;
    this.isNudged = false;
    this.work = this.sealWaiting()
      .catch((error: unknown) => {
        this.log.error('The journal could not be sealed; it is tried again.', error);
        return pollAfterMs;
      })
      .then((afterMs) => {
        this.work = null;
        this.plan(this.isNudged ? nudgeAfterMs : afterMs);
      });
  }

  /** Seals batch after batch until none waits or another copy is at it; gives when to look again. */
  private async sealWaiting(): Promise<number> {
    for (;;) {
      const count = await sealBatch(this.dataSource);
      if (count === null) return againAfterMs;
      this.sealed.inc(count);
      if (count < batchSize || this.isStopped) return pollAfterMs;
    }
  }
}
