import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { ParentRole } from '../../../shared/vocabulary.ts';
import { seen } from '../../people/visibility.ts';
import { isId } from '../../platform/ids.ts';
import { readYoungOfClutch } from '../individuals/individual.queries.ts';
import type { AnimalStatusView } from '../individuals/individual.view.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import { PrivateRecords, type ReferredAnimal } from '../private-records.ts';
import { seenClutch, seenPairing } from '../seen-records.ts';
import { clutchTitle } from '../titles.ts';
import { readClutchFacts, type KnownClutchFacts } from '../warnings/facts.queries.ts';
import { refuseImpossibleFacts, type ClutchPointers } from '../warnings/impossible.queries.ts';
import { warningsByFacts } from '../warnings/warning.queries.ts';
import { expectedColumn, expectedWindow } from './expected-window.queries.ts';
import type { CandidatePairView, CandidateView, ClutchItemView, ClutchView } from './clutch.view.ts';

interface ClutchRow
  extends
    RecordRow,
    Omit<ClutchItemView, 'id' | 'version' | 'createdAt' | 'updatedAt' | 'withdrawn' | 'title' | 'pairing' | 'parents'> {
  readonly pairingId: string | null;
  readonly pairingName: string | null;
  readonly candidates: (Omit<CandidateView, 'individual'> & { role: ParentRole; individual: ParentRow | null })[];
  readonly pairs: (Omit<CandidatePairView, 'a' | 'b'> & { a: ParentRow; b: ParentRow })[];
}

type ParentRow = ReferredAnimal & Pick<AnimalStatusView, 'sex' | 'status'>;

const animal = (alias: string): string =>
  `json_build_object('id', ${alias}.id, 'number', ${alias}.number::text, 'code', ${alias}.code, 'sex', ${alias}.sex, 'status', ${alias}.status,
    'isSeen', ${seen('individual', alias)})`;

/** Candidates by clutch_candidate_once, pairs by clutch_pair_once. */
const select = (): string => `
  select ${recordColumns('c')}, c.code, k.name as keeper, c.keeper_id as "keeperId", p.id as "pairingId", p.name as "pairingName", c.laid,
    c.eggs, c.fertile, c.hatched, c.hatched_on as "hatchedOn", c.stage, c.out_of_water as "outOfWater", c.site, c.notes, ${expectedColumn} as expected, c.parents_from_pairing as "parentsFromPairing",
    coalesce((select json_agg(json_build_object('cause', l.cause, 'count', l.count) order by l.cause)
      from clutch_loss l where l.clutch_id = c.id), '[]') as losses,
    coalesce((select json_agg(json_build_object('role', d.role, 'individual', case when i.id is null then null else ${animal('i')} end,
        'probability', d.probability, 'reason', d.reason) order by d.probability desc, ${seen('individual', 'i')} desc, i.number)
      from clutch_candidate d left join individual i on i.id = d.individual_id where d.clutch_id = c.id), '[]') as candidates,
    coalesce((select json_agg(json_build_object('a', ${animal('a')}, 'b', ${animal('b')}, 'probability', d.probability, 'reason', d.reason)
        order by d.probability desc, ${seen('individual', 'a')} desc, ${seen('individual', 'b')} desc, a.number, b.number)
      from clutch_pair d join individual a on a.id = d.a_id join individual b on b.id = d.b_id where d.clutch_id = c.id), '[]') as pairs
  from clutch c join keeper k on k.id = c.keeper_id left join pairing p on p.id = c.pairing_id and ${seenPairing('p')}
  ${expectedWindow('c')}`;

/**
 * Clutches as lists show them, by their ids (primary key), in the order of the ids; only those that may be seen. Their parents that
 * may not be seen are told by what stands for them in the one answer.
 */
export async function readClutchItems(
  manager: EntityManager,
  ids: readonly string[],
  concealed = new PrivateRecords(),
): Promise<ClutchItemView[]> {
  if (ids.length === 0) return [];
  const rows = await manager.query<ClutchRow[]>(
    `${select()} where c.id = any($1) and ${seenClutch('c')} order by array_position($1::uuid[], c.id)`,
    [ids],
  );
  return rows.map((row) => toItemView(row, concealed));
}

/** One clutch, whole, by its id (primary key), or null where there is none or it may not be seen. */
export async function findClutch(manager: EntityManager, id: string): Promise<ClutchView | null> {
  return isId(id) ? wholeClutch(manager, id, await readClutchFacts(manager, id)) : null;
}

/**
 * A clutch as it was just written, whole. 422 at one of the pointers where it cannot be: laid before a parent hatched, or after a
 * young did.
 */
export async function findPossibleClutch(
  manager: EntityManager,
  id: string,
  pointers: ClutchPointers,
): Promise<ClutchView | null> {
  const facts = await readClutchFacts(manager, id);
  if (facts) refuseImpossibleFacts(facts, pointers);
  return wholeClutch(manager, id, facts);
}

async function wholeClutch(
  manager: EntityManager,
  id: string,
  facts: KnownClutchFacts | null,
): Promise<ClutchView | null> {
  const [item] = facts ? await readClutchItems(manager, [id]) : [];
  if (!facts || !item) return null;
  return {
    ...item,
    young: facts.young > 0 ? await readYoungOfClutch(manager, id) : [],
    privateYoung: facts.privateYoung,
    warnings: await warningsByFacts(manager, id, facts),
  };
}

function toItemView(row: ClutchRow, concealed: PrivateRecords): ClutchItemView {
  return {
    ...toRecordView(row),
    title: clutchTitle(row),
    code: row.code,
    keeper: row.keeper,
    keeperId: row.keeperId,
    pairing: row.pairingId === null ? null : { id: row.pairingId, name: row.pairingName ?? '' },
    laid: row.laid,
    eggs: row.eggs,
    fertile: row.fertile,
    hatched: row.hatched,
    hatchedOn: row.hatchedOn,
    outOfWater: row.outOfWater,
    stage: row.stage,
    expected: row.expected,
    losses: row.losses,
    site: row.site,
    notes: row.notes,
    parentsFromPairing: row.parentsFromPairing,
    parents: row.pairs.length > 0 ? toPairsView(row, concealed) : toListsView(row, concealed),
  };
}

function toListsView(row: ClutchRow, concealed: PrivateRecords): ClutchItemView['parents'] {
  const side = (role: ParentRole): CandidateView[] =>
    row.candidates
      .filter((candidate) => candidate.role === role)
      .map(({ individual, probability, reason }) => ({
        individual: individual && concealed.animal(withCheck(individual)),
        probability,
        reason,
      }));
  return { mode: 'lists', sires: side('sire'), dams: side('dam') };
}

function toPairsView(row: ClutchRow, concealed: PrivateRecords): ClutchItemView['parents'] {
  const pairs = row.pairs.map((pair) => ({
    ...pair,
    a: concealed.animal(withCheck(pair.a)),
    b: concealed.animal(withCheck(pair.b)),
  }));
  return { mode: 'pairs', pairs };
}

const withCheck = (animal: ParentRow): ParentRow => ({ ...animal, number: formatRegistryNumber(animal.number ?? '') });
