import type { EntityManager } from 'typeorm';
import { owned, seen } from '../people/visibility.ts';
import { seenIn } from '../register/seen-records.ts';
import { named, nameOf, type Dependant, type DependantRow } from '../register/withdrawal.queries.ts';

/** What stands in the way, as far as whoever asks may see it. */
export interface InTheWay {
  /** The first twenty that may be seen. */
  readonly records: Dependant[];
  /** How many there are in all. */
  readonly total: number;
  /** How many of them are private records of other keepers. */
  readonly privateCount: number;
}

type Row = DependantRow & { readonly total: number; readonly privateCount: number };

/** A table's rows that import `$1` made and that stand, or that its undo at `$2` withdrew. */
const made = (table: string): string =>
  `select id from ${table} where import_id = $1 and (withdrawn_at is null or withdrawn_at = $2)`;

/** Standing rows that another sheet or somebody's own hand made. */
const fromOutside = (alias: string): string =>
  `${alias}.withdrawn_at is null and ${alias}.import_id is distinct from $1`;

const animal = (where: string): string => `
  select 'individual' as kind, i.id, i.number::text as name, i.code, null as date, ${seen('individual', 'i')} as "isSeen"
  from individual i where ${fromOutside('i')} and ${where}`;

/** Each branch hashes what the import made once; parts are joined with union, which names a record only once. */
const needing = (): string[] => [
  `select 'line' as kind, l.id, l.name, null as code, null as date, true as "isSeen" from line l
   where ${fromOutside('l')} and l.species_id in (select id from made_species)`,
  animal('i.species_id in (select id from made_species)'),
  animal('i.line_id in (select id from made_line)'),
  animal('i.source_id in (select id from made_source)'),
  animal('i.clutch_id in (select id from made_clutch)'),
  `select 'clutch', c.id, null, c.code, c.laid, ${seenIn.clutch('c')} from clutch c
   where ${fromOutside('c')} and c.id in (
     select clutch_id from clutch_candidate where individual_id in (select id from made_individual)
     union all select clutch_id from clutch_pair where a_id in (select id from made_individual)
     union all select clutch_id from clutch_pair where b_id in (select id from made_individual))`,
  `select 'pairing', p.id, p.name, null, null, ${seenIn.pairing('p')} from pairing p where p.withdrawn_at is null
     and p.id in (select pairing_id from pairing_member where individual_id in (select id from made_individual))`,
  `select 'transfer', t.id, k.name, null, null, ${owned('t')} from transfer t left join keeper k on k.id = t.to_id
   where t.state in ('offered', 'accepted')
     and t.id in (select transfer_id from transfer_animal where individual_id in (select id from made_individual))`,
  ...['individual', 'clutch', 'source'].map(
    (about) => `
   select 'observation', o.id, o.kind, null, o.observed_on, ${seenIn.observation('o')} from observation o
   where o.withdrawn_at is null and o.${about}_id in (select id from made_${about})`,
  ),
  `select 'merge', m.id, d.number::text, k.number::text, null, ${seen('individual', 'd')} and ${seen('individual', 'k')}
   from merge m join individual k on k.id = m.kept_id join individual d on d.id = m.duplicate_id
   where m.undone_at is null and (k.import_id is not distinct from $1) <> (d.import_id is not distinct from $1)`,
];

const tables = ['species', 'line', 'source', 'clutch', 'individual'];

/**
 * Standing records from outside an import that need one that it made: of its species, lines and sources, young of its clutches, clutches
 * with its animals as candidates, pairings they live or lived in, transfers and remarks of them, and mergings of its animals with others.
 *
 * @param at when the import is or was undone: what that withdrew counts as made by it
 */
export async function dependantsOfImport(manager: EntityManager, id: string, at: Date): Promise<InTheWay> {
  const ours = tables.map((table) => `made_${table} as materialized (${made(table)})`).join(', ');
  return readInTheWay(manager, `with ${ours}, found as (${needing().join(' union ')})`, [id, at]);
}

