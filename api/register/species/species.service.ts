import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { acting } from '../../platform/acting.ts';
import type { VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { InvalidProblem, NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockStanding, sentFields, writeChange, type Kind } from '../change.ts';
import { noteAdded } from '../kept/note-change.ts';
import { present } from '../present.ts';
import type { NewSpeciesRequest, SpeciesChangeRequest, SpeciesRangeRequest } from './species.dto.ts';
import { Species } from './species.entity.ts';
import { SpeciesRange } from './species-range.entity.ts';
import { findSpecies } from './species.queries.ts';
import type { SpeciesView } from './species.view.ts';
import { say } from '../../platform/say.ts';

export const speciesKind: Kind<Species, SpeciesView> = { word: 'species', entity: Species, find: findSpecies };

/** Species profiles and their life-history ranges. */
@Injectable()
export class SpeciesService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One profile; 404 where there is none. */
  async get(id: string): Promise<SpeciesView> {
    return present(await findSpecies(this.dataSource.manager, id), () => new NotFoundProblem(say`species`, id));
  }

  /** Adds a profile; 409 where the name is taken, 422 where a trait stands twice or its values are out of order. */
  async add(request: NewSpeciesRequest): Promise<SpeciesView> {
    return inTransaction(this.dataSource, async (manager) => {
      const id = newId();
      const { ranges = [], ...profile } = request;
      await manager.insert(Species, { id, keeperId: acting().id, ...profile });
      noteAdded(manager, 'species', id);
      await writeRanges(manager, id, ranges);
      return present(await findSpecies(manager, id), () => new NotFoundProblem(say`species`, id));
    });
  }

  /** Changes a profile; `ranges`, where given, replaces all ranges. 404, 409, 412, 422. */
  async change(id: string, match: VersionMatch, request: SpeciesChangeRequest): Promise<SpeciesView> {
    return inTransaction(this.dataSource, async (manager) => {
      const species = await lockStanding(manager, speciesKind, id, match);
      await writeChange(
        manager,
        speciesKind,
        species,
        sentFields(request, ['scientificName', 'commonName', 'citesAppendix', 'nativeRange']),
      );
      if (request.ranges) {
        await manager.delete(SpeciesRange, { speciesId: id });
        await writeRanges(manager, id, request.ranges);
      }
      return present(await findSpecies(manager, id), () => new NotFoundProblem(say`species`, id));
    });
  }
}

async function writeRanges(
  manager: EntityManager,
  speciesId: string,
  ranges: readonly SpeciesRangeRequest[],
): Promise<void> {
  const errors = ranges.flatMap((range, index) => rangeErrors(range, index, ranges));
  if (errors.length > 0) throw new InvalidProblem(say`Some ranges cannot be taken; each is named below.`, errors);
  if (ranges.length > 0)
    await manager.insert(
      SpeciesRange,
      ranges.map((range) => ({ speciesId, ...range })),
    );
}

function rangeErrors(
  range: SpeciesRangeRequest,
  index: number,
  all: readonly SpeciesRangeRequest[],
): { pointer: string; detail: string }[] {
  const pointer = `/ranges/${index}`;
  if (all.findIndex((other) => other.trait === range.trait) !== index)
    return [
      { pointer: `${pointer}/trait`, detail: say`There is already a range for ${range.trait}. Give each trait once.` },
    ];
  const values = [range.extremeLeast, range.usualLeast, range.usualMost, range.extremeMost].filter(
    (value) => typeof value === 'number',
  );
  if (values.some((value, place) => value < (values[place - 1] ?? 0)))
    return [
      {
        pointer,
        detail: say`The values must grow from the least ever known over the usual ones to the greatest ever known.`,
      },
    ];
  return [];
}
