import type { EntityManager } from 'typeorm';
import { owned } from '../people/visibility.ts';
import { dateInWords } from '../../shared/date-words.ts';
import { formatRegistryNumber } from '../../shared/registry-number.ts';
import type { SourceKind } from '../../shared/vocabulary.ts';
import type { KindWord } from './kind-words.ts';
import type { RecordKind } from './kept/kept-form.queries.ts';
import { seenIn } from './seen-records.ts';
import { clutchTitle, sourceTitle } from './titles.ts';
import { say } from '../platform/say.ts';

/** A record that stands in the way, as a problem document names it. */
export interface Dependant {
  readonly kind: RecordKind | 'merge' | 'transfer';
  /** Its id; "private-1" and so on where it may not be seen. */
  readonly id: string;
  readonly name: string;
  readonly isPrivate: boolean;
}

/** What a name is made of. */
export interface DependantRow {
  readonly kind: Dependant['kind'];
  readonly id: string;
  readonly name: string | null;
  readonly code: string | null;
  readonly date: string | null;
  readonly isSeen: boolean;
}

/** At most this many are named; the first ones are enough to know what to do. */
export const named = 20;

const individual = (where: string): string =>
  `(select 'individual' as kind, i.id, i.number::text as name, i.code, null as date, ${seenIn.individual('i')} as "isSeen" from individual i where i.withdrawn_at is null and ${where} limit ${named})`;
const clutch = (where: string): string =>
  `(select 'clutch' as kind, c.id, null as name, c.code, c.laid as date, ${seenIn.clutch('c')} as "isSeen" from clutch c where c.withdrawn_at is null and ${where} limit ${named})`;
const line = (where: string): string =>
  `(select 'line' as kind, l.id, l.name, null as code, null as date, true as "isSeen" from line l where l.withdrawn_at is null and ${where} limit ${named})`;

/** An open offer of an animal (transfer_animal_offered_unique). */
const offer = (animal: string): string =>
  `(select 'transfer' as kind, t.id, k.name, null as code, null as date, ${owned('t')} as "isSeen" from transfer_animal a join transfer t on t.id = a.transfer_id join keeper k on k.id = t.to_id
   where a.individual_id = ${animal} and a.state = 'offered')`;

const parentOf = (parent: string): string =>
  `c.id in (select clutch_id from clutch_candidate where individual_id = ${parent}
     union select clutch_id from clutch_pair where a_id = ${parent} union select clutch_id from clutch_pair where b_id = ${parent})`;

/**
 * What needs a record of each kind. Indexes: individual_species_index, individual_line_index, individual_source_index,
 * individual_clutch_index, clutch_candidate_individual_index, transfer_animal_offered_unique, clutch_pair_a_index, clutch_pair_b_index, clutch_pairing_index.
 */
const above = (): Partial<Record<KindWord, readonly string[]>> => ({
  species: [line('l.species_id = $1'), individual('i.species_id = $1')],
  line: [individual('i.line_id = $1')],
  source: [individual('i.source_id = $1')],
  clutch: [individual('i.clutch_id = $1')],
  animal: [clutch(parentOf('$1')), offer('$1')],
  pairing: [clutch('c.pairing_id = $1')],
});

/** The columns that the name of a record is made of. */
const namedBy = {
  source: 'r.kind as name, r.code, r.date',
  line: 'r.name, null as code, null as date',
  individual: 'r.number::text as name, r.code, null as date',
} as const;