/** Runs a statement whose last part names what is in the way `found`, and counts and names it. */
async function readInTheWay(manager: EntityManager, statement: string, parameters: unknown[]): Promise<InTheWay> {
  const rows = await manager.query<Row[]>(
    `${statement} select kind, id, name, code, date::text, "isSeen", (count(*) over ())::integer as total,
       (count(*) filter (where not "isSeen") over ())::integer as "privateCount"
     from found order by "isSeen" desc, kind, id limit ${named}`,
    parameters,
  );
  return {
    records: rows
      .filter(({ isSeen }) => isSeen)
      .map((row) => ({ kind: row.kind, id: row.id, name: nameOf(row), isPrivate: false })),
    total: rows[0]?.total ?? 0,
    privateCount: rows[0]?.privateCount ?? 0,
  };
}

/** Rows of a table that the undo of import `$1` at `$2` withdrew. */
const undone = (alias: string): string => `${alias}.import_id = $1 and ${alias}.withdrawn_at = $2`;

/** Another standing row has the name or the code that was free since the undo. */
const takers = [
  `select 'species' as kind, o.id, o.scientific_name as name, null as code, null as date, true as "isSeen"
   from species r join species o on lower(o.scientific_name) = lower(r.scientific_name) and o.withdrawn_at is null where ${undone('r')}`,
  `select 'line', o.id, o.name, null, null, true
   from line r join line o on o.species_id = r.species_id and lower(o.name) = lower(r.name) and o.withdrawn_at is null where ${undone('r')}`,
  `select 'source', o.id, o.kind, o.code, o.date, true
   from source r join source o on o.keeper_id = r.keeper_id and lower(o.code) = lower(r.code) and o.withdrawn_at is null where ${undone('r')}`,
  `select 'clutch', o.id, null, o.code, o.laid, true
   from clutch r join clutch o on o.keeper_id = r.keeper_id and lower(o.code) = lower(r.code) and o.withdrawn_at is null where ${undone('r')}`,
  `select 'individual', o.id, o.number::text, o.code, null, true
   from individual r join individual o on o.keeper_id = r.keeper_id and lower(o.code) = lower(r.code) and o.withdrawn_at is null
   where ${undone('r')}`,
];

/** Standing records that have a code or a name which the restored records of an import would need. */
export async function takenMeanwhile(manager: EntityManager, id: string, at: Date): Promise<InTheWay> {
  return readInTheWay(manager, `with found as (${takers.join(' union all ')})`, [id, at]);
}

const ownAnimal = 'i.import_id = $1 and i.withdrawn_at is null';
const ownClutch = 'c.import_id = $1 and c.withdrawn_at is null';

const missing = (): string[] => [
  `select 'species' as kind, r.id, r.scientific_name as name, null as code, null as date, true as "isSeen" from species r
   where r.withdrawn_at is not null and (r.id in (select species_id from individual i where ${ownAnimal})
     or r.id in (select species_id from line l where l.import_id = $1 and l.withdrawn_at is null))`,
  `select 'line', r.id, r.name, null, null, true from line r
   where r.withdrawn_at is not null and r.id in (select line_id from individual i where ${ownAnimal})`,
  `select 'source', r.id, r.kind, r.code, r.date, ${seen('source', 'r')} from source r
   where r.withdrawn_at is not null and r.id in (select source_id from individual i where ${ownAnimal})`,
  `select 'clutch', r.id, null, r.code, r.laid, ${seenIn.clutch('r')} from clutch r
   where r.withdrawn_at is not null and r.id in (select clutch_id from individual i where ${ownAnimal})`,
  `select 'pairing', r.id, r.name, null, null, ${seenIn.pairing('r')} from pairing r
   where r.withdrawn_at is not null and r.id in (select pairing_id from clutch c where ${ownClutch})`,
  `select 'individual', r.id, r.number::text, r.code, null, ${seen('individual', 'r')} from individual r
   where r.withdrawn_at is not null and r.id in (
     select d.individual_id from clutch_candidate d join clutch c on c.id = d.clutch_id where ${ownClutch}
     union all select d.a_id from clutch_pair d join clutch c on c.id = d.clutch_id where ${ownClutch}
     union all select d.b_id from clutch_pair d join clutch c on c.id = d.clutch_id where ${ownClutch})`,
];

/** Withdrawn records that a standing one of this import needs. */
export async function missingBeneathImport(manager: EntityManager, id: string): Promise<InTheWay> {
  return readInTheWay(manager, `with found as (${missing().join(' union all ')})`, [id]);
}
