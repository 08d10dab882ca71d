import type { EntityManager, EntityTarget, ObjectLiteral } from 'typeorm';
import type { ColumnMetadata } from 'typeorm/metadata/ColumnMetadata.js';
import type { Visibility } from '../../../shared/vocabulary.ts';
import type { KeptForm } from '../../platform/journal-entry.ts';
import { ClutchCandidate } from '../clutches/clutch-candidate.entity.ts';
import { ClutchLoss } from '../clutches/clutch-loss.entity.ts';
import { ClutchPair } from '../clutches/clutch-pair.entity.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { Line } from '../lines/line.entity.ts';
import { Observation } from '../observations/observation.entity.ts';
import { PairingMember } from '../pairings/pairing-member.entity.ts';
import { Pairing } from '../pairings/pairing.entity.ts';
import { Source } from '../sources/source.entity.ts';
import { SpeciesRange } from '../species/species-range.entity.ts';
import { Species } from '../species/species.entity.ts';
import { ConfirmedWarning } from '../warnings/confirmed-warning.entity.ts';

/** The kinds of record of the register, by the names of their tables. */
export type RecordKind =
  'species' | 'line' | 'source' | 'individual' | 'pairing' | 'clutch' | 'observation' | ProvenanceKind | 'kept_plan';

/** Those that the room of provenance keeps: known here by name only, since it stands on the register, as is the kept plan of the room of pairings. */
export type ProvenanceKind = 'claim' | 'evidence' | 'photograph' | 'flag_acknowledgement';

/** Rows that belong to a record and are kept with it. */
interface Children {
  readonly entity: EntityTarget<ObjectLiteral>;
  /** The column that names the record. */
  readonly of: string;
  /** Columns that tell the rows apart, in the order in which they are listed. */
  readonly order: readonly string[];
  /** Whether others speak of a row by its id. */
  readonly keepsId: boolean;
}

const warningsOf = (of: string): Children => ({ entity: ConfirmedWarning, of, order: ['code'], keepsId: false });

export const keptEntities: Record<RecordKind, EntityTarget<ObjectLiteral>> = {
  species: Species,
  line: Line,
  source: Source,
  individual: Individual,
  pairing: Pairing,
  clutch: Clutch,
  observation: Observation,
  claim: 'claim',
  evidence: 'evidence',
  photograph: 'photograph',
  flag_acknowledgement: 'flag_acknowledgement',
  kept_plan: 'kept_plan',
};

const children: Record<RecordKind, Readonly<Record<string, Children>>> = {
  species: { ranges: { entity: SpeciesRange, of: 'species_id', order: ['trait'], keepsId: false } },
  line: {},
  source: {},
  individual: { warnings: warningsOf('individual_id') },
  pairing: { members: { entity: PairingMember, of: 'pairing_id', order: ['id'], keepsId: true } },
  clutch: {
    candidates: { entity: ClutchCandidate, of: 'clutch_id', order: ['role', 'individual_id'], keepsId: false },
    pairs: { entity: ClutchPair, of: 'clutch_id', order: ['a_id', 'b_id'], keepsId: false },
    losses: { entity: ClutchLoss, of: 'clutch_id', order: ['cause'], keepsId: false },
    warnings: warningsOf('clutch_id'),
  },
  observation: {},
  claim: {},
  evidence: {},
  photograph: {},
  flag_acknowledgement: {},
  kept_plan: { pairs: { entity: 'kept_plan_pair', of: 'plan_id', order: ['place'], keepsId: false } },
};

/** A record exactly as the database keeps it, and what the journal needs to know beside it. */
export interface Kept {
  readonly form: KeptForm;
  readonly version: number;
  readonly ownerId: string | null;
  readonly visibility: Visibility;
}

/**
 * A record exactly as the database keeps it, as JSON: its own columns and the rows that belong to it, without what is derived
 * from them (ranks in time, bounds of dates, version). Null where there is none (primary key; each kind of row by its first key).
 */
export async function asKept(manager: EntityManager, kind: RecordKind, id: string): Promise<Kept | null> {
  return (await allAsKept(manager, kind, [id])).get(id) ?? null;
}

/** Several records as `asKept` gives one, by their ids, in the order asked for. */
export async function allAsKept(
  manager: EntityManager,
  kind: RecordKind,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Kept>> {
  const rows = await manager.query<(Kept & { id: string })[]>(statementFor(manager, kind), [ids]);
  const found = new Map(rows.map(({ id, ...kept }) => [id, kept]));
  return new Map(ids.flatMap((id): [string, Kept][] => (found.has(id) ? [[id, found.get(id) as Kept]] : [])));
}

const statements = new Map<RecordKind, string>();

function statementFor(manager: EntityManager, kind: RecordKind): string {
  const known = statements.get(kind) ?? makeStatement(manager, kind);
  statements.set(kind, known);
  return known;
}

function makeStatement(manager: EntityManager, kind: RecordKind): string {
  const own = manager.dataSource.getMetadata(keptEntities[kind]).columns;
  const rows = Object.entries(children[kind]).map(([name, child]) => {
    const order = child.order.map((column) => `c.${column}`).join(', ');
    const form = objectOf('c', keptColumns(manager.dataSource.getMetadata(child.entity).columns, child));
    return `'${name}', (select coalesce(json_agg(${form} order by ${order}), '[]') from ${tableOf(manager, child.entity)} c where c.${child.of} = r.id)`;
  });
  const has = (column: string): boolean => own.some(({ databaseName }) => databaseName === column);
  return `select ${objectOf('r', keptColumns(own), rows)} as form, r.id, r.version,
    ${has('keeper_id') ? 'r.keeper_id' : 'null'} as "ownerId", ${has('visibility') ? 'r.visibility' : `'club'`} as visibility
    from ${kind} r where r.id = any($1)`;
}

const tableOf = (manager: EntityManager, entity: EntityTarget<ObjectLiteral>): string =>
  manager.dataSource.getMetadata(entity).tableName;

const derived = /^(version|created_at|updated_at|stands|stage|shown_to|tier|.*_tier|.*_earliest|.*_latest)$/;

function keptColumns(columns: readonly ColumnMetadata[], child?: Children): ColumnMetadata[] {
  return columns.filter(
    ({ databaseName }) =>
      !derived.test(databaseName) &&
      databaseName !== child?.of &&
      (databaseName !== 'id' || child?.keepsId === true) &&
      !(child?.entity === ConfirmedWarning && /^(individual|clutch)_id$/.test(databaseName)),
  );
}

function objectOf(alias: string, columns: readonly ColumnMetadata[], more: readonly string[] = []): string {
  const fields = columns.map((column) => `'${column.propertyName}', ${valueOf(alias, column)}`);
  return `json_build_object(${[...fields, ...more].join(', ')})`;
}

/** Instants in UTC whatever the session's time zone is; serials, which are 64 bits wide, as texts. */
function valueOf(alias: string, { databaseName, type }: ColumnMetadata): string {
  const column = `${alias}."${databaseName}"`;
  if (type === 'timestamptz') return `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;
  return type === 'bigint' ? `${column}::text` : column;
}
