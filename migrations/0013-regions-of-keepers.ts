import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Where keepers live, as roughly as they like to say: whoever looks for a mate wants to know how far it would travel. */
export class RegionsOfKeepers1764000000012 implements MigrationInterface {
  name = 'RegionsOfKeepers1764000000012';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `alter table keeper add column region text constraint keeper_region_length check (length(region) between 1 and 80)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table keeper drop column region');
  }
}
