import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { JournalEntry } from '../../../api/journal/journal-entry.entity.ts';
import { JournalSeal } from '../../../api/journal/journal-seal.entity.ts';
import { sealBatch } from '../../../api/journal/sealing.queries.ts';
import { verifyJournal, type Verification } from '../../../api/journal/verify-chain.ts';
import type { JournalHeadView } from '../../../api/journal/journal.view.ts';
import { writeEntry } from '../../../api/platform/journal-entry.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeEach(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterEach(() => api.close());

/** Looks through the journal on a connection of its own. */
async function verify(hash?: string): Promise<Verification> {
  const client = new pg.Client({ connectionString: api.databaseUrl });
  await client.connect();
  try {
    return await verifyJournal(client, hash);
  } finally {
    await client.end();
  }
}

async function head(): Promise<JournalHeadView> {
  return bodyOf<JournalHeadView>(await api.http.get('/api/v1/journal/head').expect(200));
}

/** Waits until every entry is sealed. */
async function sealed(): Promise<JournalHeadView> {
  for (let tries = 0; tries < 100; tries++) {
    const now = await head();
    if (now.unsealed === 0) return now;
    await wait(50);
  }
  throw new Error('the journal was not sealed within five seconds');
}

/** Entries as the service itself would write them, without a request. */
async function writeMany(count: number): Promise<void> {
  await api.dataSource.transaction(async (manager) => {
    for (let index = 0; index < count; index++)
      await writeEntry(manager, { action: 'seeded', kind: 'club', recordId: null, before: null, after: { index } });
  });
}

/** Does as the owner of the server what the triggers refuse. */
async function tamper(...statements: string[]): Promise<void> {
  await api.dataSource.query('alter table journal_entry disable trigger all');
  await api.dataSource.query('alter table journal_seal disable trigger all');
  for (const statement of statements) await api.dataSource.query(statement);
  await api.dataSource.query('alter table journal_entry enable trigger all');
  await api.dataSource.query('alter table journal_seal enable trigger all');
}

describe('the chain', () => {
  it('holds every entry within moments of its commit, whole', async () => {
    for (let index = 0; index < 5; index++) await make.species();
    const now = await sealed();
    expect(now).toMatchObject({
      sequence: 5,
      oldestUnsealedSeconds: 0,
      hash: expect.stringMatching(/^[0-9a-f]{64}$/) as string,
    });
    expect(await verify(now.hash)).toEqual({ sealed: 5, waiting: 0, head: now.hash, fault: null, placeOfHash: 5 });
  });

  it('begins at 32 zero bytes', async () => {
    expect(await head()).toMatchObject({ sequence: 0, hash: '0'.repeat(64), sealedAt: null, unsealed: 0 });
    expect(await verify()).toMatchObject({ sealed: 0, fault: null });
  });

  it('is never forked by two copies that seal at once while others write', async () => {
    const second = await startApiOn(api.databaseUrl);
    try {
      await Promise.all([
        writeMany(700),
        writeMany(700),
        ...Array.from({ length: 20 }, () => make.species()),
        ...Array.from({ length: 40 }, (_, index) =>
          new Factory(second.http).species({ scientificName: `Inventus secundus ${index}` }),
        ),
        ...Array.from({ length: 6 }, () => sealBatch(second.dataSource)),
        ...Array.from({ length: 6 }, () => sealBatch(api.dataSource)),
      ]);
      const now = await sealed();
      expect(now.sequence).toBe(1400 + 20 + 40);
      expect(await verify(now.hash)).toMatchObject({ sealed: 1460, waiting: 0, fault: null, placeOfHash: 1460 });
    } finally {
      await second.close();
    }
  });

  it('is whole after a stop, and what waited is sealed by the next start', async () => {
    const first = await startApiOn(api.databaseUrl);
    await writeMany(2500);
    await first.close();
    const { sealed: count, waiting, fault } = await verify();
    expect(fault).toBeNull();
    expect(count + waiting).toBe(2500);
    const next = await startApiOn(api.databaseUrl);
    expect((await sealed()).sequence).toBe(2500);
    await next.close();
    expect(await verify()).toMatchObject({ sealed: 2500, waiting: 0, fault: null });
  });

  it('is watched by two figures', async () => {
    await make.species();
    await sealed();
    const figures = (await api.stranger.get('/api/metrics')).text;
    expect(figures).toMatch(/^journal_oldest_unsealed_seconds 0$/m);
    expect(figures).toMatch(/^journal_entries_sealed_total 1$/m);
  });
});

