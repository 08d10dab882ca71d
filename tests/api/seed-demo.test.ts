import { DataSource } from 'typeorm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { prepareRegister } from '../../api/people/first-start.ts';
import { dataSourceOptions } from '../../api/platform/data-source.ts';
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

  it('says that it is invented, and that Orla Venndrick keeps the register', async () => {
    const clubs = await demo.dataSource.query<unknown[]>(
      'select c.name, c.demo, k.name as keeper from club c join keeper k on k.id = c.default_keeper_id',
    );
    expect(clubs).toEqual([
      { name: 'Mirewell Amphibian Circle (invented demo club)', demo: true, keeper: 'Orla Venndrick' },
    ]);
  });
});
