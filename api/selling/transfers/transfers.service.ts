import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { VersionMatch } from '../../platform/etag.ts';
import { NotFoundProblem } from '../../platform/problem.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { present } from '../../register/present.ts';
import { accept, decline, withdrawOffer } from './answering.ts';
import { takeReturn, withdrawDeparture } from './departures.ts';
import { lockTransfer, requireState } from './locked-transfer.ts';
import { addTransfer } from './offering.ts';
import type { AcceptanceRequest, NewTransferRequest, ReturnRequest } from './transfer.dto.ts';
import type { Transfer } from './transfer.entity.ts';
import { findTransfer } from './transfer.queries.ts';
import type { TransferView } from './transfer.view.ts';
import { say } from '../../platform/say.ts';

type Work = (manager: EntityManager, transfer: Transfer) => Promise<void>;

/** Animals that change hands, or leave the club. */
@Injectable()
export class TransfersService {
  constructor(@Inject(DataSource) private readonly dataSource: DataSource) {}

  /** One transfer; 404 where there is none. */
  async get(id: string): Promise<TransferView> {
    return shown(this.dataSource.manager, id);
  }

  /** Offers animals, or notes that they left the club. 403 for another keeper's, 409 where one is on offer, 422 where one cannot pass. */
  async add(request: NewTransferRequest): Promise<TransferView> {
    return inTransaction(this.dataSource, async (manager) => shown(manager, await addTransfer(manager, request)));
  }

  /** Takes the animals of an open offer. 403, 404, 409 with what happened meanwhile or a code that is taken, 412, 422. */
  async accept(id: string, match: VersionMatch, request: AcceptanceRequest): Promise<TransferView> {
    return this.answer(id, match, (manager, transfer) => accept(manager, transfer, request));
  }

  /** Declines an open offer. 403, 404, 409 with what happened meanwhile, 412. */
  async decline(id: string, match: VersionMatch, reason: string | null): Promise<TransferView> {
    return this.answer(id, match, (manager, transfer) => decline(manager, transfer, reason));
  }

  /** Takes an open offer back, or puts a departure back. 403, 404, 409 with what happened meanwhile, 412. */
  async withdraw(id: string, match: VersionMatch, reason: string | null): Promise<TransferView> {
    return inTransaction(this.dataSource, async (manager) => {
      const transfer = await lockTransfer(manager, id, 'giver');
      const isDeparture = transfer.toId === null;
      await requireState(manager, transfer, transfer.state === (isDeparture ? 'accepted' : 'offered'), match);
      await (isDeparture ? withdrawDeparture : withdrawOffer)(manager, transfer, reason);
      return shown(manager, id);
    });
  }

  /** Notes that animals of a departure came back. 403, 404, 409, 412, 422. */
  async comeBack(id: string, match: VersionMatch, request: ReturnRequest): Promise<TransferView> {
    return inTransaction(this.dataSource, async (manager) => {
      const transfer = await lockTransfer(manager, id, 'giver');
      await requireState(manager, transfer, transfer.toId === null && transfer.state === 'accepted', match);
      await takeReturn(manager, transfer, request);
      return shown(manager, id);
    });
  }

  private answer(id: string, match: VersionMatch, work: Work): Promise<TransferView> {
    return inTransaction(this.dataSource, async (manager) => {
      const transfer = await lockTransfer(manager, id, 'receiver');
      await requireState(manager, transfer, transfer.state === 'offered', match);
      await work(manager, transfer);
      return shown(manager, id);
    });
  }
}

async function shown(manager: EntityManager, id: string): Promise<TransferView> {
  return present(await findTransfer(manager, id), () => new NotFoundProblem(say`transfer`, id));
}
