import { In, type EntityManager } from 'typeorm';
import type { Sex, Visibility } from '../../../shared/vocabulary.ts';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { sayDate } from '../../platform/date-words.ts';
import { pathOfDescent } from '../ancestor-path.ts';
import { Clutch } from '../clutches/clutch.entity.ts';
import type { Individual } from '../individuals/individual.entity.ts';
import { clutchTitle } from '../titles.ts';
import type { ObstacleView } from './merge.view.ts';
import { namesBoth, obstacleIn, type ParentRow } from './merged-parents.ts';
import {
  clutchesNaming,
  readParentRows,
  readStayRows,
  type HousedStay,
  type ParentsOfClutches,
} from './merged-rows.queries.ts';
import { isOverlap } from './merged-stays.ts';
import { say } from '../../platform/say.ts';

/** Everything that says that two records may not be of one animal; what refuses the merging comes first. */
export async function findObstacles(
  manager: EntityManager,
  kept: Individual,
  duplicate: Individual,
): Promise<ObstacleView[]> {
  const parents = await readParentRows(manager, await clutchesNaming(manager, duplicate.id));
  const path = await pathOfDescent(manager, kept.id, duplicate.id);
  const found = [
    ...(path === null ? [] : [descent(path)]),
    ...ofRecords(kept, duplicate),
    ...role(kept, duplicate, parents),
    ...(await ofClutches(manager, parents, kept.id, duplicate.id)),
    ...stays(await readStayRows(manager, [kept.id, duplicate.id]), kept, duplicate),
  ];
  return found.sort((one, other) => Number(other.blocks) - Number(one.blocks));
}

const descent = (path: readonly string[]): ObstacleView => ({
  code: 'ancestor',
  blocks: true,
  detail: say`One descends from the other: ${path.join(' → ')}. They are two animals, or one of these parents is wrong.`,
  records: [],
});

function ofRecords(kept: Individual, duplicate: Individual): ObstacleView[] {
  const obstacles: ObstacleView[] = [];
  const add = (code: ObstacleView['code'], blocks: boolean, detail: string): void => {
    obstacles.push({ code, blocks, detail, records: [] });
  };
  if (kept.speciesId !== duplicate.speciesId)
    add('species', true, say`They are recorded under two species. Correct the one that is wrong first.`);
  if (kept.sex !== duplicate.sex && kept.sex !== 'unsexed' && duplicate.sex !== 'unsexed')
    add(
      'sex',
      true,
      say`One is recorded as ${kept.sex}, the other as ${duplicate.sex}. Correct the one that is wrong first.`,
    );
  if (hasOrigin(kept) && hasOrigin(duplicate) && !isSameOrigin(kept, duplicate))
    add('origin', false, say`Both have an origin, and not the same. Only one can be right; choose whose.`);
  if (kept.keeperId !== duplicate.keeperId)
    add('keeper', false, say`They belong to two keepers. Choose whose animal it is.`);
  if (kept.visibility !== duplicate.visibility)
    add(
      'visibility',
      false,
      say`The one that goes on is seen by ${seenBy[kept.visibility]}, the other by ${seenBy[duplicate.visibility]}. Claims, their evidence and photographs that move are seen with the record that goes on. Choose who sees it.`,
    );
  return obstacles;
}

const seenBy = {
  private: say`its keeper and registrars`,
  club: say`every member`,
  public: 'anyone',
} satisfies Record<Visibility, string>;

const hasOrigin = ({ sourceId, clutchId }: Individual): boolean => sourceId !== null || clutchId !== null;
const isSameOrigin = (one: Individual, other: Individual): boolean =>
  one.sourceId === other.sourceId && one.clutchId === other.clutchId;

const wrongRole = { male: 'dam', female: 'sire', unsexed: null } as const;

/** A certain sex of the animal that goes on against the role of the duplicate in its clutches. */
function role(kept: Individual, duplicate: Individual, parents: ParentsOfClutches): ObstacleView[] {
  if (!isOtherRole(kept.sex, duplicate.id, parents)) return [];
  const detail = say`The kept record is ${kept.sex}, and the duplicate is recorded as a ${wrongRole[kept.sex] ?? ''}. Take the sex of the duplicate, or correct those clutches first.`;
  return [{ code: 'role', blocks: false, detail, records: [] }];
}

/** Whether an animal of this sex cannot have the role that a record has among these parents. */
export function isOtherRole(sex: Sex, individualId: string, parents: ParentsOfClutches): boolean {
  const wrong = wrongRole[sex];
  const isWrong = (row: ParentRow): boolean => wrong !== null && row.a === individualId && row.role === wrong;
  return [...parents.values()].some((rows) => rows.some(isWrong));
}

const clutchWords = {
  'pair-of-both': say`Both are one candidate pair of parents, and an animal is no pair with itself. Correct its parents first.`,
  'both-sides': say`One is a candidate sire, the other a candidate dam. Correct its parents first.`,
  'one-clutch': say`Both are candidates. Their probabilities will be added.`,
};

async function ofClutches(
  manager: EntityManager,
  parents: ParentsOfClutches,
  keptId: string,
  duplicateId: string,
): Promise<ObstacleView[]> {
  const found = [...parents].flatMap(([id, rows]) => {
    if (!namesBoth(rows, keptId, duplicateId)) return [];
    return [{ id, code: obstacleIn(rows, keptId, duplicateId) ?? ('one-clutch' as const) }];
  });
  const clutches = found.length === 0 ? [] : await manager.findBy(Clutch, { id: In(found.map(({ id }) => id)) });
  return (['pair-of-both', 'both-sides', 'one-clutch'] as const).flatMap((code) => {
    const records = clutches
      .filter(({ id }) => found.some((other) => other.id === id && other.code === code))
      .map((clutch) => ({ kind: 'clutch' as const, id: clutch.id, name: clutchTitle(clutch) }));
    const names = records.map(({ name }) => name).join(', ');
    return records.length === 0
      ? []
      : [{ code, blocks: code !== 'one-clutch', detail: say`Of the ${names}: ${clutchWords[code]}`, records }];
  });
}

/** Stays of both in two standing pairings at one time. */
function stays(all: readonly HousedStay[], kept: Individual, duplicate: Individual): ObstacleView[] {
  const of = (animal: Individual): HousedStay[] => all.filter((stay) => stay.stands && stay.individualId === animal.id);
  return of(kept).flatMap((one) =>
    of(duplicate)
      .filter((other) => other.pairingId !== one.pairingId && isOverlap(one, other))
      .map((other): ObstacleView => ({
        code: 'stays',
        blocks: true,
        detail: say`${formatRegistryNumber(kept.number)} lived in ${whereAndWhen(one)} while ${formatRegistryNumber(duplicate.number)} lived in ${whereAndWhen(other)}. Say when it left the one, or take the wrong stay out.`,
        records: [one, other].map(({ pairingId, pairing }) => ({ kind: 'pairing', id: pairingId, name: pairing })),
      })),
  );
}

function whereAndWhen({ pairing, joined, left }: HousedStay): string {
  if (joined === null) return left === null ? pairing : say`${pairing} to ${sayDate(left)}`;
  return left === null
    ? say`${pairing} from ${sayDate(joined)} on`
    : say`${pairing} from ${sayDate(joined)} to ${sayDate(left)}`;
}
