import type { EntityManager } from 'typeorm';
import { formatRegistryNumber, parseRegistryNumber } from '../../shared/registry-number.ts';
import { seen } from '../people/visibility.ts';
import type { Sex } from '../../shared/vocabulary.ts';
import { readRanges } from '../register/warnings/facts.queries.ts';
import type { KnownAnimal, KnownClutch, KnownName, RegisterKnowledge } from './knowledge.ts';
import { sameKey } from './knowledge.ts';
import { namesIn } from './parent-cell.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import type { SheetTable } from './sheet-table.ts';

/** Reads what the registry of a keeper knows that bears on a sheet: some queries, whatever the size of the registry. */
export async function readKnowledge(
  manager: EntityManager,
  keeperId: string,
  table: SheetTable,
): Promise<RegisterKnowledge> {
  const codes = distinct(table, ['code']);
  const parents = parentNames(table, new Set([...codes].map(sameKey)));
  const byCode = await readByCode(manager, keeperId, [...codes, ...parents]);
  const byNumber = await readByNumber(
    manager,
    [...parents].filter((name) => !byCode.has(sameKey(name))),
  );
  const clutches = await readClutches(manager, keeperId, [...distinct(table, ['clutch'])]);
  const sources = await readSources(manager, keeperId, [...distinct(table, ['source'])]);
  const { species, lines } = await readNames(manager);
  const ranges = await readRanges(
    manager,
    [...species.values()].map(({ id }) => id),
  );
  return {
    animal: (name) => byCode.get(sameKey(name)) ?? byNumber.get(parseRegistryNumber(name) ?? 0),
    animalWithCode: (code) => byCode.get(sameKey(code)),
    clutch: (code) => clutches.get(sameKey(code)),
    source: (code) => sources.get(sameKey(code)),
    species: (name) => species.get(sameKey(name)),
    ranges: (speciesId) => ranges.get(speciesId) ?? {},
    line: (speciesId, name) => lines.get(`${speciesId} ${sameKey(name)}`),
  };
}

function distinct(table: SheetTable, columns: readonly SheetColumn[]): Set<string> {
  const seen = new Set<number>([0]);
  const texts = new Set<string>();
  for (const column of columns)
    for (let animal = 0; animal < table.length; animal++) {
      const number = table.textNumber(column, animal);
      if (seen.has(number)) continue;
      seen.add(number);
      texts.add(table.text(column, animal));
    }
  return texts;
}

/** What the cells of parents may name beyond the animals of the sheet. Longer names are nobody's code. */
function parentNames(table: SheetTable, ownKeys: ReadonlySet<string>): Set<string> {
  const names = new Set<string>();
  for (const cell of distinct(table, ['sire', 'dam', 'parents'])) {
    if (ownKeys.has(sameKey(cell))) continue;
    for (const name of namesIn(cell)) if (name.length <= 40 && !ownKeys.has(sameKey(name))) names.add(name);
  }
  return names;
}

interface AnimalRow {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly sex: Sex;
  readonly species: string;
  readonly speciesId: string;
  readonly line: string | null;
  readonly lineId: string | null;
  readonly tier: number;
  readonly hatched_earliest: string | null;
  readonly hatched_latest: string | null;
  readonly died_earliest: string | null;
  readonly died_latest: string | null;
}

const animalColumns = `i.id, i.number, i.code, i.sex, s.scientific_name as species, s.id as "speciesId", l.name as line, l.id as "lineId",
  i.tier, i.hatched_earliest::text, i.hatched_latest::text, i.died_earliest::text, i.died_latest::text`;

const animalTables = 'individual i join species s on s.id = i.species_id left join line l on l.id = i.line_id';

/** Codes as one array, not as a table to join: it is probed or hashed, where a join without statistics compares all with all. */
async function readByCode(
  manager: EntityManager,
  keeperId: string,
  codes: readonly string[],
): Promise<Map<string, KnownAnimal>> {
  if (codes.length === 0) return new Map();
  const rows = await manager.query<AnimalRow[]>(
    `select ${animalColumns} from ${animalTables}
     where i.keeper_id = $1 and i.withdrawn_at is null and lower(i.code) = any($2::text[])`,
    [keeperId, codes.map(sameKey)],
  );
  return new Map(rows.map((row) => [sameKey(row.code ?? ''), knownAnimal(row)]));
}

/** Standing animals by their ids (primary key), as far as whoever asks may see them. */
export async function readKnownAnimals(
  manager: EntityManager,
  ids: readonly string[],
): Promise<Map<string, KnownAnimal>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<AnimalRow[]>(
    `select ${animalColumns} from ${animalTables} where i.id = any($1::uuid[]) and i.withdrawn_at is null and ${seen('individual', 'i')}`,
    [ids],
  );
  return new Map(rows.map((row) => [row.id, knownAnimal(row)]));
}

