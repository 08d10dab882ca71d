import type { EntityManager } from 'typeorm';
import { writeEntry } from '../api/platform/journal-entry.ts';
import { formatRegistryNumber } from '../shared/registry-number.ts';
import { buildClub } from './engine/build-club.ts';
import { tables, type ClubRows, type Row } from './engine/rows.ts';
import { club } from './scenario/club.ts';

/**
 * Fills an empty register with the invented demo club: invented keepers, places, labels and animals, to look around in.
 * The caller opens the transaction. Rows are the same every time; registry numbers come from the register's own sequence.
 */
export async function seedDemo(manager: EntityManager): Promise<void> {
  const rows = buildClub(club);
  const numbers = await takeNumbers(manager, rows.individual.length);
  const numbered = withNumbers(rows, numbers);
  for (const table of tables) await insertRows(manager, table, numbered[table]);
  const counts = Object.fromEntries(tables.map((table) => [table, numbered[table].length]));
  await writeEntry(manager, { action: 'seeded', kind: 'club', recordId: null, before: null, after: counts });
}

/** Gives the animals their registry numbers, also where a confirmed warning speaks of them. */
function withNumbers(rows: ClubRows, numbers: readonly string[]): ClubRows {
  const numberOf = new Map(rows.individual.map((row, index) => [row['code'], numbers[index]]));
  const spoken = (code: string): string => formatRegistryNumber(numberOf.get(code) ?? code);
  return {
    ...rows,
    individual: rows.individual.map((row, index) => ({ ...row, number: numbers[index] ?? null })),
    confirmed_warning: rows.confirmed_warning.map((row) => ({
      ...row,
      detail: String(row['detail']).replace(/\b[A-Z]{2}-\d{2,3}\b/g, spoken),
    })),
  };
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
