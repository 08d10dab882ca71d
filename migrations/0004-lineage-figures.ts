import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Figures that are kept: what the kernel needs of each clutch, what lists sort by of each animal, and a note of every change that
 * they follow, so that each change costs only what it touches.
 */
export class LineageFigures1764000000003 implements MigrationInterface {
  name = 'LineageFigures1764000000003';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [changes, figures, notes]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop function note_lineage_change(text, uuid[]), note_due_lines(uuid[]), note_individuals(), note_clutches(), note_parents(), note_pairs(),
        note_sources(), note_lines() cascade;
      drop table individual_figures, clutch_figures, line_figures, figures_progress, lineage_change;
      alter table lineage_revision drop column figures, drop column pruned;
      create function bump_lineage_revision() returns trigger language plpgsql as $$
      begin
        update lineage_revision set revision = revision + 1, changed_at = now();
        return null;
      end $$;
      create trigger individual_revision after insert or delete or
        update of clutch_id, source_id, line_id, sex, species_id, status, withdrawn_at on individual
        for each statement execute function bump_lineage_revision();
      create trigger clutch_revision after insert or delete on clutch for each statement execute function bump_lineage_revision();
      create trigger clutch_candidate_revision after insert or delete or update on clutch_candidate
        for each statement execute function bump_lineage_revision();
      create trigger clutch_pair_revision after insert or delete or update on clutch_pair
        for each statement execute function bump_lineage_revision();
      create trigger source_revision after insert or delete or update of base_kinship, kind, label_as_received, withdrawn_at on source
        for each statement execute function bump_lineage_revision();
      create trigger line_revision after update of name, label_kind, species_id on line
        for each statement execute function bump_lineage_revision();`);
  }
}

/**
 * `lineage_revision.revision` counts changes of the register, `figures` counts writings of figures. A change is settled once
 * every figure that follows from it is written; until then the figures of its descendants are not current. Notes of changes up
 * to the revision `pruned` may be gone: who is behind it reads the register whole.
 */
const changes = `
  alter table lineage_revision add column figures bigint not null default 0, add column pruned bigint not null default 0;
  create table lineage_change (
    id bigint generated always as identity primary key,
    revision bigint not null,
    kind text not null constraint lineage_change_kind check (kind in ('individual', 'origin', 'clutch', 'source', 'line', 'everything')),
    record_id uuid,
    settled boolean not null default false,
    constraint lineage_change_of_something check ((record_id is null) = (kind = 'everything'))
  );
  create index lineage_change_revision_index on lineage_change (revision);
  create index lineage_change_unsettled_index on lineage_change (id) where not settled;
  insert into lineage_change (revision, kind) select revision, 'everything' from lineage_revision
    where exists (select from individual) or exists (select from clutch);`;

/** No foreign keys: a row without its record is never read, and is removed when its change is settled. */
const figures = `
  create table clutch_figures (
    clutch_id uuid primary key,
    inbreeding double precision not null,
    least double precision not null,
    greatest double precision not null,
    within double precision not null,
    residual double precision not null,
    stamp bigint not null
  );
  create index clutch_figures_stamp_index on clutch_figures (stamp);
  create table individual_figures (
    individual_id uuid primary key,
    inbreeding double precision not null,
    depth integer not null,
    traced_share double precision not null,
    mean_kinship double precision
  );
  create index individual_figures_inbreeding_index on individual_figures (inbreeding, individual_id);
  create index individual_figures_depth_index on individual_figures (depth, individual_id);
  create index individual_figures_traced_index on individual_figures (traced_share, individual_id);
  create index individual_figures_kinship_index on individual_figures (mean_kinship, individual_id);
  create table line_figures (
    line_id uuid primary key,
    due_since timestamptz(3)
  );
  create index line_figures_due_index on line_figures (due_since) where due_since is not null;
  create table figures_progress (
    singleton boolean primary key default true constraint figures_progress_only_one check (singleton),
    done integer not null default 0,
    total integer not null default 0
  );
  insert into figures_progress default values;`;

/** Most records that one statement notes singly; beyond it, everything is read anew. */
const MOST = 1000;

const insertTrigger = (table: string, name: string): string => `
  create trigger ${table}_noted_insert after insert on ${table}
    referencing new table as written for each statement execute function ${name}();`;
const deleteTrigger = (table: string, name: string): string => `
  create trigger ${table}_noted_delete after delete on ${table}
    referencing old table as erased for each statement execute function ${name}();`;
const updateTrigger = (table: string, name: string): string => `
  create trigger ${table}_noted_update after update on ${table}
    referencing old table as erased new table as written for each statement execute function ${name}();`;

/** Animals: their lines are due for new mean kinships, and another origin than before is told apart, since descendants follow from it. */
const noteIndividuals = `
  create function note_due_lines(ids uuid[]) returns void language sql as $$
    insert into line_figures (line_id, due_since) select id, now() from unnest(ids) as due (id) order by id
      on conflict (line_id) do update set due_since = excluded.due_since
  $$;
  create function note_individuals() returns trigger language plpgsql as $$
  declare ids uuid[];
  begin
    if tg_op = 'INSERT' then
      perform note_due_lines(array(select distinct line_id from written where line_id is not null));
      ids := array(select id from written limit ${MOST + 1});
    elsif tg_op = 'DELETE' then
      perform note_due_lines(array(select distinct line_id from erased where line_id is not null));
      ids := array(select id from erased limit ${MOST + 1});
    else
      perform note_due_lines(array(
        select distinct line.id from written join erased using (id)
          cross join lateral (values (written.line_id), (erased.line_id)) as line (id)
        where line.id is not null and (written.line_id, written.status, written.withdrawn_at, written.clutch_id, written.source_id)
          is distinct from (erased.line_id, erased.status, erased.withdrawn_at, erased.clutch_id, erased.source_id)));
      perform note_lineage_change('origin', array(
        select written.id from written join erased using (id)
        where (written.clutch_id, written.source_id) is distinct from (erased.clutch_id, erased.source_id) limit ${MOST + 1}));
      ids := array(
        select written.id from written join erased using (id)
        where (written.line_id, written.sex, written.species_id, written.status, written.withdrawn_at, written.number)
          is distinct from (erased.line_id, erased.sex, erased.species_id, erased.status, erased.withdrawn_at, erased.number)
        limit ${MOST + 1});
    end if;
    perform note_lineage_change('individual', ids);
    return null;
  end $$;`;

/** A trigger function that notes `ids` of the rows a statement wrote, erased, or changed in one of the columns. */
function noting(name: string, kind: string, id: string, columns: readonly string[]): string {
  const list = (row: string): string => columns.map((column) => `${row}.${column}`).join(', ');
  return `
  create function ${name}() returns trigger language plpgsql as $$
  declare ids uuid[];
  begin
    if tg_op = 'INSERT' then
      ids := array(select distinct ${id} from written limit ${MOST + 1});
    elsif tg_op = 'DELETE' then
      ids := array(select distinct ${id} from erased limit ${MOST + 1});
    else
      ids := array(
        select distinct changed.id from written join erased using (id)
          cross join lateral (values (written.${id}), (erased.${id})) as changed (id)
        where (${list('written')}) is distinct from (${list('erased')}) limit ${MOST + 1});
    end if;
    perform note_lineage_change('${kind}', ids);
    return null;
  end $$;`;
}

const notes = `
  drop function bump_lineage_revision() cascade;
  create function note_lineage_change(of_kind text, ids uuid[]) returns void language plpgsql as $$
  declare now_at bigint;
  begin
    if cardinality(ids) = 0 then return; end if;
    update lineage_revision set revision = revision + 1, changed_at = now() returning revision into now_at;
    if cardinality(ids) > ${MOST} then
      insert into lineage_change (revision, kind) values (now_at, 'everything');
    else
      insert into lineage_change (revision, kind, record_id) select now_at, of_kind, unnest(ids);
    end if;
  end $$;
  ${noteIndividuals}
  ${noting('note_clutches', 'clutch', 'id', ['id'])}
  ${noting('note_parents', 'clutch', 'clutch_id', ['clutch_id', 'role', 'individual_id', 'probability'])}
  ${noting('note_pairs', 'clutch', 'clutch_id', ['clutch_id', 'a_id', 'b_id', 'probability'])}
  ${noting('note_sources', 'source', 'id', ['base_kinship', 'kind', 'label_as_received', 'withdrawn_at'])}
  ${noting('note_lines', 'line', 'id', ['name', 'label_kind', 'species_id'])}
  ${['individual', 'clutch', 'clutch_candidate', 'clutch_pair', 'source', 'line']
    .map((table, place) => {
      const name =
        ['note_individuals', 'note_clutches', 'note_parents', 'note_pairs', 'note_sources', 'note_lines'][place] ?? '';
      const change = table === 'clutch' ? '' : updateTrigger(table, name);
      return insertTrigger(table, name) + deleteTrigger(table, name) + change;
    })
    .join('')}`;