async function readByNumber(manager: EntityManager, names: readonly string[]): Promise<Map<number, KnownAnimal>> {
  const numbers = names.map(parseRegistryNumber).filter((number) => number !== null);
  if (numbers.length === 0) return new Map();
  const rows = await manager.query<AnimalRow[]>(
    `select ${animalColumns} from ${animalTables} where i.number = any($1::bigint[]) and i.withdrawn_at is null and ${seen('individual', 'i')}`,
    [numbers],
  );
  return new Map(rows.map((row) => [Number(row.number), knownAnimal(row)]));
}

function knownAnimal({ hatched_earliest, hatched_latest, died_earliest, died_latest, ...row }: AnimalRow): KnownAnimal {
  return {
    ...row,
    number: formatRegistryNumber(row.number),
    hatched: boundsOf(hatched_earliest, hatched_latest),
    died: boundsOf(died_earliest, died_latest),
  };
}

const boundsOf = (earliest: string | null, latest: string | null): KnownAnimal['hatched'] =>
  earliest === null || latest === null
    ? null
    : { earliest: earliest === '-infinity' ? null : earliest, latest: latest === 'infinity' ? null : latest };

interface ClutchRow {
  readonly id: string;
  readonly code: string;
  readonly tier: number;
  readonly laid_earliest: string | null;
  readonly laid_latest: string | null;
  readonly species: string[];
}

const clutchesWhere = (condition: string): string => `
  select c.id, c.code, c.tier, c.laid_earliest::text, c.laid_latest::text, array(
    select distinct s.scientific_name from individual i join species s on s.id = i.species_id
    where ${seen('individual', 'i')} and (i.clutch_id = c.id or i.id in (
      select individual_id from clutch_candidate where clutch_id = c.id
      union all select a_id from clutch_pair where clutch_id = c.id union all select b_id from clutch_pair where clutch_id = c.id))
  ) as species
  from clutch c where c.withdrawn_at is null and ${condition}`;

const knownClutch = ({ id, tier, laid_earliest, laid_latest, species }: ClutchRow): KnownClutch => ({
  id,
  tier,
  laid: boundsOf(laid_earliest, laid_latest),
  species: species.length === 1 ? (species[0] ?? null) : null,
});

async function readClutches(
  manager: EntityManager,
  keeperId: string,
  codes: readonly string[],
): Promise<Map<string, KnownClutch>> {
  if (codes.length === 0) return new Map();
  const rows = await manager.query<ClutchRow[]>(clutchesWhere('c.keeper_id = $1 and lower(c.code) = any($2::text[])'), [
    keeperId,
    codes.map(sameKey),
  ]);
  return new Map(rows.map((row) => [sameKey(row.code), knownClutch(row)]));
}

/** Standing clutches by their ids (primary key). */
export async function readKnownClutches(
  manager: EntityManager,
  ids: readonly string[],
): Promise<Map<string, KnownClutch>> {
  if (ids.length === 0) return new Map();
  const rows = await manager.query<ClutchRow[]>(clutchesWhere('c.id = any($1::uuid[])'), [ids]);
  return new Map(rows.map((row) => [row.id, knownClutch(row)]));
}

async function readSources(
  manager: EntityManager,
  keeperId: string,
  codes: readonly string[],
): Promise<Map<string, string>> {
  if (codes.length === 0) return new Map();
  const rows = await manager.query<{ id: string; code: string }[]>(
    `select id, code from source
     where keeper_id = $1 and withdrawn_at is null and lower(code) = any($2::text[])`,
    [keeperId, codes.map(sameKey)],
  );
  return new Map(rows.map(({ id, code }) => [sameKey(code), id]));
}

/** Not a row that went with the undo of its import: its name is as free as if the sheet had never come. */
const notUndone = `not exists (select from register_import m where m.id = r.import_id and m.withdrawn_at = r.withdrawn_at)`;

/** All species and lines: there are few, and a sheet may leave its species to be found out. */
async function readNames(
  manager: EntityManager,
): Promise<{ species: Map<string, KnownName>; lines: Map<string, KnownName> }> {
  const species = await manager.query<{ id: string; name: string; withdrawn: boolean }[]>(
    `select id, scientific_name as name, withdrawn_at is not null as withdrawn from species r where ${notUndone} order by withdrawn_at nulls last`,
  );
  const lines = await manager.query<{ id: string; speciesId: string; name: string; withdrawn: boolean }[]>(
    `select id, species_id as "speciesId", name, withdrawn_at is not null as withdrawn from line r where ${notUndone} order by withdrawn_at nulls last`,
  );
  return {
    species: new Map(species.map(({ id, name, withdrawn }) => [sameKey(name), { id, isWithdrawn: withdrawn }])),
    lines: new Map(
      lines.map(({ id, speciesId, name, withdrawn }) => [
        `${speciesId} ${sameKey(name)}`,
        { id, isWithdrawn: withdrawn },
      ]),
    ),
  };
}
