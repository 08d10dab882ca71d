import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Notes of every change of a claim or its evidence, in the name of the record that the claim is about: what the lineage tells of a source
 * or founder, and the traced share of all that descends from it, follow at once.
 */
export class NotesOfClaims1764000000007 implements MigrationInterface {
  name = 'NotesOfClaims1764000000007';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [noteSubjects, noteClaims, noteEvidence, triggers]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(
      'drop function note_claims(), note_evidence(), note_claim_subjects(uuid[], uuid[], uuid[]) cascade',
    );
  }
}

/** Most records that one statement notes singly, as for all other notes: one more, and everything is read anew. */
const MOST = 1000;

/** Claims of a source are noted as a change of the source, of an animal as one of its origin, of a line as one of the line. */
const noteSubjects = `
  create function note_claim_subjects(source_ids uuid[], individual_ids uuid[], line_ids uuid[]) returns void language plpgsql as $$
  begin
    perform note_lineage_change('source', array(select distinct id from unnest(source_ids) as s (id) where id is not null limit ${MOST + 1}));
    perform note_lineage_change('origin', array(select distinct id from unnest(individual_ids) as s (id) where id is not null limit ${MOST + 1}));
    perform note_lineage_change('line', array(select distinct id from unnest(line_ids) as s (id) where id is not null limit ${MOST + 1}));
  end $$;`;

const list = (row: string, columns: readonly string[]): string =>
  columns.map((column) => `${row}.${column}`).join(', ');

const claimColumns = [
  'source_id',
  'line_id',
  'individual_id',
  'aspect',
  'value',
  'country_code',
  'stated_on_earliest',
  'stated_on_latest',
  'withdrawn_at',
];

const subjectsOf = (rows: string): string => `
      select array_agg(source_id), array_agg(individual_id), array_agg(line_id) into sources, individuals, lines from ${rows};`;

/** A claim that comes to be about another record is noted for the record that loses it as well. */
const noteClaims = `
  create function note_claims() returns trigger language plpgsql as $$
  declare sources uuid[]; individuals uuid[]; lines uuid[];
  begin
    if tg_op = 'INSERT' then ${subjectsOf('written')}
    elsif tg_op = 'DELETE' then ${subjectsOf('erased')}
    else ${subjectsOf(`(
        select changed.* from written join erased using (id)
          cross join lateral (values (written.source_id, written.individual_id, written.line_id),
            (erased.source_id, erased.individual_id, erased.line_id)) as changed (source_id, individual_id, line_id)
        where (${list('written', claimColumns)}) is distinct from (${list('erased', claimColumns)})) as changed`)}
    end if;
    perform note_claim_subjects(sources, individuals, lines);
    return null;
  end $$;`;

const evidenceColumns = [
  'claim_id',
  'kind',
  'bearing',
  'names',
  'issued_by',
  'repeats_id',
  'review',
  'dated_earliest',
  'dated_latest',
  'withdrawn_at',
];

/** No standing rests on evidence that is not accepted, unless accepted evidence repeats it. */
const counts = (row: string): string =>
  `(${row}.review = 'accepted' or exists (select from evidence o where o.repeats_id = ${row}.id))`;

const subjectsOfClaims = (claims: string): string =>
  subjectsOf(`claim where id in (${claims}) and withdrawn_at is null`);

const noteEvidence = `
  create function note_evidence() returns trigger language plpgsql as $$
  declare sources uuid[]; individuals uuid[]; lines uuid[];
  begin
    if tg_op = 'INSERT' then ${subjectsOfClaims(`select claim_id from written where ${counts('written')}`)}
    elsif tg_op = 'DELETE' then ${subjectsOfClaims(`select claim_id from erased where ${counts('erased')}`)}
    else ${subjectsOfClaims(`
        select changed.claim_id from written join erased using (id)
          cross join lateral (values (written.claim_id), (erased.claim_id)) as changed (claim_id)
        where (${list('written', evidenceColumns)}) is distinct from (${list('erased', evidenceColumns)})
          and (${counts('written')} or erased.review = 'accepted')`)}
    end if;
    perform note_claim_subjects(sources, individuals, lines);
    return null;
  end $$;`;

const triggers = (
  [
    ['claim', 'note_claims'],
    ['evidence', 'note_evidence'],
  ] as const
)
  .map(
    ([table, name]) => `
  create trigger ${table}_noted_insert after insert on ${table}
    referencing new table as written for each statement execute function ${name}();
  create trigger ${table}_noted_delete after delete on ${table}
    referencing old table as erased for each statement execute function ${name}();
  create trigger ${table}_noted_update after update on ${table}
    referencing old table as erased new table as written for each statement execute function ${name}();`,
  )
  .join('');
