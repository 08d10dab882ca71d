import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { dateInWords } from '../../../shared/date-words.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { readClutchItems } from '../clutches/clutch.queries.ts';
import { findIndividual } from '../individuals/individual.queries.ts';
import { Individual } from '../individuals/individual.entity.ts';
import type { IndividualView } from '../individuals/individual.view.ts';
import { resolveIndividuals } from '../individuals/resolve-individuals.queries.ts';
import { present } from '../present.ts';
import type { ComparisonQuery } from './merge.dto.ts';
import { isDifferent, mergeFields, type MergeField } from './merge-fields.ts';
import { countMoves } from './merge.queries.ts';
import type { MergeComparisonView } from './merge.view.ts';
import { clutchesNaming } from './merged-rows.queries.ts';
import { findObstacles } from './obstacles.ts';
import { say } from '../../platform/say.ts';

/** Two records side by side, before anybody merges them. */
@Injectable()
export class ComparisonService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** Compares two standing records that may be of one animal; 422 where one is not there, or both are the same. */
  async compare({ kept, duplicate }: ComparisonQuery): Promise<MergeComparisonView> {
    const { manager } = this.dataSource;
    const found = await resolveIndividuals(manager, [
      { text: kept, pointer: '/kept' },
      { text: duplicate, pointer: '/duplicate' },
    ]);
    const [one, other] = found.map(({ id }) => id);
    if (one === undefined || other === undefined || one === other) throw sameRecord('/duplicate');
    return compareRecords(manager, one, other);
  }
}

/** 422: nothing can be merged into itself. */
export function sameRecord(pointer: string): InvalidProblem {
  const detail = say`Both are the same record. Choose two.`;
  return new InvalidProblem(detail, [{ pointer, detail }]);
}

/** Two records that are there, side by side. */
export async function compareRecords(
  manager: EntityManager,
  keptId: string,
  duplicateId: string,
): Promise<MergeComparisonView> {
  const view = async (id: string): Promise<IndividualView> =>
    present(await findIndividual(manager, id), () => new NotFoundProblem(say`animal`, id));
  const row = (id: string): Promise<Individual> => manager.findOneByOrFail(Individual, { id });
  const [kept, duplicate] = [await view(keptId), await view(duplicateId)];
  const [keptRow, duplicateRow] = [await row(keptId), await row(duplicateId)];
  const clutches = await readClutchItems(
    manager,
    [keptRow.clutchId, duplicateRow.clutchId].filter((id) => id !== null),
  );
  return {
    kept,
    duplicate,
    keptClutch: clutches.find(({ id }) => id === keptRow.clutchId) ?? null,
    duplicateClutch: clutches.find(({ id }) => id === duplicateRow.clutchId) ?? null,
    fields: mergeFields.map((field) => ({
      field,
      kept: inWords(kept, keptRow, field),
      duplicate: inWords(duplicate, duplicateRow, field),
      isDifferent: isDifferent(keptRow, duplicateRow, field),
    })),
    moves: {
      clutches: (await clutchesNaming(manager, duplicateId)).length,
      ...(await countMoves(manager, keptId, duplicateId)),
    },
    obstacles: await findObstacles(manager, keptRow, duplicateRow),
  };
}

function inWords(animal: IndividualView, row: Individual, field: MergeField): string | null {
  switch (field) {
    case 'origin':
      return animal.clutch?.title ?? animal.source?.title ?? null;
    case 'sex':
      return [animal.sex, animal.sexBasis === null ? null : say`by ${animal.sexBasis}`, date(animal.sexedOn)]
        .filter((part) => part !== null)
        .join(', ');
    case 'status':
      return [animal.status, date(animal.died)].filter((part) => part !== null).join(', ');
    case 'hatched':
    case 'outOfWater':
      return date(animal[field]);
    case 'visibility':
      return row.visibility;
    default:
      return animal[field];
  }
}

const date = (text: string | null): string | null => (text === null ? null : dateInWords(text));
