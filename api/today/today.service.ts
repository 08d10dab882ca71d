import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { isDate } from '../../shared/edtf.ts';
import type { Acting } from '../platform/acting.ts';
import { InvalidProblem } from '../platform/problem.ts';
import { PrivateRecords } from '../register/private-records.ts';
import { today } from '../selling/transfers/passing-dates.ts';
import { listTransfers } from '../selling/transfers/transfer.queries.ts';
import type { Asked } from './asked.ts';
import { readDueClutches } from './due-clutches.queries.ts';
import { readDueReviews } from './due-reviews.queries.ts';
import { readSexing } from './due-sexing.queries.ts';
import { readDueWarnings } from './due-warnings.queries.ts';
import { readHoldings, readProfileGaps } from './profile-gaps.queries.ts';
import type { TodayQuery } from './today.dto.ts';
import type { DueTransfersView, TodayView } from './today.view.ts';

/** What is due at the tanks. */
@Injectable()
export class TodayService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** What is due on a day for a keeper; every list is cut and says how long it is. 422 where the day is none. */
  async get(keeper: Acting, query: TodayQuery): Promise<TodayView> {
    const on = query.on ?? today();
    if (!isDate(on)) {
      const detail = `There is no day ${on}. Write one such as 2026-11-26.`;
      throw new InvalidProblem(detail, [{ pointer: '/on', detail }]);
    }
    const { manager } = this.dataSource;
    const asked: Asked = { on, keeperId: query.of === 'mine' ? keeper.id : null, limit: query.limit };
    // one answer calls a private animal by one name throughout
    const concealed = new PrivateRecords();
    return {
      on,
      of: query.of,
      hatching: await readDueClutches(manager, 'egg', asked, concealed),
      leavingWater: await readDueClutches(manager, 'water', asked, concealed),
      sexing: await readSexing(manager, asked),
      transfers: await this.#offers(query.limit),
      reviews: await readDueReviews(manager, keeper, query.limit),
      warnings: await readDueWarnings(manager, asked),
      profiles: await readProfileGaps(manager, asked),
      ...(await readHoldings(manager, keeper.id)),
    };
  }

  async #offers(limit: number): Promise<DueTransfersView> {
    const page = await listTransfers(this.dataSource.manager, {
      side: 'received',
      state: 'offered',
      limit,
      total: true,
    });
    return { items: page.items, total: page.total ?? page.items.length };
  }
}
