import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Figures of clutches are kept in memory only: reading them takes longer than computing them anew. What lists sort by, the figures of
 * animals, stays.
 */
export class FiguresOfClutches1764000000005 implements MigrationInterface {
  name = 'FiguresOfClutches1764000000005';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table clutch_figures;
      alter table lineage_revision drop column figures;`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      alter table lineage_revision add column figures bigint not null default 0;
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
      with next as (update lineage_revision set revision = revision + 1, changed_at = now()
        where exists (select from clutch) returning revision)
      insert into lineage_change (revision, kind) select revision, 'everything' from next;`);
  }
}
