import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * When the eggs of a clutch hatched, and how far each clutch is: in the egg, in the water, out of it, or ended. The stage follows from
 * counts, losses and young; it is kept beside the clutch, so that what is due today is found by an index in a register of any size.
 */
export class StagesOfClutches1764000000013 implements MigrationInterface {
  name = 'StagesOfClutches1764000000013';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [columns, stages, upkeep, indexes]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop index individual_unsexed_index, clutch_stage_index, clutch_keeper_index;
      drop function clutch_stage(clutch), begin_clutch_stage(), keep_clutch_stage(), stage_by_part(), stage_by_new_young() cascade;
      drop function settle_clutch_stages(uuid[]), clutch_stage_by(integer, integer, boolean, bigint, bigint);
      alter table clutch drop column stage, drop column hatched_on, drop column hatched_on_earliest, drop column hatched_on_latest;`);
  }
}

const columns = `
  alter table clutch
    add column hatched_on text,
    add column hatched_on_earliest date,
    add column hatched_on_latest date,
    add column stage text not null default 'egg' constraint clutch_stage_known check (stage in ('egg', 'water', 'out', 'ended')),
    add constraint clutch_hatched_on_bounds check (
      num_nonnulls(hatched_on, hatched_on_earliest, hatched_on_latest) in (0, 3) and hatched_on_earliest <= hatched_on_latest),
    add constraint clutch_hatched_after_laying check (laid_earliest <= hatched_on_latest),
    add constraint clutch_hatched_on_of_hatched check (hatched_on is null or hatched is distinct from 0);`;

/**
 * Young that stand in the register are out of the water: they are raised from it. What was lost beyond the eggs that did not hatch was
 * lost in the water.
 */
const stages = `
  create function clutch_stage_by(eggs integer, hatched integer, is_hatched boolean, emerged bigint, lost bigint) returns text
    language sql immutable parallel safe as $$
    select case
      when hatched is distinct from 0 and (hatched > 0 or is_hatched or emerged > 0) then case
        when hatched is null then case when emerged > 0 then 'out' else 'water' end
        when hatched - emerged - greatest(0, lost - greatest(0, coalesce(eggs - hatched, 0))) > 0 then 'water'
        when emerged > 0 then 'out'
        else 'ended' end
      when hatched = 0 or eggs > 0 and lost >= eggs then case when emerged > 0 then 'out' else 'ended' end
      else 'egg' end
  $$;
  create function clutch_stage(c clutch) returns text language sql stable as $$
    select clutch_stage_by(c.eggs, c.hatched, c.hatched_on is not null,
      greatest(coalesce(c.out_of_water, 0), (select count(*) from individual y where y.clutch_id = c.id and y.withdrawn_at is null)),
      (select coalesce(sum(l.count), 0) from clutch_loss l where l.clutch_id = c.id))
  $$;`;

/** A new clutch has neither losses nor young. Those of a sheet are settled together, not one by one: thousands would each be looked up. */
const upkeep = `
  create function begin_clutch_stage() returns trigger language plpgsql as $$
  begin
    new.stage := clutch_stage_by(new.eggs, new.hatched, new.hatched_on is not null, coalesce(new.out_of_water, 0), 0);
    return new;
  end $$;
  create trigger clutch_stage_begun before insert on clutch for each row execute function begin_clutch_stage();
  create function keep_clutch_stage() returns trigger language plpgsql as $$
  begin
    new.stage := clutch_stage(new);
    return new;
  end $$;
  create trigger clutch_stage_kept before update of eggs, hatched, hatched_on, out_of_water on clutch
    for each row execute function keep_clutch_stage();

  create function settle_clutch_stages(ids uuid[]) returns void language sql as $$
    update clutch c set stage = told.stage from (
      select k.id, clutch_stage_by(k.eggs, k.hatched, k.hatched_on is not null,
          greatest(coalesce(k.out_of_water, 0), coalesce(young.number, 0)), coalesce(lost.number, 0)) as stage
        from clutch k
        left join (select clutch_id, count(*) as number from individual where clutch_id = any(ids) and withdrawn_at is null group by clutch_id) young
          on young.clutch_id = k.id
        left join (select clutch_id, sum(count) as number from clutch_loss where clutch_id = any(ids) group by clutch_id) lost on lost.clutch_id = k.id
        where k.id = any(ids)) told
      where c.id = told.id and c.stage <> told.stage
  $$;
  create function stage_by_part() returns trigger language plpgsql as $$
  begin
    perform settle_clutch_stages(array_remove(array[case when tg_op <> 'INSERT' then old.clutch_id end, case when tg_op <> 'DELETE' then new.clutch_id end], null));
    return null;
  end $$;
  create trigger clutch_loss_stage after insert or update or delete on clutch_loss for each row execute function stage_by_part();
  create trigger individual_clutch_stage after update of clutch_id, withdrawn_at on individual for each row
    when (old.clutch_id is distinct from new.clutch_id or (old.withdrawn_at is null) <> (new.withdrawn_at is null))
    execute function stage_by_part();
  create trigger individual_gone_stage after delete on individual for each row
    when (old.clutch_id is not null) execute function stage_by_part();

  create function stage_by_new_young() returns trigger language plpgsql as $$
  begin
    perform settle_clutch_stages((select array_agg(distinct clutch_id) from added where clutch_id is not null));
    return null;
  end $$;
  create trigger individual_new_stage after insert on individual
    referencing new table as added for each statement execute function stage_by_new_young();

  update clutch c set stage = clutch_stage(c) where c.stage <> clutch_stage(c);`;

const indexes = `
  create index clutch_stage_index on clutch (stage, laid_earliest, laid_latest, id) where withdrawn_at is null;
  create index clutch_keeper_index on clutch (keeper_id, laid_earliest, laid_latest, id) where withdrawn_at is null;
  create index individual_unsexed_index on individual (species_id, hatched_latest, keeper_id, id)
    where sex = 'unsexed' and status = 'alive' and withdrawn_at is null;`;
