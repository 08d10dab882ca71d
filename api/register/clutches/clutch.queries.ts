import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { ParentRole } from '../../../shared/vocabulary.ts';
import { isId } from '../../platform/ids.ts';
import { readYoungOfClutch } from '../individuals/individual.queries.ts';
import type { AnimalStatusView } from '../individuals/individual.view.ts';
import { recordColumns, toRecordView, type RecordRow } from '../record.view.ts';
import { clutchTitle } from '../titles.ts';
import { readClutchWarnings } from '../warnings/warning.queries.ts';
import type { CandidatePairView, CandidateView, ClutchItemView, ClutchView } from './clutch.view.ts';

interface ClutchRow
  extends
    RecordRow,
    Omit<ClutchItemView, 'id' | 'version' | 'createdAt' | 'updatedAt' | 'withdrawn' | 'title' | 'pairing' | 'parents'> {
  readonly pairingId: string | null;
  readonly pairingName: string | null;
  readonly candidates: (CandidateView & { role: ParentRole })[];
  readonly pairs: CandidatePairView[];
}

const animal = (alias: string): string =>
  `json_build_object('id', ${alias}.id, 'number', ${alias}.number::text, 'code', ${alias}.code, 'sex', ${alias}.sex, 'status', ${alias}.status)`;

/** Candidates by clutch_candidate_once, pairs by clutch_pair_once. */
const select = `
  select ${recordColumns('c')}, c.code, k.name as keeper, c.keeper_id as "keeperId", p.id as "pairingId", p.name as "pairingName", c.laid,
    c.eggs, c.fertile, c.hatched, c.out_of_water as "outOfWater", c.site, c.notes, c.parents_from_pairing as "parentsFromPairing",
    coalesce((select json_agg(json_build_object('cause', l.cause, 'count', l.count) order by l.cause)
      from clutch_loss l where l.clutch_id = c.id), '[]') as losses,
    coalesce((select json_agg(json_build_object('role', d.role, 'individual', case when i.id is null then null else ${animal('i')} end,
        'probability', d.probability, 'reason', d.reason) order by d.probability desc, i.number)
      from clutch_candidate d left join individual i on i.id = d.individual_id where d.clutch_id = c.id), '[]') as candidates,
    coalesce((select json_agg(json_build_object('a', ${animal('a')}, 'b', ${animal('b')}, 'probability', d.probability, 'reason', d.reason)
        order by d.probability desc, a.number, b.number)
      from clutch_pair d join individual a on a.id = d.a_id join individual b on b.id = d.b_id where d.clutch_id = c.id), '[]') as pairs
  from clutch c join keeper k on k.id = c.keeper_id left join pairing p on p.id = c.pairing_id`;

/** Clutches as lists show them, by their ids (primary key), in no order. */
export async function readClutchItems(manager: EntityManager, ids: readonly string[]): Promise<ClutchItemView[]> {
  if (ids.length === 0) return [];
  return (await manager.query<ClutchRow[]>(`${select} where c.id = any($1)`, [ids])).map(toItemView);
}

/** One clutch, whole, by its id (primary key), or null. */
export async function findClutch(manager: EntityManager, id: string): Promise<ClutchView | null> {
  if (!isId(id)) return null;
  const [item] = await readClutchItems(manager, [id]);
  if (!item) return null;
  return { ...item, young: await readYoungOfClutch(manager, id), warnings: await readClutchWarnings(manager, id) };
}

function toItemView(row: ClutchRow): ClutchItemView {
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
    outOfWater: row.outOfWater,
    losses: row.losses,
    site: row.site,
    notes: row.notes,
    parentsFromPairing: row.parentsFromPairing,
    parents: row.pairs.length > 0 ? { mode: 'pairs', pairs: row.pairs.map(toPairView) } : toListsView(row),
  };
}

function toListsView(row: ClutchRow): ClutchItemView['parents'] {
  const side = (role: ParentRole): CandidateView[] =>
    row.candidates
      .filter((candidate) => candidate.role === role)
      .map(({ individual, probability, reason }) => ({
        individual: individual && withCheck(individual),
        probability,
        reason,
      }));
  return { mode: 'lists', sires: side('sire'), dams: side('dam') };
}

const toPairView = (pair: CandidatePairView): CandidatePairView => ({
  ...pair,
  a: withCheck(pair.a),
  b: withCheck(pair.b),
});

const withCheck = (animal: AnimalStatusView): AnimalStatusView => ({
  ...animal,
  number: formatRegistryNumber(animal.number),
});
