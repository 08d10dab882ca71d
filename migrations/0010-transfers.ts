import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Animals that change hands or leave the club, and who sees a private animal because it is on its way to them or came from them. */
export class Transfers1764000000009 implements MigrationInterface {
  name = 'Transfers1764000000009';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [transfers, order, sight]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table transfer_animal, transfer;
      drop function keep_transfer_in_order(), show_transferred();
      drop index individual_counting_index;
      alter table individual drop column shown_to;
      create index individual_counting_index on individual (status, sex, visibility, keeper_id) where withdrawn_at is null;`);
  }
}

const edtf = (column: string): string => `
  "${column}" text,
  ${column}_earliest date,
  ${column}_latest date`;

const edtfRule = (table: string, column: string): string => `
  constraint ${table}_${column}_bounds check (
    num_nonnulls("${column}", ${column}_earliest, ${column}_latest) in (0, 3) and ${column}_earliest <= ${column}_latest)`;

/**
 * An offer to another keeper, who accepts or declines; or, without one, that animals left the club, which nobody has to answer. Each animal's
 * row repeats the state of its transfer through a foreign key, so that the database itself keeps an animal in one open offer at most.
 */
const transfers = `
  create table transfer (
    id uuid primary key default new_id(),
    version integer not null default 1,
    created_at timestamptz(3) not null default now(),
    updated_at timestamptz(3) not null default now(),
    keeper_id uuid not null constraint transfer_keeper references keeper (id),
    to_id uuid constraint transfer_to references keeper (id),
    left_to text constraint transfer_left_to_length check (length(left_to) between 1 and 200),
    ${edtf('date')},
    note text constraint transfer_note_length check (length(note) between 1 and 2000),
    state text not null constraint transfer_state check (state in ('offered', 'accepted', 'declined', 'withdrawn')),
    reason text constraint transfer_reason_length check (length(reason) between 1 and 500),
    settled_by_id uuid constraint transfer_settled_by references keeper (id),
    settled_at timestamptz(3),
    ended_stays jsonb not null default '[]',
    constraint transfer_to_another check (to_id <> keeper_id),
    constraint transfer_left_to_outside check (left_to is null or to_id is null),
    constraint transfer_departure_is_not_answered check (to_id is not null or state in ('accepted', 'withdrawn')),
    constraint transfer_accepted_on_a_date check (state <> 'accepted' or date is not null),
    constraint transfer_settled_whole check (num_nonnulls(settled_by_id, settled_at) = case state when 'offered' then 0 else 2 end),
    constraint transfer_at_state unique (id, state),
    ${edtfRule('transfer', 'date')}
  );
  create index transfer_keeper_index on transfer (keeper_id, id);
  create index transfer_to_index on transfer (to_id, id);
  create table transfer_animal (
    transfer_id uuid not null,
    individual_id uuid not null constraint transfer_animal_individual references individual (id),
    state text not null,
    given_code text,
    ${edtf('returned')},
    constraint transfer_animal_pkey primary key (transfer_id, individual_id),
    constraint transfer_animal_transfer foreign key (transfer_id, state) references transfer (id, state) on update cascade,
    ${edtfRule('transfer_animal', 'returned')}
  );
  create index transfer_animal_individual_index on transfer_animal (individual_id);
  create unique index transfer_animal_offered_unique on transfer_animal (individual_id) where state = 'offered';`;

/** An offer is answered once; what was answered is only taken back to what it was before. */
const order = `
  create function keep_transfer_in_order() returns trigger language plpgsql as $$
  begin
    if (old.state, new.state) not in (('offered', 'accepted'), ('offered', 'declined'), ('offered', 'withdrawn'),
        ('accepted', 'offered'), ('declined', 'offered'), ('withdrawn', 'offered'), ('accepted', 'withdrawn'), ('withdrawn', 'accepted'))
      or new.to_id is not null and (old.state, new.state) in (('accepted', 'withdrawn'), ('withdrawn', 'accepted'))
      or (old.keeper_id, old.to_id) is distinct from (new.keeper_id, new.to_id) then
      raise exception 'a transfer does not go from % to %', old.state, new.state
        using errcode = 'check_violation', constraint = 'transfer_in_order';
    end if;
    return new;
  end $$;
  create trigger transfer_is_in_order before update on transfer for each row
    when (old.state <> new.state or (old.keeper_id, old.to_id) is distinct from (new.keeper_id, new.to_id))
    execute function keep_transfer_in_order();`;

/**
 * Who sees an animal beside its keeper and the registrars where it is private: the one to whom it is on offer, and those who gave it. It
 * follows from the transfers and is kept at the animal, since every statement that reads animals asks it.
 */
const sight = `
  alter table individual add column shown_to uuid[] not null default '{}';
  drop index individual_counting_index;
  create index individual_counting_index on individual (status, sex, visibility, keeper_id) include (shown_to) where withdrawn_at is null;
  create function show_transferred() returns trigger language plpgsql as $$
  begin
    update individual i set shown_to = sight.ids
      from (select coalesce(array_agg(distinct case a.state when 'offered' then t.to_id else t.keeper_id end), '{}') as ids
        from transfer_animal a join transfer t on t.id = a.transfer_id
        where a.individual_id = new.individual_id and t.to_id is not null and a.state in ('offered', 'accepted')) sight
      where i.id = new.individual_id and i.shown_to <> sight.ids;
    return null;
  end $$;
  create trigger transfer_animal_shown after insert or update of state on transfer_animal
    for each row execute function show_transferred();`;