describe('the database refuses', () => {
  it.each([
    ['to change an entry', `update journal_entry set reason = 'other'`],
    ['to change no entry', `update journal_entry set reason = 'other' where false`],
    ['to remove an entry', 'delete from journal_entry'],
    ['to empty the entries', 'truncate journal_entry cascade'],
    ['to change a seal', 'update journal_seal set sequence = 7'],
    ['to remove a seal', 'delete from journal_seal'],
    ['to empty the seals', 'truncate journal_seal'],
    [
      'to change an entry in the role of a replica',
      `set session_replication_role = replica; update journal_entry set reason = 'other'`,
    ],
  ])('the role of the service %s', async (_, statement) => {
    await make.species();
    await sealed();
    const runner = api.dataSource.createQueryRunner();
    try {
      await expect(runner.query(statement)).rejects.toThrow('the journal is never changed');
    } finally {
      await runner.query('set session_replication_role = origin');
      await runner.release();
    }
    expect(await verify()).toMatchObject({ sealed: 1, fault: null });
  });

  it('the entities of the service to change or remove an entry', async () => {
    await make.species();
    await sealed();
    const { manager } = api.dataSource;
    const entry = await manager.findOneByOrFail(JournalEntry, {});
    const seal = await manager.findOneByOrFail(JournalSeal, {});
    const refusal = 'the journal is never changed';
    await expect(manager.save(JournalEntry, { ...entry, reason: 'other' })).rejects.toThrow(refusal);
    await expect(manager.update(JournalEntry, { id: entry.id }, { reason: 'other' })).rejects.toThrow(refusal);
    await expect(manager.delete(JournalSeal, { sequence: seal.sequence })).rejects.toThrow(refusal);
    await expect(manager.remove(entry)).rejects.toThrow(refusal);
  });
});

describe('a journal that was tampered with behind the back of the service', () => {
  let kept: string;

  beforeEach(async () => {
    for (let index = 0; index < 6; index++) await make.species();
    kept = (await sealed()).hash;
  });

  it('is found where an entry was changed', async () => {
    const [row] = await api.dataSource.query<{ id: string }[]>(
      'select entry_id as id from journal_seal where sequence = 3',
    );
    await tamper(`update journal_entry set after = '{"commonName": "forged"}' where id = '${row?.id}'`);
    expect(await verify()).toMatchObject({
      sealed: 2,
      fault: { sequence: 3, entryId: row?.id, wrong: expect.stringContaining('changed afterwards') as string },
    });
  });

  it.each([
    ['who did it', `keeper_id = null`],
    ['when', `at = at - interval '1 millisecond'`],
    ['why', `reason = 'because'`],
    ['to which version', 'record_version = 7'],
    ['whom else it concerns', 'about_ids = array[id]'],
  ])('is found where %s was changed', async (_, change) => {
    await tamper(
      `update journal_entry set ${change} where id = (select entry_id from journal_seal where sequence = 6)`,
    );
    expect(await verify()).toMatchObject({ sealed: 5, fault: { sequence: 6 } });
  });

  it('is found where an entry and its seal were removed', async () => {
    await tamper(
      `with gone as (delete from journal_seal where sequence = 4 returning entry_id) delete from journal_entry where id in (select entry_id from gone)`,
    );
    expect(await verify()).toMatchObject({
      sealed: 3,
      fault: { sequence: 4, wrong: expect.stringContaining('the seal is gone') as string },
    });
  });

  it('is found where two entries changed places', async () => {
    await tamper(
      `create temporary table moved as select sequence, entry_id from journal_seal where sequence in (2, 3)`,
      'alter table journal_seal drop constraint journal_seal_once',
      `update journal_seal s set entry_id = m.entry_id from moved m where s.sequence + m.sequence = 5 and s.sequence in (2, 3)`,
    );
    expect(await verify()).toMatchObject({ sealed: 1, fault: { sequence: 2 } });
  });

  it('is found where an entry was sealed anew: the next one no longer follows', async () => {
    await tamper(`update journal_seal set hash = decode('${'ab'.repeat(32)}', 'hex') where sequence = 2`);
    expect((await verify()).fault).toMatchObject({ sequence: 2 });
  });

  it('is found where the newest seals were removed and their entries stayed', async () => {
    await tamper('delete from journal_seal where sequence > 4');
    expect(await verify()).toMatchObject({
      sealed: 4,
      fault: { sequence: null, wrong: expect.stringContaining('neither sealed nor waiting') as string },
    });
  });

  it('whose newest entries are gone without a trace is found by a hash that a member kept', async () => {
    await tamper(
      `with gone as (delete from journal_seal where sequence > 4 returning entry_id) delete from journal_entry where id in (select entry_id from gone)`,
    );
    expect(await verify()).toMatchObject({ sealed: 4, fault: null, placeOfHash: null });
    expect(await verify(kept)).toMatchObject({ sealed: 4, fault: null, placeOfHash: null });
  });

  it('knows a hash that was kept some entries ago', async () => {
    await make.species();
    await sealed();
    expect(await verify(kept)).toMatchObject({ sealed: 7, fault: null, placeOfHash: 6 });
  });
});
