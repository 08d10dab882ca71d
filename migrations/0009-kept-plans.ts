import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Plans that were kept: the record that its keeper names and shares, what became of each of its pairs, and the plan itself as it was, with
 * its assumptions, which the database refuses to change.
 */
export class KeptPlans1764000000008 implements MigrationInterface {
  name = 'KeptPlans1764000000008';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [plans, answers, pairs]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table kept_plan_pair, kept_plan_answer, kept_plan;
      drop function keep_plan_answer();`);
  }
}

const plans = `
  create table kept_plan (
    id uuid primary key default new_id(),
    version integer not null default 1,
    created_at timestamptz(3) not null default now(),
    updated_at timestamptz(3) not null default now(),
    keeper_id uuid not null constraint kept_plan_keeper references keeper (id),
    line_id uuid not null constraint kept_plan_line references line (id),
    name text not null constraint kept_plan_name_length check (length(name) between 1 and 120),
    notes text,
    visibility text not null default 'private' constraint kept_plan_visibility check (visibility in ('private', 'club')),
    revision integer not null,
    withdrawn_at timestamptz(3),
    withdrawn_reason text
  );
  create index kept_plan_line_index on kept_plan (line_id, id) where withdrawn_at is null;
  create index kept_plan_keeper_index on kept_plan (keeper_id, id) where withdrawn_at is null;`;

/** Apart from the record, so that neither a list nor an entry of the journal carries it. */
const answers = `
  create table kept_plan_answer (
    plan_id uuid primary key constraint kept_plan_answer_plan references kept_plan (id),
    assumptions jsonb not null,
    record jsonb not null,
    housed jsonb not null
  );
  create function keep_plan_answer() returns trigger language plpgsql as $$
  begin
    raise exception 'a kept plan is never altered' using errcode = 'check_violation', constraint = 'kept_plan_answer_kept';
  end $$;
  create trigger kept_plan_answer_is_kept before update or delete on kept_plan_answer
    for each row execute function keep_plan_answer();`;

const pairs = `
  create table kept_plan_pair (
    plan_id uuid not null constraint kept_plan_pair_plan references kept_plan (id),
    place integer not null constraint kept_plan_pair_place check (place >= 0),
    male_id uuid not null constraint kept_plan_pair_male references individual (id),
    female_id uuid not null constraint kept_plan_pair_female references individual (id),
    state text not null default 'proposed' constraint kept_plan_pair_state check (state in ('proposed', 'accepted', 'declined')),
    pairing_id uuid constraint kept_plan_pair_pairing references pairing (id),
    reason text constraint kept_plan_pair_reason_length check (length(reason) between 1 and 500),
    warnings text[] not null default '{}',
    constraint kept_plan_pair_pkey primary key (plan_id, place),
    constraint kept_plan_pair_accepted check ((state = 'accepted') = (pairing_id is not null))
  );
  create unique index kept_plan_pair_pairing_unique on kept_plan_pair (pairing_id) where pairing_id is not null;`;
