import { type EntityManager, In } from 'typeorm';
import { databaseProblem } from '../../platform/database-problem.ts';
import { dateColumns } from '../../platform/dates.ts';
import { newId } from '../../platform/ids.ts';
import type { Problem } from '../../platform/problem.ts';
import { Individual } from '../individuals/individual.entity.ts';
import { PairingMember } from '../pairings/pairing-member.entity.ts';
import { refusedByRule, wantedFields, type Judged } from './judge-animals.ts';
import type { ChangeTogetherRequest, FieldsTogether } from './together.dto.ts';

/**
 * Writes the fields and the moves of animals, and gives them back, those refused that a rule of the register stands against. All are tried at
 * once; where the database refuses, each half is tried alone, so that a few refusals among many cost little. Callers hold every lock.
 */
export async function writeTogether(
  manager: EntityManager,
  animals: readonly Judged[],
  request: ChangeTogetherRequest,
): Promise<Judged[]> {
  if (animals.length === 0) return [];
  const problem = await tried(manager, (inner) => writeAll(inner, animals, request));
  if (problem === null) return [...animals];
  const [first] = animals;
  if (animals.length === 1 && first) return [refusedByRule(first, detailOf(problem))];
  const middle = Math.ceil(animals.length / 2);
  return [
    ...(await writeTogether(manager, animals.slice(0, middle), request)),
    ...(await writeTogether(manager, animals.slice(middle), request)),
  ];
}

const detailOf = (problem: Problem): string => problem.errors?.[0]?.detail ?? problem.message;

/** Does work that the database may refuse, behind a savepoint; gives what it was refused for, or null. */
async function tried(manager: EntityManager, work: (manager: EntityManager) => Promise<void>): Promise<Problem | null> {
  try {
    await manager.transaction(work);
    return null;
  } catch (error) {
    const problem = databaseProblem(error);
    // what is not a rule (no database, two at once) is no matter of one animal
    if (problem === null || ![409, 422].includes(problem.status) || problem.slug === 'too-large') throw error;
    if (problem.title === 'Two at once') throw error;
    return problem;
  }
}

async function writeAll(
  manager: EntityManager,
  animals: readonly Judged[],
  { fields, move }: ChangeTogetherRequest,
): Promise<void> {
  const changing = idsOf(animals.filter(({ changesFields }) => changesFields));
  if (changing.length > 0)
    await manager.update(
      Individual,
      { id: In(changing) },
      { ...columnsOf(wantedFields(fields)), updatedAt: new Date() },
    );
  if (!move) return;
  const moving = animals.filter(({ moves }) => moves);
  const left = moving.flatMap(({ leaves }) => leaves.map(({ id }) => id));
  if (left.length > 0) await manager.update(PairingMember, { id: In(left) }, dateColumns('left', move.on));
  const { pairingId } = move;
  if (pairingId === null || moving.length === 0) return;
  await manager.insert(
    PairingMember,
    idsOf(moving).map((individualId) => ({
      id: newId(),
      pairingId,
      individualId,
      ...dateColumns('joined', move.on),
    })),
  );
}

const idsOf = (animals: readonly Judged[]): string[] => animals.flatMap(({ row }) => (row ? [row.id] : []));

const dates = ['sexedOn', 'died', 'outOfWater'] as const;

/** The columns of the fields that were sent. */
function columnsOf(fields: FieldsTogether): object {
  const columns: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(fields) as [keyof FieldsTogether, string | null | undefined][]) {
    if (value === undefined) continue;
    const date = dates.find((name) => name === field);
    if (date) Object.assign(columns, dateColumns(date, value));
    else columns[field] = value;
  }
  return columns;
}
