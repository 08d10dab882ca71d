import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Indexes of the living, by what lists sort by, so that a list of them does not walk past all that died; for the stored figures these
 * are told apart by a column of their own. And an index that tells how many animals there are without a look at any of them.
 */
export class LivingAnimals1764000000006 implements MigrationInterface {
  name = 'LivingAnimals1764000000006';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      alter table individual_figures add column is_living boolean not null default false;
      update individual_figures f set is_living = true from individual i
        where i.id = f.individual_id and i.status = 'alive' and i.withdrawn_at is null;
      ${figures.map(([name, column]) => `create index individual_figures_living_${name}_index on individual_figures (${column}, individual_id) where is_living;`).join('\n')}
      create index individual_living_code_index on individual (lower(code), id) where status = 'alive' and withdrawn_at is null;
      create index individual_living_number_index on individual (number) where status = 'alive' and withdrawn_at is null;
      create index individual_living_hatched_index on individual (hatched_earliest, hatched_latest, id)
        where status = 'alive' and withdrawn_at is null;
      create index individual_counting_index on individual (status, sex, visibility, keeper_id) where withdrawn_at is null;`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop index individual_living_code_index, individual_living_number_index, individual_living_hatched_index, individual_counting_index;
      alter table individual_figures drop column is_living;`);
  }
}

const figures = [
  ['inbreeding', 'inbreeding'],
  ['depth', 'depth'],
  ['traced', 'traced_share'],
  ['kinship', 'mean_kinship'],
] as const;
