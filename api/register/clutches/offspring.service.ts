import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { Acting } from '../../platform/acting.ts';
import { lockPedigree } from '../../platform/revision.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { lockForAdding } from '../change.ts';
import { readIndividualItems } from '../individuals/individual.queries.ts';
import { refuseImpossibleClutch } from '../warnings/impossible.queries.ts';
import type { OffspringRequest } from './clutch.dto.ts';
import type { OffspringView } from './clutch.view.ts';
import { clutchKind } from './clutches.service.ts';
import { raiseYoung } from './raise-young.ts';

/** Raising young from a clutch. */
@Injectable()
export class OffspringService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /**
   * Adds the young of a clutch as animals of the acting keeper. They inherit the species of their parents, and the line where
   * all possible parents share one. 403 (another keeper's clutch), 404, 409 (code taken, clutch withdrawn), 422 (neither a count nor animals, species unclear).
   */
  async raise(keeper: Acting, clutchId: string, request: OffspringRequest): Promise<OffspringView> {
    return inTransaction(this.dataSource, async (manager) => {
      await lockPedigree(manager);
      const clutch = await lockForAdding(manager, clutchKind, clutchId);
      const ids = await raiseYoung(manager, keeper, clutch, request, '');
      await refuseImpossibleClutch(manager, clutchId, '/animals');
      return { items: await readIndividualItems(manager, ids) };
    });
  }
}
