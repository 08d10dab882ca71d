import type { EntityManager } from 'typeorm';
import { buildClub } from './engine/build-club.ts';
import { tables, type Row } from './engine/rows.ts';
import { club } from './scenario/club.ts';

/**
 * Fills an empty register with the invented demo club: invented keepers, places, labels and animals, to look around in.
 * The caller opens the transaction. Rows are the same every time; registry numbers come from the register's own sequence.
 */
export async function seedDemo(manager: EntityManager): Promise<void> {
  const rows = buildClub(club);
  const numbers = await takeNumbers(manager, rows.individual.length);
  const numbered = rows.individual.map((row, index) => ({ ...row, number: numbers[index] ?? null }));
  for (const table of tables) await insertRows(manager, table, table === 'individual' ? numbered : rows[table]);
}

/** The next registry numbers, in order. */
async function takeNumbers(manager: EntityManager, count: number): Promise<string[]> {
  const taken = await manager.query<{ number: string }[]>(
    `select nextval('registry_serial')::text as number from generate_series(1, $1)`,
    [count],
  );
  return taken.map((row) => row.number);
}

/** Writes rows in one statement, as the rules on parents ask; columns that no row names keep their defaults. */
async function insertRows(manager: EntityManager, table: string, rows: readonly Row[]): Promise<void> {
  if (rows.length === 0) return;
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))].map((column) => `"${column}"`).join(', ');
  // the row type is asked of the table, since one of them shares its name with a geometric type of PostgreSQL
  const rowType = `(select each from "${table}" each where false)`;
  await manager.query(
    `insert into "${table}" (${columns}) select ${columns} from jsonb_populate_recordset(${rowType}, $1::jsonb)`,
    [JSON.stringify(rows)],
  );
}
