import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import type pg from 'pg';
import { DataSource } from 'typeorm';
import type { PostgresDataSourceOptions } from 'typeorm/driver/postgres/PostgresDataSourceOptions.js';
import { poolOf } from '../platform/data-source.ts';
import { LongWork } from '../platform/long-work.ts';
import { settingsKey, type Settings } from '../platform/settings.ts';
import { founderKinds, LineageMemory } from './lineage-memory.ts';
import { LineageSnapshot } from './lineage-snapshot.ts';
import { readLineage, type LineageReading } from './read-lineage.ts';
import { countIndividuals, readChanges, readRevision, type Revision } from './register-rows.queries.ts';
import { readLineageTask } from './tasks/read-lineage.task.ts';
import { recomputeTask } from './tasks/recompute.task.ts';

/** Noted changes beyond which reading everything costs less than following them. */
const FOLLOWED_MOST = 5000;
/** Animals up to which a register is read at once (about 60 ms); a larger one is read in a thread. */
const READ_AT_ONCE = 20_000;

/**
 * Keeps the newest snapshot of the lineage at hand. It is a copy, never the truth: every request first asks the database for
 * its revision, and a snapshot of another revision is not used. Several copies of the service therefore agree.
 *
 * A snapshot that is behind is led on by the noted changes; only where these are too many, or do not lead there, is the register
 * read whole.
 */
@Injectable()
export class Snapshots implements OnApplicationShutdown {
  #newest: LineageSnapshot | null = null;
  #memory: LineageMemory | null = null;
  #reading: Promise<LineageSnapshot> | null = null;
  #recomputing: Promise<void> | null = null;
  #places = new Int32Array(0);
  readonly #stopped = new AbortController();

  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(LongWork) private readonly longWork: LongWork,
    @Inject(settingsKey) private readonly settings: Settings,
  ) {}

  /**
   * The lineage as of this moment: never older than the register was when it was called. Follows what changed since; requests that
   * come meanwhile share the reading, unless it began before what they must see.
   */
  async current(): Promise<LineageSnapshot> {
    const heldBefore = this.#newest;
    const wanted = await readRevision(this.dataSource.manager);
    const held = this.#newest;
    if (held && isSame(held.revision, wanted)) return held;
    // Taken while this request waited for its revision: newer than it asks for. One held before must be the very same, since
    // a backup that was put in place may have taken the register back to a lower number.
    if (held && held !== heldBefore && held.revision.number > wanted.number) return held;
    const shared = await this.#reading?.catch(() => null);
    if (shared && shared.revision.number >= wanted.number) return shared;
    return (this.#reading ??= this.#read());
  }

  /** Resolves once no figure is being recomputed any more. */
  async settled(): Promise<void> {
    while (this.#recomputing) await this.#recomputing;
  }

  onApplicationShutdown(): void {
    this.#stopped.abort();
  }

  async #read(): Promise<LineageSnapshot> {
    try {
      const revision = (await this.#follow()) ?? (await this.#readWhole());
      this.#publish(revision);
      this.#recomputeStale();
      return this.#newest as LineageSnapshot; // published right above
    } catch (error) {
      // half led on: no state that the register was ever in
      this.#memory = null;
      throw error;
    } finally {
      this.#reading = null;
    }
  }

  #publish(revision: Revision): void {
    const state = this.#memory?.show();
    if (!state) return;
    const clutches = state.knowledge.stale.length;
    if (this.#places.length < clutches) this.#places = new Int32Array(Math.ceil(1.25 * clutches) + 64).fill(-1);
    this.#newest = new LineageSnapshot(revision, state, this.#places, this.settings.figuresMemory);
  }

  /** Leads the memory on by what changed; null where that cannot be done. */
  async #follow(): Promise<Revision | null> {
    const memory = this.#memory;
    const held = this.#newest?.revision;
    if (!memory || !held) return null;
    return this.#inOneState(async (client) => {
      const { revision, changes } = await readChanges(client, held.number, FOLLOWED_MOST);
      if (revision.number <= held.number || revision.pruned > held.number) return null;
      if (changes.length > FOLLOWED_MOST || changes.some(({ kind }) => kind === 'everything')) return null;
      await memory.advance(client, changes);
      return revision;
    });
  }

  async #readWhole(): Promise<Revision> {
    const options = { frontierBytes: this.settings.figuresMemory };
    const count = await countIndividuals(this.dataSource.manager);
    const reading: LineageReading =
      count <= READ_AT_ONCE
        ? await this.#inOneState((client) => readLineage(client, options))
        : await this.longWork.run(
            readLineageTask,
            { ...options, databaseUrl: (this.dataSource.options as PostgresDataSourceOptions).url ?? '' },
            { lane: 'upkeep', signal: this.#stopped.signal },
          );
    this.#memory = new LineageMemory(reading.parts);
    return reading.revision;
  }

  async #inOneState<Result>(work: (client: pg.ClientBase) => Promise<Result>): Promise<Result> {
    const client = await poolOf(this.dataSource).connect();
    try {
      await client.query('begin isolation level repeatable read read only');
      const result = await work(client);
      await client.query('commit');
      client.release();
      return result;
    } catch (error) {
      // with its transaction, whatever state that is in
      client.release(true);
      throw error;
    }
  }

  /** Computes in a thread what was too much for a request, until nothing is stale. */
  #recomputeStale(): void {
    this.#recomputing ??= this.#recomputeInThread().finally(() => (this.#recomputing = null));
  }

  async #recomputeInThread(): Promise<void> {
    for (;;) {
      // a reading under way leaves the memory between two states
      await this.#quiet();
      const memory = this.#memory;
      if (!memory || this.#stopped.signal.aborted) return;
      const clutches = memory.stale();
      if (clutches.length === 0) return;
      const { graph, order, knowledge } = memory.show();
      const input = {
        pedigree: graph.pedigree,
        order,
        founders: founderKinds(graph.sources),
        knowledge,
        clutches,
        frontierBytes: this.settings.figuresMemory,
      };
      try {
        const recomputed = await this.longWork.run(recomputeTask, input, {
          lane: 'upkeep',
          signal: this.#stopped.signal,
        });
        await this.#quiet();
        if (memory !== this.#memory || !this.#newest) continue;
        memory.take(clutches, recomputed);
        this.#publish(this.#newest.revision);
      } catch {
        // the next reading begins from nothing, and so do the figures
        this.#memory = null;
        this.#newest = null;
        return;
      }
    }
  }

  /** Waits until the register is not being read. */
  async #quiet(): Promise<void> {
    for (let reading = this.#reading; reading; reading = this.#reading) await reading.catch(() => null);
  }
}

function isSame(one: Revision, other: Revision): boolean {
  return one.number === other.number && one.changedAt === other.changedAt;
}
