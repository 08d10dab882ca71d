import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Provenance sheets, exactly as they were signed, and the public keys that they are checked with. */
export class ProvenanceSheets1764000000010 implements MigrationInterface {
  name = 'ProvenanceSheets1764000000010';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [keys, sheets, animals, keeping]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table provenance_sheet_animal, provenance_sheet, signing_key;
      drop function keep_provenance_sheet(), keep_signing_key();
      drop sequence provenance_sheet_number;`);
  }
}

/** A key that is used no more stays, so that what it signed can be checked for as long as the animals live. */
const keys = `
  create table signing_key (
    id uuid primary key default new_id(),
    kid text not null constraint signing_key_unique unique constraint signing_key_kid check (kid ~ '^[A-Za-z0-9_-]{43}$'),
    x text not null constraint signing_key_x check (x ~ '^[A-Za-z0-9_-]{43}$'),
    used_from timestamptz(3) not null,
    used_until timestamptz(3),
    reason text constraint signing_key_reason_length check (length(reason) between 1 and 500),
    constraint signing_key_retired_whole check ((used_until is null) = (reason is null)),
    constraint signing_key_time_of_use check (used_until >= used_from)
  );`;

/**
 * `file` holds the very bytes that are handed out; the token stands in the address that its QR code leads to; `records` says which records
 * its references (a1, c1, s1) stand for, which the file does not.
 */
const sheets = `
  create sequence provenance_sheet_number start 1001;
  create table provenance_sheet (
    id uuid primary key default new_id(),
    version integer not null default 1,
    number bigint not null default nextval('provenance_sheet_number') constraint provenance_sheet_number_unique unique,
    keeper_id uuid not null constraint provenance_sheet_keeper references keeper (id),
    token text not null constraint provenance_sheet_token_unique unique,
    key_id uuid not null constraint provenance_sheet_signing_key references signing_key (id),
    issued_at timestamptz(3) not null,
    valid_until date,
    file bytea not null,
    records jsonb not null,
    revoked_at timestamptz(3),
    revoked_reason text constraint provenance_sheet_revoked_reason_length check (length(revoked_reason) between 1 and 500),
    constraint provenance_sheet_revoked_whole check ((revoked_at is null) = (revoked_reason is null))
  );
  create index provenance_sheet_keeper_index on provenance_sheet (keeper_id, number);`;

const animals = `
  create table provenance_sheet_animal (
    sheet_id uuid not null constraint provenance_sheet_animal_sheet references provenance_sheet (id),
    individual_id uuid not null constraint provenance_sheet_animal_individual references individual (id),
    place integer not null constraint provenance_sheet_animal_place check (place >= 1),
    constraint provenance_sheet_animal_pkey primary key (sheet_id, individual_id)
  );
  create index provenance_sheet_animal_individual_index on provenance_sheet_animal (individual_id, sheet_id);`;

/** A signature cannot be undone, so neither can what was signed be another, nor the key be gone. */
const keeping = `
  create function keep_provenance_sheet() returns trigger language plpgsql as $$
  begin
    raise exception 'a signed sheet is never altered' using errcode = 'check_violation', constraint = 'provenance_sheet_kept';
  end $$;
  create trigger provenance_sheet_is_kept before update on provenance_sheet for each row
    when ((old.number, old.keeper_id, old.token, old.key_id, old.issued_at, old.valid_until, old.file, old.records)
      is distinct from (new.number, new.keeper_id, new.token, new.key_id, new.issued_at, new.valid_until, new.file, new.records)
      or old.revoked_at is not null)
    execute function keep_provenance_sheet();
  create function keep_signing_key() returns trigger language plpgsql as $$
  begin
    raise exception 'a key is never altered' using errcode = 'check_violation', constraint = 'signing_key_kept';
  end $$;
  create trigger signing_key_is_kept before update on signing_key for each row
    when ((old.kid, old.x, old.used_from) is distinct from (new.kid, new.x, new.used_from) or old.used_until is not null)
    execute function keep_signing_key();`;
