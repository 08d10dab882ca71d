import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Registers of other clubs whose sheets are believed by their keys, and which records here are which there. */
export class OtherRegisters1764000000011 implements MigrationInterface {
  name = 'OtherRegisters1764000000011';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [otherRegister, foreignRecord]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop table foreign_record');
    await runner.query('drop table other_register');
  }
}

const otherRegister = `
  create table other_register (
    id uuid primary key default new_id(),
    keeper_id uuid not null constraint other_register_keeper references keeper,
    name text not null constraint other_register_name_length check (char_length(name) between 1 and 120),
    address text constraint other_register_address_length check (char_length(address) between 1 and 300),
    keys jsonb not null,
    created_at timestamptz(3) not null default now(),
    withdrawn_at timestamptz(3),
    withdrawn_reason text
  );
  create unique index other_register_name_unique on other_register (lower(name)) where withdrawn_at is null;`;

/** What is known of a record there: its number, or for a clutch and a source a digest of what the sheet says of it. */
const foreignRecord = `
  create table foreign_record (
    register_id uuid not null constraint foreign_record_register references other_register,
    kind text not null constraint foreign_record_kind check (kind in ('individual', 'clutch', 'source')),
    record_id uuid not null,
    foreign_key text not null constraint foreign_record_key_length check (char_length(foreign_key) between 1 and 64),
    sheet_number text not null,
    constraint foreign_record_pkey primary key (register_id, kind, foreign_key, record_id)
  );`;
