import { randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { DataSource } from 'typeorm';
import { readWaiting } from '../../api/journal/sealing.queries.ts';
import { answering, type Acting } from '../../api/platform/acting.ts';
import { inTransaction } from '../../api/platform/transaction.ts';
import { Individual } from '../../api/register/individuals/individual.entity.ts';
import { findIndividual } from '../../api/register/individuals/individual.queries.ts';
import { noteChange } from '../../api/register/kept/note-change.ts';

/** One line of the bench table. */
export interface WriterRow {
  readonly what: string;
  readonly writers: number;
  readonly changesASecond: number;
  /** Times the rate without the journal. */
  readonly ratio: number;
  readonly medianMilliseconds: number;
  /** The most that an entry waited for its seal while the writers wrote, in seconds; sampled ten times a second. */
  readonly oldestUnsealedSeconds: number | string;
}

const writers = 16;
const rounds = 4;
const roundMs = 4_000;

/**
 * Measures sixteen writers at once, each changing animals of its own as the service does (lock, write, read the answer), with and
 * without entering it into the journal, in turns; the service's own sealer seals meanwhile. `dataSource` is that of a running service
 * whose register holds at least as many animals as there are writers.
 */
export async function benchWriters(dataSource: DataSource, keeper: Acting): Promise<WriterRow[]> {
  const ids = (await dataSource.query<{ id: string }[]>('select id from individual order by number limit 1600')).map(
    ({ id }) => id,
  );
  const plain: number[] = [];
  const journalled: number[] = [];
  let oldest = 0;
  await round(dataSource, keeper, ids, true, 500); // the first one compiles and fills caches
  for (let turn = 0; turn < rounds; turn++) {
    plain.push(...(await round(dataSource, keeper, ids, false, roundMs)));
    const [times, seconds] = await Promise.all([
      round(dataSource, keeper, ids, true, roundMs),
      watchAge(dataSource, roundMs),
    ]);
    journalled.push(...times);
    oldest = Math.max(oldest, seconds);
  }
  const row = (what: string, times: number[], oldestUnsealedSeconds: number | string): WriterRow => ({
    what,
    writers,
    changesASecond: times.length / ((rounds * roundMs) / 1000),
    ratio: times.length / plain.length,
    medianMilliseconds: times.sort((one, other) => one - other)[times.length >> 1] ?? NaN,
    oldestUnsealedSeconds,
  });
  return [row('without the journal', plain, ''), row('with the journal', journalled, oldest)];
}

/** Lets all writers write for a while; gives the milliseconds that each change took. */
async function round(
  dataSource: DataSource,
  keeper: Acting,
  ids: readonly string[],
  isJournalled: boolean,
  milliseconds: number,
): Promise<number[]> {
  const until = performance.now() + milliseconds;
  const times: number[] = [];
  const writer = async (number: number): Promise<void> => {
    for (let step = 0; performance.now() < until; step++) {
      const start = performance.now();
      const id = ids[(step * writers + number) % ids.length] ?? '';
      await answering({ requestId: randomUUID(), viewer: keeper }, () =>
        change(dataSource, id, `${number} ${step}`, isJournalled),
      );
      times.push(performance.now() - start);
    }
  };
  await Promise.all(Array.from({ length: writers }, (_, number) => writer(number)));
  return times;
}

async function change(dataSource: DataSource, id: string, notes: string, isJournalled: boolean): Promise<void> {
  await inTransaction(dataSource, async (manager) => {
    const { version } = await manager.findOneOrFail(Individual, { where: { id }, lock: { mode: 'pessimistic_write' } });
    if (isJournalled) await noteChange(manager, 'individual', id);
    await manager.update(Individual, { id, version }, { notes, updatedAt: new Date() });
    return findIndividual(manager, id);
  });
}

async function watchAge(dataSource: DataSource, milliseconds: number): Promise<number> {
  let oldest = 0;
  const until = performance.now() + milliseconds;
  while (performance.now() < until) {
    oldest = Math.max(oldest, (await readWaiting(dataSource.manager)).oldestSeconds);
    await wait(100);
  }
  return oldest;
}
