import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The register: species, lines, sources, individuals, pairings, clutches, observations, and the rules among them.
 * Loops in the lineage are impossible by declaration: each edge repeats the tier (rank in time) of both ends, and a parent's
 * tier is below its clutch's, a clutch's below its young's.
 */
export class Register1764000000000 implements MigrationInterface {
  name = 'Register1764000000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [
      extensions,
      people,
      species,
      sources,
      clutches,
      individuals,
      parents,
      housing,
      remarks,
      bookkeeping,
    ])
      await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table idempotency_key, register_import, confirmed_warning, observation, pairing_member, clutch_pair, clutch_candidate,
        clutch_loss, individual, clutch, pairing, source, line, species_range, species, club, keeper cascade;
      drop sequence registry_serial;
      drop function new_id(), housed(date, date, date, date) cascade;`);
  }
}

const record = `
  id uuid primary key default new_id(),
  version integer not null default 1,
  created_at timestamptz(3) not null default now(),
  updated_at timestamptz(3) not null default now()`;

const withdrawable = `
  withdrawn_at timestamptz(3),
  withdrawn_reason text`;

/** A vague date: the EDTF text and the calendar days that it may mean (null: not given; infinity: open on that side). */
const edtf = (column: string): string => `
  "${column}" text,
  ${column}_earliest date,
  ${column}_latest date`;

const edtfRule = (table: string, column: string): string => `
  constraint ${table}_${column}_bounds check (
    num_nonnulls("${column}", ${column}_earliest, ${column}_latest) in (0, 3) and ${column}_earliest <= ${column}_latest)`;

/** Ids begin with the time (as UUID version 7 does), so that new rows stand together in the index. */
const extensions = `
  create extension if not exists btree_gist;
  create extension if not exists pg_trgm;
  create function new_id() returns uuid language sql volatile parallel safe as $$
    select encode(
      set_byte(set_byte(
        overlay(uuid_send(gen_random_uuid()) placing substring(int8send((extract(epoch from clock_timestamp()) * 1000)::bigint) from 3) from 1 for 6),
        6, (get_byte(uuid_send(gen_random_uuid()), 6) & 15) | 112), 8, (get_byte(uuid_send(gen_random_uuid()), 8) & 63) | 128),
      'hex')::uuid
  $$;`;

const people = `
  create table keeper (${record},
    name text not null constraint keeper_name_length check (length(name) between 1 and 120)
  );
  create table club (
    singleton boolean primary key default true constraint club_only_one check (singleton),
    name text not null constraint club_name_length check (length(name) between 1 and 120),
    demo boolean not null default false,
    default_keeper_id uuid not null constraint club_default_keeper references keeper (id)
  );
  create unique index keeper_name_unique on keeper (lower(name));`;

const species = `
  create table species (${record},
    scientific_name text not null constraint species_name_length check (length(scientific_name) between 3 and 120),
    common_name text,
    cites_appendix text constraint species_cites check (cites_appendix in ('I', 'II', 'III')),
    native_range text[] not null default '{}',
    ${withdrawable}
  );
  create unique index species_name_unique on species (lower(scientific_name));
  create table species_range (
    species_id uuid not null constraint species_range_species references species (id) on delete cascade,
    trait text not null,
    usual_least double precision,
    usual_most double precision,
    extreme_least double precision,
    extreme_most double precision,
    source text not null constraint species_range_source_length check (length(source) between 1 and 500),
    primary key (species_id, trait),
    constraint species_range_order check (
      usual_least <= usual_most and extreme_least <= usual_least and usual_most <= extreme_most and
      coalesce(usual_least, 0) >= 0 and coalesce(extreme_least, 0) >= 0)
  );
  create table line (${record},
    species_id uuid not null constraint line_species references species (id),
    name text not null constraint line_name_length check (length(name) between 1 and 120),
    label_kind text not null default 'unlabelled'
      constraint line_label_kind check (label_kind in ('locality', 'trade-name', 'cross', 'unlabelled')),
    policy text,
    ${withdrawable},
    constraint line_of_species unique (id, species_id)
  );
  create unique index line_name_unique on line (species_id, lower(name));`;

const sources = `
  create table source (${record},
    keeper_id uuid not null constraint source_keeper references keeper (id),
    code text constraint source_code_length check (length(code) between 1 and 40),
    kind text not null default 'unknown'
      constraint source_kind check (kind in ('import', 'wild-collection', 'purchase', 'unknown')),
    ${edtf('date')},
    received_from text,
    received_by text,
    country_of_export text constraint source_country check (country_of_export ~ '^[A-Z]{2}$'),
    permit_references text[] not null default '{}',
    label_as_received text,
    label_note text,
    base_kinship double precision not null default 0
      constraint source_base_kinship check (base_kinship >= 0 and base_kinship <= 1),
    notes text,
    ${withdrawable},
    ${edtfRule('source', 'date')}
  );
  create unique index source_code_unique on source (keeper_id, lower(code)) where withdrawn_at is null;`;

const clutches = `
  create table pairing (${record},
    keeper_id uuid not null constraint pairing_keeper references keeper (id),
    name text not null constraint pairing_name_length check (length(name) between 1 and 120),
    notes text,
    ${withdrawable}
  );
  create index pairing_keeper_index on pairing (keeper_id);
  create table clutch (${record},
    keeper_id uuid not null constraint clutch_keeper references keeper (id),
    pairing_id uuid constraint clutch_pairing references pairing (id),
    code text constraint clutch_code_length check (length(code) between 1 and 40),
    ${edtf('laid')},
    eggs integer constraint clutch_eggs check (eggs between 0 and 10000),
    fertile integer constraint clutch_fertile check (fertile between 0 and eggs),
    hatched integer constraint clutch_hatched check (hatched between 0 and 10000 and hatched <= eggs and hatched <= fertile),
    out_of_water integer constraint clutch_out_of_water check (out_of_water between 0 and 10000 and out_of_water <= hatched),
    site text,
    notes text,
    parents_from_pairing boolean not null default false,
    tier integer not null default 1 constraint clutch_tier_positive check (tier >= 0),
    ${withdrawable},
    constraint clutch_at_tier unique (id, tier),
    ${edtfRule('clutch', 'laid')}
  );
  create unique index clutch_code_unique on clutch (keeper_id, lower(code)) where withdrawn_at is null;
  create index clutch_pairing_index on clutch (pairing_id);
  create index clutch_laid_index on clutch (laid_earliest, laid_latest, id);
  create table clutch_loss (
    clutch_id uuid not null constraint clutch_loss_clutch references clutch (id) on delete cascade,
    cause text not null
      constraint clutch_loss_cause check (cause in ('infertile', 'mould', 'eaten', 'dried-out', 'deformed', 'unknown')),
    count integer not null constraint clutch_loss_count check (count between 1 and 10000),
    primary key (clutch_id, cause)
  );`;

const individuals = `
  create sequence registry_serial start 1001;
  create table individual (${record},
    number bigint not null default nextval('registry_serial') constraint individual_number_positive check (number > 0),
    keeper_id uuid not null constraint individual_keeper references keeper (id),
    code text constraint individual_code_length check (length(code) between 1 and 40),
    species_id uuid not null constraint individual_species references species (id),
    line_id uuid,
    sex text not null default 'unsexed' constraint individual_sex check (sex in ('male', 'female', 'unsexed')),
    sex_basis text
      constraint individual_sex_basis check (sex_basis in ('looks', 'calling', 'eggs', 'courtship', 'genetic', 'other')),
    ${edtf('sexed_on')},
    source_id uuid constraint individual_source references source (id),
    clutch_id uuid,
    clutch_tier integer,
    tier integer not null default 0 constraint individual_tier_positive check (tier >= 0),
    ${edtf('hatched')},
    ${edtf('out_of_water')},
    ${edtf('died')},
    status text not null default 'alive' constraint individual_status check (status in ('alive', 'died', 'gone', 'unknown')),
    notes text,
    ${withdrawable},
    constraint individual_number_unique unique (number),
    constraint individual_at_tier unique (id, tier),
    constraint individual_one_origin check (num_nonnulls(source_id, clutch_id) <= 1),
    constraint individual_clutch_with_tier check ((clutch_id is null) = (clutch_tier is null)),
    constraint individual_after_clutch check (tier > clutch_tier),
    constraint individual_line_of_species foreign key (line_id, species_id) references line (id, species_id),
    constraint individual_clutch foreign key (clutch_id, clutch_tier) references clutch (id, tier) on update cascade,
    constraint individual_died_only_dead check (died is null or status = 'died'),
    constraint individual_in_time check (
      hatched_earliest <= out_of_water_latest and out_of_water_earliest <= died_latest and hatched_earliest <= died_latest),
    ${edtfRule('individual', 'sexed_on')},
    ${edtfRule('individual', 'hatched')},
    ${edtfRule('individual', 'out_of_water')},
    ${edtfRule('individual', 'died')}
  );
  create unique index individual_code_unique on individual (keeper_id, lower(code)) where withdrawn_at is null;
  create index individual_code_index on individual (lower(code), id);
  create index individual_code_trigram on individual using gin (lower(code) gin_trgm_ops);
  create index individual_clutch_index on individual (clutch_id);
  create index individual_source_index on individual (source_id);
  create index individual_line_index on individual (line_id, number);
  create index individual_species_index on individual (species_id, number);
  create index individual_keeper_index on individual (keeper_id, number);
  create index individual_hatched_index on individual (hatched_earliest, hatched_latest, id);`;

/** Either two lists of candidates or joint pairs; an animal null is a frog nobody knows. */
const parents = `
  create table clutch_candidate (
    id uuid primary key default new_id(),
    clutch_id uuid not null,
    clutch_tier integer not null,
    role text not null constraint clutch_candidate_role check (role in ('sire', 'dam')),
    individual_id uuid,
    individual_tier integer,
    probability double precision not null
      constraint clutch_candidate_probability check (probability > 0 and probability <= 1),
    reason text,
    constraint clutch_candidate_once unique nulls not distinct (clutch_id, role, individual_id),
    constraint clutch_candidate_with_tier check ((individual_id is null) = (individual_tier is null)),
    constraint clutch_candidate_before_clutch check (individual_tier < clutch_tier),
    constraint clutch_candidate_clutch foreign key (clutch_id, clutch_tier) references clutch (id, tier) on update cascade,
    constraint clutch_candidate_individual
      foreign key (individual_id, individual_tier) references individual (id, tier) on update cascade
  );
  create index clutch_candidate_individual_index on clutch_candidate (individual_id);
  create table clutch_pair (
    id uuid primary key default new_id(),
    clutch_id uuid not null,
    clutch_tier integer not null,
    a_id uuid not null,
    a_tier integer not null,
    b_id uuid not null,
    b_tier integer not null,
    probability double precision not null constraint clutch_pair_probability check (probability > 0 and probability <= 1),
    reason text,
    constraint clutch_pair_once unique (clutch_id, a_id, b_id),
    constraint clutch_pair_in_order check (a_id < b_id),
    constraint clutch_pair_before_clutch check (a_tier < clutch_tier and b_tier < clutch_tier),
    constraint clutch_pair_clutch foreign key (clutch_id, clutch_tier) references clutch (id, tier) on update cascade,
    constraint clutch_pair_a foreign key (a_id, a_tier) references individual (id, tier) on update cascade,
    constraint clutch_pair_b foreign key (b_id, b_tier) references individual (id, tier) on update cascade
  );
  create index clutch_pair_a_index on clutch_pair (a_id);
  create index clutch_pair_b_index on clutch_pair (b_id);`;

/**
 * One animal lives in one place: no two of its stays in standing pairings may certainly overlap. A constraint cannot look into
 * another table, so each stay repeats whether its pairing stands.
 */
const housing = `
  create function housed(joined_earliest date, joined_latest date, left_earliest date, left_latest date)
    returns daterange language sql immutable parallel safe as $$
    select case
      when joined_latest is null and left_earliest is null then daterange(null, null)
      when left_earliest is not null and coalesce(joined_latest, '-infinity') >= left_earliest then 'empty'::daterange
      else daterange(joined_latest, left_earliest) end
  $$;
  create table pairing_member (
    id uuid primary key default new_id(),
    pairing_id uuid not null constraint pairing_member_pairing references pairing (id),
    individual_id uuid not null constraint pairing_member_individual references individual (id),
    ${edtf('joined')},
    ${edtf('left')},
    stands boolean not null default true,
    constraint pairing_member_in_order check (joined_earliest <= left_latest),
    constraint pairing_member_one_place exclude using gist (
      individual_id with =, housed(joined_earliest, joined_latest, left_earliest, left_latest) with &&) where (stands),
    ${edtfRule('pairing_member', 'joined')},
    ${edtfRule('pairing_member', 'left')}
  );
  create index pairing_member_pairing_index on pairing_member (pairing_id);
  create index pairing_member_individual_index on pairing_member (individual_id);`;

const remarks = `
  create table observation (${record},
    keeper_id uuid not null constraint observation_keeper references keeper (id),
    individual_id uuid constraint observation_individual references individual (id),
    pairing_id uuid constraint observation_pairing references pairing (id),
    clutch_id uuid constraint observation_clutch references clutch (id),
    source_id uuid constraint observation_source references source (id),
    kind text not null constraint observation_kind check (kind in ('note', 'measurement', 'health', 'behaviour')),
    ${edtf('observed_on')},
    text text,
    svl_mm double precision constraint observation_svl check (svl_mm > 0 and svl_mm <= 500),
    mass_g double precision constraint observation_mass check (mass_g > 0 and mass_g <= 5000),
    ${withdrawable},
    constraint observation_of_one_thing check (num_nonnulls(individual_id, pairing_id, clutch_id, source_id) = 1),
    constraint observation_says_something check (num_nonnulls(text, svl_mm, mass_g) > 0),
    ${edtfRule('observation', 'observed_on')}
  );
  create index observation_individual_index on observation (individual_id, observed_on_latest);
  create index observation_pairing_index on observation (pairing_id);
  create index observation_clutch_index on observation (clutch_id);
  create index observation_source_index on observation (source_id);
  create table confirmed_warning (
    id uuid primary key default new_id(),
    individual_id uuid constraint confirmed_warning_individual references individual (id),
    clutch_id uuid constraint confirmed_warning_clutch references clutch (id),
    code text not null,
    detail text not null,
    reason text not null constraint confirmed_warning_reason_length check (length(reason) between 1 and 500),
    keeper_id uuid not null constraint confirmed_warning_keeper references keeper (id),
    confirmed_at timestamptz(3) not null default now(),
    constraint confirmed_warning_of_one_thing check (num_nonnulls(individual_id, clutch_id) = 1),
    constraint confirmed_warning_once unique nulls not distinct (individual_id, clutch_id, code)
  );`;

const bookkeeping = `
  create table register_import (
    id uuid primary key default new_id(),
    keeper_id uuid not null constraint register_import_keeper references keeper (id),
    created_at timestamptz(3) not null default now(),
    rows integer not null,
    created jsonb not null,
    warnings jsonb not null
  );
  create table idempotency_key (
    keeper_id uuid not null constraint idempotency_key_keeper references keeper (id),
    key text not null,
    request_hash text not null,
    status integer,
    body json,
    created_at timestamptz(3) not null default now(),
    primary key (keeper_id, key)
  );
  create index idempotency_key_age on idempotency_key (created_at);`;
