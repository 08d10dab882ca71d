import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Claims about where animals come from, the evidence that bears on them, files by their content, photographs, and flags acknowledged. */
export class Provenance1764000000004 implements MigrationInterface {
  name = 'Provenance1764000000004';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [claims, files, evidence, photographs, acknowledgements]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table flag_acknowledgement, photograph, evidence, stored_file, claim;
      drop function keep_verbatim_locality();`);
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

const edtf = (column: string): string => `
  "${column}" text,
  ${column}_earliest date,
  ${column}_latest date`;

const edtfRule = (table: string, column: string): string => `
  constraint ${table}_${column}_bounds check (
    num_nonnulls("${column}", ${column}_earliest, ${column}_latest) in (0, 3) and ${column}_earliest <= ${column}_latest)`;

/**
 * How well a claim stands follows from its evidence whenever somebody asks, so no column holds it. One statement about a record is one
 * claim, so that its evidence stands together. The words of a label are never altered: a slip of the pen is a new claim.
 */
const claims = `
  create table claim (${record},
    keeper_id uuid not null constraint claim_keeper references keeper (id),
    source_id uuid constraint claim_source references source (id),
    line_id uuid constraint claim_line references line (id),
    individual_id uuid constraint claim_individual references individual (id),
    aspect text not null constraint claim_aspect check (aspect in ('locality', 'trade-name')),
    value text not null constraint claim_value_length check (length(value) between 1 and 200),
    stated_by text constraint claim_stated_by_length check (length(stated_by) between 1 and 200),
    ${edtf('stated_on')},
    verbatim_locality text constraint claim_verbatim_locality_length check (length(verbatim_locality) between 1 and 2000),
    locality text constraint claim_locality_length check (length(locality) between 1 and 500),
    country_code text constraint claim_country check (country_code ~ '^[A-Z]{2}$'),
    state_province text constraint claim_state_province_length check (length(state_province) between 1 and 200),
    decimal_latitude double precision constraint claim_latitude check (decimal_latitude between -90 and 90),
    decimal_longitude double precision constraint claim_longitude check (decimal_longitude between -180 and 180),
    geodetic_datum text constraint claim_datum_length check (length(geodetic_datum) between 1 and 100),
    coordinate_uncertainty_m double precision
      constraint claim_uncertainty check (coordinate_uncertainty_m > 0 and coordinate_uncertainty_m <= 20037509),
    georeferenced_by text constraint claim_georeferenced_by_length check (length(georeferenced_by) between 1 and 200),
    georeference_sources text constraint claim_georeference_sources_length check (length(georeference_sources) between 1 and 500),
    notes text,
    ${withdrawable},
    constraint claim_about_one_thing check (num_nonnulls(source_id, line_id, individual_id) = 1),
    constraint claim_coordinates check (num_nonnulls(decimal_latitude, decimal_longitude, geodetic_datum) in (0, 3)),
    constraint claim_uncertainty_of_coordinates check (coordinate_uncertainty_m is null or decimal_latitude is not null),
    ${edtfRule('claim', 'stated_on')}
  );
  create unique index claim_unique on claim (coalesce(source_id, line_id, individual_id), aspect, lower(value)) where withdrawn_at is null;
  create index claim_source_index on claim (source_id) where source_id is not null;
  create index claim_line_index on claim (line_id) where line_id is not null;
  create index claim_individual_index on claim (individual_id) where individual_id is not null;
  create function keep_verbatim_locality() returns trigger language plpgsql as $$
  begin
    raise exception 'the words of a label are never altered' using errcode = 'check_violation', constraint = 'claim_verbatim_kept';
  end $$;
  create trigger claim_verbatim_is_kept before update on claim
    for each row when (old.verbatim_locality is distinct from new.verbatim_locality) execute function keep_verbatim_locality();`;

/** What a file holds is stored elsewhere under its hash; who may read it follows from the records that name it. */
const files = `
  create table stored_file (
    hash text primary key constraint stored_file_hash check (hash ~ '^[0-9a-f]{64}$'),
    media_type text not null
      constraint stored_file_media_type check (media_type in ('application/pdf', 'image/jpeg', 'image/png', 'image/webp')),
    bytes integer not null constraint stored_file_bytes check (bytes > 0),
    width integer constraint stored_file_width check (width > 0),
    height integer constraint stored_file_height check (height > 0),
    created_at timestamptz(3) not null default now()
  );`;

const evidence = `
  create table evidence (${record},
    claim_id uuid not null constraint evidence_claim references claim (id),
    keeper_id uuid not null constraint evidence_keeper references keeper (id),
    bearing text not null constraint evidence_bearing check (bearing in ('supports', 'contradicts')),
    kind text not null constraint evidence_kind check (kind in ('collecting-permit', 'export-permit', 'field-note', 'publication',
      'importers-list', 'invoice', 'letter', 'other-document', 'appearance')),
    names text not null default 'claim' constraint evidence_names check (names in ('claim', 'country')),
    reference text not null constraint evidence_reference_length check (length(reference) between 1 and 500),
    issued_by text constraint evidence_issued_by_length check (length(issued_by) between 1 and 200),
    ${edtf('dated')},
    repeats_id uuid constraint evidence_repeats references evidence (id),
    file_hash text constraint evidence_file references stored_file (hash),
    notes text,
    review text not null default 'pending' constraint evidence_review check (review in ('pending', 'accepted', 'rejected')),
    reviewer_id uuid constraint evidence_reviewer references keeper (id),
    reviewed_at timestamptz(3),
    review_reason text constraint evidence_review_reason_length check (length(review_reason) between 1 and 500),
    ${withdrawable},
    constraint evidence_repeats_another check (repeats_id <> id),
    constraint evidence_reviewed_whole check (num_nonnulls(reviewer_id, reviewed_at, review_reason) = case review when 'pending' then 0 else 3 end),
    constraint evidence_not_reviewed_by_its_keeper check (reviewer_id <> keeper_id),
    ${edtfRule('evidence', 'dated')}
  );
  create index evidence_claim_index on evidence (claim_id);
  create index evidence_pending_index on evidence (id) where review = 'pending' and withdrawn_at is null;
  create index evidence_repeats_index on evidence (repeats_id) where repeats_id is not null;
  create index evidence_file_index on evidence (file_hash) where file_hash is not null;`;

const photographs = `
  create table photograph (${record},
    individual_id uuid not null constraint photograph_individual references individual (id),
    keeper_id uuid not null constraint photograph_keeper references keeper (id),
    file_hash text not null constraint photograph_file references stored_file (hash),
    view text not null constraint photograph_view check (view in ('back', 'side', 'belly', 'other')),
    ${edtf('taken_on')},
    notes text,
    ${withdrawable},
    ${edtfRule('photograph', 'taken_on')}
  );
  create index photograph_individual_index on photograph (individual_id, taken_on_latest);
  create index photograph_file_index on photograph (file_hash);`;

/** An acknowledged flag is still shown. It counts as acknowledged while all records that cause it are among those named here. */
const acknowledgements = `
  create table flag_acknowledgement (${record},
    keeper_id uuid not null constraint flag_acknowledgement_keeper references keeper (id),
    individual_id uuid constraint flag_acknowledgement_individual references individual (id),
    line_id uuid constraint flag_acknowledgement_line references line (id),
    code text not null,
    record_ids uuid[] not null default '{}',
    reason text not null constraint flag_acknowledgement_reason_length check (length(reason) between 1 and 500),
    ${withdrawable},
    constraint flag_acknowledgement_of_one_thing check (num_nonnulls(individual_id, line_id) = 1)
  );
  create unique index flag_acknowledgement_unique on flag_acknowledgement (coalesce(individual_id, line_id), code) where withdrawn_at is null;`;
