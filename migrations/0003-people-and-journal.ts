import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A register that many keepers share: sign-in, tokens and links; who may see a record; what an import brought and what was
 * merged; and the journal, which the database itself refuses to change.
 */
export class PeopleAndJournal1764000000002 implements MigrationInterface {
  name = 'PeopleAndJournal1764000000002';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [people, signIn, visibility, imports, merges, journal, journalIsKept])
      await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      alter table idempotency_key drop column journal_entry_id;
      drop table journal_seal, journal_unsealed, journal_entry, merge, rate_limit, service_secret, setup_code, sign_in_link, access_token, session;
      drop function keep_journal() cascade;
      alter table individual drop column visibility, drop column import_id, drop column merged_into_id;
      alter table source drop column visibility, drop column import_id;
      alter table observation drop column visibility;
      alter table clutch drop column import_id;
      alter table line drop column import_id, drop column keeper_id;
      alter table species drop column import_id, drop column keeper_id;
      drop index species_name_unique, line_name_unique;
      create unique index species_name_unique on species (lower(scientific_name));
      create unique index line_name_unique on line (species_id, lower(name));
      alter table register_import drop column sheet_sha256, drop column withdrawn_at, drop column withdrawn_reason;
      alter table keeper drop column roles, drop column password_hash, drop column left_at;
      alter table club drop column public_reading, drop column version, add column default_keeper_id uuid constraint club_default_keeper references keeper (id);
      update club set default_keeper_id = (select id from keeper order by id limit 1);
      alter table club alter column default_keeper_id set not null;`);
  }
}

/** Everyone is a keeper; a role is what somebody may do besides. Who left keeps their records and can no longer sign in. */
const people = `
  alter table keeper
    add column roles text[] not null default '{}'
      constraint keeper_roles check (roles <@ array['registrar', 'administrator']),
    add column password_hash text,
    add column left_at timestamptz(3);
  alter table club drop column default_keeper_id,
    add column version integer not null default 1,
    add column public_reading boolean not null default false;`;

/** Secrets are stored as hashes only. The tables session and rate_limit have the form that their libraries ask for. */
const signIn = `
  create table session (
    sid text primary key,
    sess json not null,
    expire timestamp(6) not null
  );
  create index session_expire on session (expire);
  create index session_keeper on session ((sess->>'keeperId'));
  create table access_token (
    id uuid primary key default new_id(),
    keeper_id uuid not null constraint access_token_keeper references keeper (id),
    name text not null constraint access_token_name_length check (length(name) between 1 and 120),
    scope text not null constraint access_token_scope check (scope in ('read', 'write')),
    token_hash bytea not null constraint access_token_hash_unique unique,
    created_at timestamptz(3) not null default now(),
    expires_at timestamptz(3),
    last_used_at timestamptz(3),
    revoked_at timestamptz(3)
  );
  create index access_token_keeper_index on access_token (keeper_id);
  create table sign_in_link (
    id uuid primary key default new_id(),
    kind text not null constraint sign_in_link_kind check (kind in ('invitation', 'reset')),
    token_hash bytea not null constraint sign_in_link_hash_unique unique,
    keeper_id uuid constraint sign_in_link_keeper references keeper (id),
    roles text[] not null default '{}' constraint sign_in_link_roles check (roles <@ array['registrar', 'administrator']),
    note text constraint sign_in_link_note_length check (length(note) between 1 and 120),
    made_by uuid not null constraint sign_in_link_made_by references keeper (id),
    created_at timestamptz(3) not null default now(),
    expires_at timestamptz(3) not null,
    used_at timestamptz(3),
    revoked_at timestamptz(3),
    constraint sign_in_link_for_somebody check (kind = 'invitation' or keeper_id is not null)
  );
  create index sign_in_link_keeper_index on sign_in_link (keeper_id);
  create table setup_code (
    code_hash bytea primary key,
    created_at timestamptz(3) not null default now()
  );
  create table service_secret (
    name text primary key,
    value text not null,
    created_at timestamptz(3) not null default now()
  );
  create unlogged table rate_limit (
    key varchar(255) primary key,
    points integer not null default 0,
    expire bigint
  );`;

/** private: the record's keeper and the registrars (of a remark: its keeper alone); club: every member; public: anyone. */
const visibility = ['individual', 'source', 'observation']
  .map(
    (table) => `
  alter table ${table} add column visibility text not null default 'club'
    constraint ${table}_visibility check (visibility in ('private', 'club', 'public'));`,
  )
  .concat(
    `
  create index individual_private_index on individual (clutch_id) where visibility = 'private';`,
  )
  .join('');

/**
 * Which sheet brought a record. Animals and clutches name it without a foreign key: only the sheet's own COPY writes the column, in the
 * transaction that writes the import, and no import is ever deleted; checking row by row would cost a tenth of a large import.
 * A name is free again once its species or line is withdrawn, as a code always was, so that a sheet can be taken again after an undo.
 */
const imports = `
  alter table register_import add column sheet_sha256 text, add column withdrawn_at timestamptz(3), add column withdrawn_reason text;
  ${['species', 'line', 'source', 'clutch', 'individual']
    .map(
      (table) => `
  alter table ${table} add column import_id uuid${['clutch', 'individual'].includes(table) ? '' : ` constraint ${table}_import references register_import (id)`};
  create index ${table}_import_index on ${table} (import_id) where import_id is not null;`,
    )
    .join('')}
  drop index species_name_unique, line_name_unique;
  create unique index species_name_unique on species (lower(scientific_name)) where withdrawn_at is null;
  create unique index line_name_unique on line (species_id, lower(name)) where withdrawn_at is null;
  ${['species', 'line']
    .map(
      (table) => `
  alter table ${table} add column keeper_id uuid constraint ${table}_keeper references keeper (id);
  create index ${table}_keeper_index on ${table} (keeper_id);`,
    )
    .join('')}`;

/** Two records of one animal: the duplicate is withdrawn and names the record that goes on; what was moved can be moved back. */
const merges = `
  alter table individual add column merged_into_id uuid constraint individual_merged_into references individual (id),
    add constraint individual_not_merged_into_itself check (merged_into_id <> id),
    add constraint individual_merged_is_withdrawn check (merged_into_id is null or withdrawn_at is not null);
  create index individual_merged_into_index on individual (merged_into_id) where merged_into_id is not null;
  create table merge (
    id uuid primary key default new_id(),
    kept_id uuid not null constraint merge_kept references individual (id),
    duplicate_id uuid not null constraint merge_duplicate references individual (id),
    keeper_id uuid not null constraint merge_keeper references keeper (id),
    reason text not null constraint merge_reason_length check (length(reason) between 1 and 500),
    moved jsonb not null,
    created_at timestamptz(3) not null default now(),
    undone_at timestamptz(3)
  );
  create index merge_kept_index on merge (kept_id);
  create index merge_duplicate_index on merge (duplicate_id);`;

/**
 * An entry is written with the change that it tells of, a seal shortly after. Writers touch no common row; only the sealer, one
 * at a time, gives entries their places in the chain. journal_unsealed is the sealer's list of work. about_ids are records besides
 * the entry's own whose history shows it too: the young that were raised, the two that were merged.
 */
const journal = `
  create table journal_entry (
    id uuid primary key default new_id(),
    at timestamptz(3) not null default clock_timestamp(),
    keeper_id uuid constraint journal_entry_keeper references keeper (id),
    via text not null constraint journal_entry_via check (via in ('session', 'token', 'service')),
    request_id text,
    action text not null,
    kind text not null,
    record_id uuid,
    record_version integer,
    owner_id uuid,
    visibility text not null,
    before json,
    after json,
    reason text,
    reverses_id uuid constraint journal_entry_reverses references journal_entry (id),
    about_ids uuid[] not null default '{}'
  );
  create index journal_entry_record_index on journal_entry (record_id, id);
  create index journal_entry_keeper_index on journal_entry (keeper_id, id);
  create index journal_entry_about_index on journal_entry using gin (about_ids) where about_ids <> '{}';
  create index journal_entry_reverses_index on journal_entry (reverses_id) where reverses_id is not null;
  create table journal_unsealed (
    entry_id uuid primary key constraint journal_unsealed_entry references journal_entry (id)
  );
  create table journal_seal (
    sequence bigint primary key,
    entry_id uuid not null constraint journal_seal_entry references journal_entry (id) constraint journal_seal_once unique,
    previous_hash bytea not null,
    hash bytea not null,
    sealed_at timestamptz(3) not null default now()
  );
  alter table idempotency_key add column journal_entry_id uuid;`;

const journalIsKept = `
  create function keep_journal() returns trigger language plpgsql as $$
  begin
    raise exception 'the journal is never changed: % of % was refused', lower(tg_op), tg_table_name
      using errcode = 'insufficient_privilege';
  end $$;
  ${['journal_entry', 'journal_seal']
    .map(
      (table) => `
  create trigger ${table}_is_kept before update or delete on ${table} for each statement execute function keep_journal();
  create trigger ${table}_is_not_emptied before truncate on ${table} for each statement execute function keep_journal();
  alter table ${table} enable always trigger ${table}_is_kept;
  alter table ${table} enable always trigger ${table}_is_not_emptied;`,
    )
    .join('')}`;
