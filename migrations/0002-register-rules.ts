import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The rules of the register that no column constraint can say, and the revision that every change of the lineage raises. */
export class RegisterRules1764000000001 implements MigrationInterface {
  name = 'RegisterRules1764000000001';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(parentRules);
    await runner.query(sexRule);
    await runner.query(standingStays);
    await runner.query(revision);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop function check_parents(), refuse_misfit_of_sex(), stand_with_pairing(), bump_lineage_revision() cascade;
      drop table lineage_revision;`);
  }
}

/**
 * What no column constraint can say. The checks look at the rows that one statement wrote, so the parents of a clutch are
 * written in one statement.
 */
const parentRules = `
  create function check_parents() returns trigger language plpgsql as $$
  declare wrong record;
  begin
    select c.clutch_id, c.role, sum(c.probability) as total into wrong from clutch_candidate c
      where c.clutch_id in (select clutch_id from written) group by c.clutch_id, c.role
      having abs(sum(c.probability) - 1) > 1e-9 limit 1;
    if found then
      raise exception 'candidate %s of clutch % have probabilities that sum to %', wrong.role, wrong.clutch_id, wrong.total
        using errcode = 'check_violation', constraint = 'clutch_candidate_sum';
    end if;
    select p.clutch_id, sum(p.probability) as total into wrong from clutch_pair p
      where p.clutch_id in (select clutch_id from written) group by p.clutch_id
      having abs(sum(p.probability) - 1) > 1e-9 limit 1;
    if found then
      raise exception 'candidate pairs of clutch % have probabilities that sum to %', wrong.clutch_id, wrong.total
        using errcode = 'check_violation', constraint = 'clutch_pair_sum';
    end if;
    select w.clutch_id into wrong from written w where
      exists (select from clutch_candidate c where c.clutch_id = w.clutch_id) and
      exists (select from clutch_pair p where p.clutch_id = w.clutch_id) limit 1;
    if found then
      raise exception 'clutch % has both lists of parents and pairs', wrong.clutch_id
        using errcode = 'check_violation', constraint = 'clutch_lists_or_pairs';
    end if;
    select c.clutch_id into wrong from clutch_candidate c
      where c.clutch_id in (select clutch_id from written) and c.individual_id is not null
      group by c.clutch_id, c.individual_id having count(*) > 1 limit 1;
    if found then
      raise exception 'an animal of clutch % stands on both sides', wrong.clutch_id
        using errcode = 'check_violation', constraint = 'clutch_candidate_one_side';
    end if;
    select c.clutch_id into wrong from clutch_candidate c join individual i on i.id = c.individual_id
      where c.clutch_id in (select clutch_id from written) and
        (c.role = 'sire' and i.sex = 'female' or c.role = 'dam' and i.sex = 'male') limit 1;
    if found then
      raise exception 'the sex of a parent of clutch % does not fit its role', wrong.clutch_id
        using errcode = 'check_violation', constraint = 'clutch_candidate_sex';
    end if;
    return null;
  end $$;
  create trigger clutch_candidate_check after insert on clutch_candidate
    referencing new table as written for each statement execute function check_parents();
  create trigger clutch_candidate_check_change after update on clutch_candidate
    referencing new table as written for each statement execute function check_parents();
  create trigger clutch_pair_check after insert on clutch_pair
    referencing new table as written for each statement execute function check_parents();
  create trigger clutch_pair_check_change after update on clutch_pair
    referencing new table as written for each statement execute function check_parents();
  create trigger clutch_candidate_check_removal after delete on clutch_candidate
    referencing old table as written for each statement execute function check_parents();
  create trigger clutch_pair_check_removal after delete on clutch_pair
    referencing old table as written for each statement execute function check_parents();
`;

const sexRule = `
  create function refuse_misfit_of_sex() returns trigger language plpgsql as $$
  begin
    if exists (select from clutch_candidate c where c.individual_id = new.id and
        (c.role = 'sire' and new.sex = 'female' or c.role = 'dam' and new.sex = 'male')) then
      raise exception 'individual % is recorded as a parent in the role of the other sex', new.id
        using errcode = 'check_violation', constraint = 'individual_sex_fits_role';
    end if;
    return null;
  end $$;
  create trigger individual_sex_check after update of sex on individual
    for each row when (old.sex is distinct from new.sex) execute function refuse_misfit_of_sex();
`;

const standingStays = `
  create function stand_with_pairing() returns trigger language plpgsql as $$
  begin
    update pairing_member set stands = new.withdrawn_at is null where pairing_id = new.id;
    return null;
  end $$;
  create trigger pairing_withdrawal after update of withdrawn_at on pairing
    for each row when ((old.withdrawn_at is null) <> (new.withdrawn_at is null)) execute function stand_with_pairing();
`;

const revision = `
  create table lineage_revision (
    singleton boolean primary key default true constraint lineage_revision_only_one check (singleton),
    revision bigint not null default 0,
    changed_at timestamptz(3) not null default now()
  );
  insert into lineage_revision default values;
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
    for each statement execute function bump_lineage_revision();`;
