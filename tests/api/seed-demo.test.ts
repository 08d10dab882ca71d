import { DataSource } from 'typeorm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareRegister } from '../../api/people/first-start.ts';
import { answering, type Acting } from '../../api/platform/acting.ts';
import { dataSourceOptions } from '../../api/platform/data-source.ts';
import { readClutchWarnings, readIndividualWarnings } from '../../api/register/warnings/warning.queries.ts';
import { tables } from '../../seed-demo/engine/rows.ts';
import { seedDemo } from '../../seed-demo/seed-demo.ts';
import { createDatabase, type TestDatabase } from '../support/database.ts';

/** A register of its own, filled with the demo club as on the first start. */
async function openDemo(): Promise<{ database: TestDatabase; dataSource: DataSource; seconds: number }> {
  const database = await createDatabase();
  const dataSource = new DataSource(dataSourceOptions(database.url, []));
  await dataSource.initialize();
  const start = performance.now();
  await prepareRegister(dataSource, seedDemo);
  return { database, dataSource, seconds: (performance.now() - start) / 1000 };
}

/** All rows of all tables, but for the moment at which they were written. */
async function readAll(dataSource: DataSource): Promise<Record<string, unknown[]>> {
  const all: Record<string, unknown[]> = {};
  for (const table of tables) {
    const rows = await dataSource.query<{ row: unknown }[]>(
      `select to_jsonb(t) - 'created_at' - 'updated_at' as row from ${table} t order by (to_jsonb(t) - 'created_at' - 'updated_at')::text`,
    );
    all[table] = rows.map(({ row }) => row);
  }
  return all;
}

interface Found {
  readonly record: string;
  readonly code: string;
  readonly reason: string | null;
}

/** All warnings of all animals and clutches, with the reason where a keeper confirmed it, as a registrar reads them. */
async function warningsOf(dataSource: DataSource): Promise<Found[]> {
  const [keeper] = await dataSource.query<Pick<Acting, 'id' | 'name'>[]>('select id, name from keeper limit 1');
  if (!keeper) throw new Error('the demo club has no keepers');
  const viewer: Acting = { ...keeper, roles: ['registrar'], via: 'session', scope: 'read' };
  return answering({ requestId: 'test', viewer }, () => findWarnings(dataSource));
}

async function findWarnings({ manager }: DataSource): Promise<Found[]> {
  const animals = await manager.query<{ id: string; name: string }[]>('select id, code as name from individual');
  const clutches = await manager.query<{ id: string; name: string }[]>(
    `select id, 'clutch ' || left(code, 2) || ' of ' || laid as name from clutch`,
  );
  const found: Found[] = [];
  for (const [records, read] of [
    [animals, readIndividualWarnings],
    [clutches, readClutchWarnings],
  ] as const)
    for (const { id, name } of records)
      for (const { code, confirmed } of await read(manager, id))
        found.push({ record: name, code, reason: confirmed?.reason ?? null });
  return found;
}

describe('the demo club in the database', () => {
  let demo: Awaited<ReturnType<typeof openDemo>>;

  beforeAll(async () => {
    demo = await openDemo();
  });
  afterAll(async () => {
    await demo.dataSource.destroy();
    await demo.database.drop();
  });

  it('is taken by every rule of the schema, quickly', async () => {
    const [count] = await demo.dataSource.query<{ animals: number; lines: number; species: number }[]>(
      `select (select count(*) from individual)::int animals, (select count(*) from line)::int lines, (select count(*) from species)::int species`,
    );
    expect(count).toMatchObject({ lines: 9, species: 3 });
    expect(count?.animals).toBeGreaterThan(380);
    expect(demo.seconds).toBeLessThan(5);
  });

  it('is written once: a second start leaves it alone', async () => {
    const before = await readAll(demo.dataSource);
    await prepareRegister(demo.dataSource, seedDemo);
    expect(await readAll(demo.dataSource)).toEqual(before);
  });

  it('is the same in every register, registry numbers included', async () => {
    const other = await openDemo();
    try {
      expect(await readAll(other.dataSource)).toEqual(await readAll(demo.dataSource));
    } finally {
      await other.dataSource.destroy();
      await other.database.drop();
    }
  });

  it('numbers the animals from the register sequence without a gap, and goes on after them', async () => {
    const [row] = await demo.dataSource.query<Record<'first' | 'last' | 'count' | 'serial', number>[]>(
      `select min(number)::int first, max(number)::int last, count(*)::int count, (select last_value from registry_serial)::int serial from individual`,
    );
    expect(row?.first).toBe(1001);
    expect(row?.last).toBe(1000 + (row?.count ?? 0));
    expect(row?.serial).toBe(row?.last);
  });

  it('gives each clutch the tier above its highest parent and each young the tier above its clutch', async () => {
    const wrong = await demo.dataSource.query<unknown[]>(`
      select c.code from clutch c
        left join (
          select clutch_id, individual_tier as tier from clutch_candidate
          union all select clutch_id, greatest(a_tier, b_tier) from clutch_pair) p on p.clutch_id = c.id
        group by c.id having c.tier <> 1 + coalesce(max(p.tier), 0)
      union all select i.code from individual i where i.tier <> coalesce(i.clutch_tier + 1, 0)`);
    expect(wrong).toEqual([]);
  });

  it('makes the register warn of what is told, and of nothing else', async () => {
    const warnings = await warningsOf(demo.dataSource);
    // some day the living of today will have outlived their kind: that depends on the calendar, not on what is told
    const told = warnings.filter(({ code }) => code !== 'cross' && code !== 'beyond-lifespan');
    expect(told.map(({ record, code, reason }) => [record, code, reason === null]).sort()).toEqual([
      ['GT-31', 'hatching-interval', true],
      ['GT-32', 'hatching-interval', true],
      ['clutch GT of 2018-02-11', 'young-dam', true],
      ['clutch ZV of 2014-05-04', 'young-dam', false],
    ]);
    // the cross that no keeper noticed, and the honest one
    const crossed = warnings.filter(({ code }) => code === 'cross').map(({ record }) => record);
    expect(new Set(crossed.map((record) => record.replace(/^clutch /, '').slice(0, 2)))).toEqual(new Set(['ZV', 'ZX']));
    expect(crossed).toContain('ZV-59');
  });

  it('says that it is invented, and that Orla Venndrick keeps the register', async () => {
    const clubs = await demo.dataSource.query<unknown[]>(
      `select c.name, c.demo, k.name as keeper from club c, keeper k where 'administrator' = any(k.roles)`,
    );
    expect(clubs).toEqual([
      { name: 'Mirewell Amphibian Circle (invented demo club)', demo: true, keeper: 'Orla Venndrick' },
    ]);
  });
});