/** What a record of each kind needs, if it is withdrawn (primary keys, clutch_candidate_once, clutch_pair_once). */
const beneath = (): Partial<Record<KindWord, readonly string[]>> => ({
  claim: (['source', 'line', 'individual'] as const).map(
    (table) =>
      `(select '${table}' as kind, r.id, ${namedBy[table]}, ${seenIn[table]('r')} as "isSeen" from ${table} r
         where r.withdrawn_at is not null and r.id = (select ${table}_id from claim where id = $1))`,
  ),
  evidence: [
    `(select 'claim' as kind, r.id, r.value as name, null as code, null as date, ${seenIn.claim('r')} as "isSeen" from claim r
       where r.withdrawn_at is not null and r.id = (select claim_id from evidence where id = $1))`,
  ],
  acknowledgement: (['line', 'individual'] as const).map(
    (table) =>
      `(select '${table}' as kind, r.id, ${namedBy[table]}, ${seenIn[table]('r')} as "isSeen" from ${table} r
         where r.withdrawn_at is not null and r.id = (select ${table}_id from flag_acknowledgement where id = $1))`,
  ),
  plan: [withdrawn('line', 'name', 'r.id = (select line_id from kept_plan where id = $1)')],
  line: [withdrawn('species', 'scientific_name', 'r.id = (select species_id from line where id = $1)')],
  animal: [
    withdrawn('species', 'scientific_name', 'r.id = (select species_id from individual where id = $1)'),
    withdrawn('line', 'name', 'r.id = (select line_id from individual where id = $1)'),
    `(select 'source' as kind, r.id, r.kind as name, r.code, r.date, ${seenIn.source('r')} as "isSeen" from source r
       where r.withdrawn_at is not null and r.id = (select source_id from individual where id = $1))`,
    `(select 'clutch' as kind, r.id, null as name, r.code, r.laid as date, ${seenIn.clutch('r')} as "isSeen" from clutch r
       where r.withdrawn_at is not null and r.id = (select clutch_id from individual where id = $1))`,
  ],
  clutch: [
    withdrawn('pairing', 'name', 'r.id = (select pairing_id from clutch where id = $1)'),
    `(select 'individual' as kind, r.id, r.number::text as name, r.code, null as date, ${seenIn.individual('r')} as "isSeen" from individual r where r.withdrawn_at is not null
       and r.id in (select individual_id from clutch_candidate where clutch_id = $1
         union select a_id from clutch_pair where clutch_id = $1 union select b_id from clutch_pair where clutch_id = $1) limit ${named})`,
  ],
});

function withdrawn(table: 'species' | 'line' | 'pairing', name: string, where: string): string {
  return `(select '${table}' as kind, r.id, r.${name} as name, null as code, null as date, ${seenIn[table]('r')} as "isSeen" from ${table} r where r.withdrawn_at is not null and ${where})`;
}

/** The standing records that need this one; the first twenty. Those that may not be seen are counted, not named. */
export async function dependantsOf(manager: EntityManager, word: KindWord, id: string): Promise<Dependant[]> {
  return ask(manager, above()[word] ?? [], id);
}

/** The withdrawn records that this one needs. */
export async function missingBeneath(manager: EntityManager, word: KindWord, id: string): Promise<Dependant[]> {
  return ask(manager, beneath()[word] ?? [], id);
}

async function ask(manager: EntityManager, questions: readonly string[], id: string): Promise<Dependant[]> {
  if (questions.length === 0) return [];
  const rows = await manager.query<DependantRow[]>(
    `select * from (${questions.join(' union all ')}) record limit ${named}`,
    [id],
  );
  return rows.map((row, place) =>
    row.isSeen
      ? { kind: row.kind, id: row.id, name: nameOf(row), isPrivate: false }
      : { kind: row.kind, id: `private-${place + 1}`, name: say`a private record`, isPrivate: true },
  );
}

/** What people call such a record. */
export function nameOf(row: DependantRow): string {
  if (row.kind === 'individual')
    return [formatRegistryNumber(row.name ?? ''), row.code].filter((part) => part !== null).join(' ');
  if (row.kind === 'clutch') return clutchTitle({ laid: row.date, code: row.code });
  if (row.kind === 'source') return sourceTitle({ kind: (row.name ?? 'unknown') as SourceKind, date: row.date });
  if (row.kind === 'observation')
    return row.date === null
      ? say`${row.name ?? 'note'} without a date`
      : say`${row.name ?? 'note'} of ${dateInWords(row.date)}`;
  if (row.kind === 'merge')
    return say`${formatRegistryNumber(row.name ?? '')} merged into ${formatRegistryNumber(row.code ?? '')}`;
  if (row.kind === 'transfer') return row.name === null ? say`departure from the club` : say`transfer to ${row.name}`;
  if (row.kind === 'claim') return say`claim of “${row.name ?? ''}”`;
  return row.name ?? '';
}
