import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { InvalidProblem } from '../../platform/problem.ts';
import { IndividualQuery } from '../../register/individuals/individual.dto.ts';
import { findIndividualIds } from '../../register/individuals/individual-list.queries.ts';
import { resolveIndividuals } from '../../register/individuals/resolve-individuals.queries.ts';
import type { RegisterSheetQuery } from './register-sheet.dto.ts';
import {
  readSheetAnimals,
  readSheetCandidates,
  readSheetClutches,
  readSheetPairs,
  readSheetSources,
  withAncestors,
} from './sheet-animals.queries.ts';
import { writeSheet } from './write-sheet.ts';
import { say } from '../../platform/say.ts';

/** Most animals of one sheet, ancestors included. */
export const SHEET_ANIMALS_MOST = 50_000;
/** Most animals that can be picked by hand. */
const PICKED_MOST = 500;

/** Writes register sheets of what is in the register. */
@Injectable()
export class RegisterSheetService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * A register sheet of the animals asked for, as far as whoever asks may see them.
   *
   * @throws InvalidProblem where an animal that was picked is not there, or where there are too many
   */
  async write(query: RegisterSheetQuery): Promise<string> {
    // one state of the register for all that is read
    return this.dataSource.transaction('REPEATABLE READ', async (manager) => {
      const asked = await idsOf(manager, query);
      const ids = query.ancestors ? await withAncestors(manager, asked, SHEET_ANIMALS_MOST) : asked;
      if (ids.length > SHEET_ANIMALS_MOST) throw tooMany();
      const animals = await readSheetAnimals(manager, ids);
      const clutchIds = [...new Set(animals.flatMap(({ clutchId }) => clutchId ?? []))];
      const sourceIds = [...new Set(animals.flatMap(({ sourceId }) => sourceId ?? []))];
      return writeSheet({
        animals,
        clutches: await readSheetClutches(manager, clutchIds),
        candidates: await readSheetCandidates(manager, clutchIds),
        pairs: await readSheetPairs(manager, clutchIds),
        sources: await readSheetSources(manager, sourceIds),
      });
    });
  }
}

async function idsOf(manager: EntityManager, query: RegisterSheetQuery): Promise<string[]> {
  const { animals } = query;
  if (animals === undefined)
    return findIndividualIds(manager, Object.assign(new IndividualQuery(), query), SHEET_ANIMALS_MOST + 1);
  const named = animals
    .split(',')
    .map((text) => ({ text: text.trim(), pointer: '/animals' }))
    .filter(({ text }) => text !== '');
  if (named.length > PICKED_MOST) {
    const detail = say`Name at most ${PICKED_MOST} animals, or use the filters of the register.`;
    throw new InvalidProblem(detail, [{ pointer: '/animals', detail }]);
  }
  return [...new Set((await resolveIndividuals(manager, named)).map(({ id }) => id))];
}

function tooMany(): InvalidProblem {
  const detail = say`A sheet holds at most ${SHEET_ANIMALS_MOST} animals, their ancestors included. Choose fewer: one line, one keeper, or some years.`;
  return new InvalidProblem(detail, [{ detail, pointer: '' }]);
}
