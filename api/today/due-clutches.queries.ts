import type { EntityManager } from 'typeorm';
import type { ClutchStage, Trait } from '../../shared/vocabulary.ts';
import { readClutchItems } from '../register/clutches/clutch.queries.ts';
import { expectedWindow } from '../register/clutches/expected-window.queries.ts';
import { Conditions } from '../register/keyset.ts';
import type { PrivateRecords } from '../register/private-records.ts';
import { seenClutch } from '../register/seen-records.ts';
import { COUNTED_MOST, type DueClutchesView } from './today.view.ts';
import type { Asked } from './asked.ts';

/** How long what is late is shown, and how far ahead is looked, in days. */
const LATE_MOST = 60;
const AHEAD = 14;
/** A start that leaves more days open than this is no day to reckon from. */
const OPEN_MOST = 31;

type Waiting = Extract<ClutchStage, 'egg' | 'water'>;

const traitsUntil: Record<Waiting, readonly Trait[]> = {
  egg: ['laying-to-hatching'],
  water: ['laying-to-hatching', 'hatching-to-leaving-water'],
};

interface DueRow {
  readonly id: string;
  readonly when: 'due' | 'coming' | 'older' | null;
  readonly due: number;
  readonly coming: number;
  readonly older: number;
  readonly from: string | null;
}

/**
 * Clutches at a stage whose window is open, or closed lately; the latest first (clutch_stage_index: by the longest ranges of all species
 * only those are looked at that can be due at all).
 */
export async function readDueClutches(
  manager: EntityManager,
  stage: Waiting,
  asked: Asked,
  concealed: PrivateRecords,
): Promise<DueClutchesView> {
  const rows = await readDueRows(manager, stage, asked);
  const [row] = rows;
  const ids = rows.filter(({ when }) => when === 'due').map(({ id }) => id);
  return {
    items: await readClutchItems(manager, ids, concealed),
    total: row?.due ?? 0,
    coming: row && row.coming > 0 && row.from !== null ? { count: row.coming, from: row.from } : null,
    older: Math.min(COUNTED_MOST + 1, (row?.older ?? 0) + (await countOlder(manager, stage, asked))),
  };
}

function readDueRows(manager: EntityManager, stage: Waiting, asked: Asked): Promise<DueRow[]> {
  const conditions = kept(stage, asked);
  const on = `${conditions.bind(asked.on)}::date`;
  conditions.add(exactStart[stage]);
  const between = `c.laid_earliest between ${earliestStart(stage, on)} and ${on} + ${AHEAD}`;
  conditions.add(stage === 'egg' ? between : `(${between} or c.laid_earliest is null)`);
  const told = (when: 'due' | 'coming' | 'older'): string => `count(*) filter (where d."when" = '${when}') over ()`;
  return manager.query<DueRow[]>(
    `select d.id, d."when", (${told('due')})::integer as due, (${told('coming')})::integer as coming, (${told('older')})::integer as older,
       (min(d.opens) filter (where d."when" = 'coming') over ())::text as from
     from (select c.id, w.opens, w.closes,
         case when w.opens > ${on} then 'coming' when w.closes >= ${on} - ${LATE_MOST} then 'due' when ${unfinished[stage]} then 'older' end as "when"
       from clutch c ${expectedWindow('c')} where ${conditions.sql} and w.opens <= ${on} + ${AHEAD}) d
     order by d."when" is distinct from 'due', d.closes, d.id limit ${asked.limit}`,
    conditions.parameters,
  );
}

/** Of a clutch of which froglets came out long ago, what is left in the water is lost: nobody need be told. */
const unfinished: Record<Waiting, string> = {
  egg: 'true',
  water: `coalesce(c.out_of_water, 0) = 0 and not exists (select from individual y where y.clutch_id = c.id and y.withdrawn_at is null)`,
};

const exact = (date: string): string => `${date}_latest - ${date}_earliest <= ${OPEN_MOST}`;
/** That the day which is counted from is known well enough. */
const exactStart: Record<Waiting, string> = {
  egg: exact('c.laid'),
  water: `case when c.hatched_on is null then ${exact('c.laid')} else ${exact('c.hatched_on')} end`,
};

function kept(stage: Waiting, asked: Asked): Conditions {
  const conditions = new Conditions();
  conditions.add(`c.stage = '${stage}'`);
  conditions.add('c.withdrawn_at is null');
  if (asked.keeperId !== null) conditions.add(`c.keeper_id = ${conditions.bind(asked.keeperId)}`);
  conditions.add(seenClutch('c'));
  return conditions;
}

/** SQL for the day before which nothing can have been laid that is still due, by the longest ranges of all species. */
function earliestStart(stage: Waiting, on: string): string {
  const range = (trait: Trait): string =>
    `coalesce((select ceil(max(greatest(usual_most, extreme_most, usual_least, extreme_least)))::integer from species_range where trait = '${trait}'), 0)`;
  return `${on} - ${LATE_MOST + OPEN_MOST} - ${traitsUntil[stage].map(range).join(' - ')}`;
}

/** Those whose window closed long ago, and those without a day, as far as the longest ranges of all species tell (clutch_stage_index). */
async function countOlder(manager: EntityManager, stage: Waiting, asked: Asked): Promise<number> {
  const conditions = kept(stage, asked);
  const first = earliestStart(stage, `${conditions.bind(asked.on)}::date`);
  const [row] = await manager.query<{ older: number }[]>(
    `select count(*)::integer as older from (select 1 from clutch c
       where ${conditions.sql} and ${unfinished[stage]} and (c.laid_earliest < ${first} or c.laid_earliest is null${stage === 'egg' ? '' : ' and c.hatched_on is null'})
       limit ${COUNTED_MOST + 1}) counted`,
    conditions.parameters,
  );
  return row?.older ?? 0;
}
